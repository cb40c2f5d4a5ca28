// The JSON of `show`, sealtrend/show@1: units in the keys, full digits, nothing rounded.

import {
  type CylinderAssessment,
  type GaugeComparison,
  type LevelBelow,
  type LevelSince,
  type PressureValue,
  type RuleFinding,
  type TestAssessment,
  fromSi,
} from "@sealtrend/core/parts";
import { causesDocument, diagnosisDocument } from "./causes-document.ts";
import { buildUpDocument, hoseDocument, oilDocument } from "./evidence-document.ts";
import { leakDocument, leakTestDocument } from "./leak-document.ts";
import { kPa } from "../render/units.ts";
import { correctedDocument, speedDocument } from "./speed-document.ts";

/** What is undefined is left out when the document is written. */
export const showDocument = (assessment: TestAssessment, schema = "sealtrend/show@1") => {
  const { record, test, trust, correction, spread } = assessment;
  return {
    schema,
    engine: { id: record.engine.id, name: record.engine.name },
    test: { id: test.id, date: test.date, meter: test.meter, setAside: test.setAside },
    trust: {
      code: trust.code,
      voids: trust.voids,
      reasons: trust.reasons.map(({ code, text, mend }) => ({ code, text, mend })),
    },
    correction: {
      basis: correction.basis,
      station_kPaAbs: kPa(correction.station),
      station_from: correction.from,
      altitude_m: test.conditions.altitude,
      reference_kPaAbs: kPa(correction.reference),
      factor: correction.factor,
      u_factor: correction.factor * correction.uncertainty,
      temperatureExponent: correction.temperatureExponent,
      u_lnPressure: correction.uncertaintyOfPressure,
      u_lnTemperature: correction.uncertaintyOfTemperature,
      speed: speedDocument(assessment.speed),
      readsHigh_kPa: assessment.readsHigh === undefined ? undefined : kPa(assessment.readsHigh),
    },
    cylinders: assessment.cylinders.map((cylinder, i) =>
      cylinderDocument(cylinder, assessment.speed?.speeds[i]),
    ),
    spread:
      spread === undefined
        ? undefined
        : {
            highest_kPa: kPa(spread.highest),
            lowest_kPa: kPa(spread.lowest),
            median_kPa: kPa(spread.median),
            range_kPa: kPa(spread.range),
            ratio: spread.ratio,
            cv: spread.cv,
            apart: assessment.apart,
            high: assessment.high,
          },
    comparisons:
      assessment.comparisons.length === 0
        ? undefined
        : assessment.comparisons.map((one) => comparisonDocument(one, assessment)),
    oil: oilDocument(assessment.oil),
    buildUp: buildUpDocument(assessment.buildUp),
    gaugeHose: hoseDocument(assessment.gaugeHose),
    leakTest: leakTestDocument(assessment.leak),
    levelSince: assessment.levelSince === undefined ? undefined : levelDocument(assessment.levelSince),
    levelBelow: assessment.levelBelow === undefined ? undefined : belowDocument(assessment.levelBelow),
    rules: assessment.rules.map(ruleDocument),
    unexplained: assessment.unexplained,
    causes: causesDocument(assessment),
    diagnosis: diagnosisDocument(assessment),
    nextTests: assessment.nextTests,
    workAfter:
      assessment.workAfter === undefined
        ? undefined
        : { date: assessment.workAfter.date, what: assessment.workAfter.what },
    cautions: [
      ...assessment.cautions,
      ...(record.engine.use === "aircraft"
        ? ["airworthiness is a licensed person's call; this is not the aircraft's log"]
        : []),
    ],
    missing: assessment.missing,
  };
};

const valueDocument = (value: PressureValue | undefined) =>
  value === undefined
    ? undefined
    : {
        read_kPa: value.readings.map(kPa),
        value_kPa: kPa(value.value),
        ...correctedDocument(value),
        doubtful: value.doubtful || undefined,
        pegged: value.pegged || undefined,
        slip: value.slip?.kind,
      };

const comparisonDocument = (
  { what, gauge, counts, cells }: GaugeComparison,
  { cylinders }: TestAssessment,
) => ({
  what,
  gauge,
  counts,
  cylinders: cells.flatMap((cell, i) => {
    if (cell === undefined) return [];
    const { readings, value, doubtful, pegged } = cell;
    const read =
      what === "leak-down" ? { lost: value } : { read_kPa: readings.map(kPa), value_kPa: kPa(value) };
    return [
      {
        label: cylinders[i]?.label,
        ...read,
        doubtful: doubtful || undefined,
        pegged: pegged || undefined,
      },
    ];
  }),
});

const levelDocument = ({ uncertainty, ...level }: LevelSince) => ({ ...level, u_change: uncertainty });

const belowDocument = ({ from, expected, change, uncertainty }: LevelBelow) => ({
  from,
  expected_kPa: kPa(expected),
  change,
  u_change: uncertainty,
});

const dryDocument = (dry: PressureValue | undefined, speed: number | undefined) => {
  const value = valueDocument(dry);
  return value === undefined ? undefined : { ...value, speed_rpm: speed };
};

/** @param speed - that it was cranked at [rpm] */
const cylinderDocument = (
  { label, pressures, leakDown, ...rest }: CylinderAssessment,
  speed: number | undefined,
) => ({
  label,
  dry: dryDocument(pressures.dry, speed),
  wet: valueDocument(pressures.wet),
  firstStroke: valueDocument(pressures["first-stroke"]),
  running: valueDocument(pressures.running),
  snapThrottle: valueDocument(pressures["snap-throttle"]),
  leakDown: leakDocument(leakDown),
  ...rest,
});

const ruleDocument = ({
  id,
  verdict,
  holds,
  value,
  limit,
  formula,
  source,
  status,
  text,
  cylinder,
  tester,
  testerAsked,
}: RuleFinding) => ({
  id,
  verdict,
  value: value === undefined ? undefined : holds === "pressure" ? kPa(value) : value,
  limit: limit === undefined ? undefined : holds === "pressure" ? kPa(limit.value) : limit.value,
  unit: limit === undefined ? undefined : holds === "pressure" ? "kPa" : "1",
  formula,
  source,
  status,
  text,
  cylinder,
  tester,
  testerAsked:
    testerAsked === undefined
      ? undefined
      : { restrictor_mm: fromSi(testerAsked.restrictor, "mm"), supply_kPa: kPa(testerAsked.supply) },
});
