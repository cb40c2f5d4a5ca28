// The detail behind the screen of `show`: every reading, the correction, the mends, the sources.

import {
  type CylinderAssessment,
  type PressureUnit,
  type TestAssessment,
  writeNumber,
} from "@sealtrend/core";
import { buildUpWhy } from "./show-build-up.ts";
import { causesWhy } from "./show-causes-why.ts";
import { hoseWhy } from "./show-hose.ts";
import { leakWhy } from "./show-leak-why.ts";
import { oilWhy } from "./show-oil-why.ts";
import { lossText, speedWhy } from "./show-speed.ts";
import { placesRead } from "../units.ts";
import { percent, sentence, theOthers } from "../words.ts";

/** Paragraphs, not wrapped. */
export const whyText = (assessment: TestAssessment, unit: PressureUnit): readonly string[] => {
  const { trust, rules, record, test, cylinders } = assessment;
  const meter =
    test.meter === undefined ? "" : `, ${String(test.meter)} ${record.engine.meter ?? "on the meter"}`;
  const dry = cylinders.some(({ pressures }) => pressures.dry !== undefined);
  return [
    `${test.date}${meter}`,
    ...cylinders.flatMap((cylinder) => cylinderText(cylinder, assessment, unit)),
    ...(dry ? [...spreadText(assessment, unit), airText(assessment), ...speedWhy(assessment, unit)] : []),
    ...leakWhy(assessment),
    ...hoseWhy(assessment),
    ...oilWhy(assessment),
    ...buildUpWhy(assessment),
    ...causesWhy(assessment),
    ...trust.reasons.map(({ text, mend }) => `${sentence(text)}: ${mend}.`),
    ...rules.map(({ text, source, status }) => `${sentence(text)} (${source}; ${status}).`),
  ];
};

const cylinderText = (
  cylinder: CylinderAssessment,
  assessment: TestAssessment,
  unit: PressureUnit,
): string[] => {
  const {
    label,
    pressures: { dry },
    t,
    belowOthers,
    standing,
  } = cylinder;
  if (dry === undefined) return [];
  const places = placesRead(assessment, unit);
  const atLeast = dry.pegged ? ">" : "";
  const takes = dry.readings.map((value) => `${atLeast}${writeNumber(value, unit, places)}`).join(" ");
  const doubt =
    dry.uncertainty === undefined || dry.pegged
      ? ""
      : ` ± ${writeNumber(dry.uncertainty, unit, Math.max(1, places ?? 1))}`;
  const far =
    t !== undefined
      ? `, t ${t.toFixed(2)}`
      : standing === undefined || dry.value <= 0
        ? ""
        : ", in the upper half";
  const under =
    belowOthers === undefined
      ? ""
      : `, ${percent(Math.abs(belowOthers), 1)} ${belowOthers < 0 ? "over" : "under"} ${theOthers(assessment.cylinders.length)}`;
  return [
    `${label}: ${takes} read, ${atLeast}${writeNumber(dry.corrected, unit, places)}${doubt} ${unit} at sea level${lossText(cylinder, assessment, unit)}${far}${under}`,
  ];
};

const spreadText = (assessment: TestAssessment, unit: PressureUnit): string[] => {
  const { spread } = assessment;
  if (spread === undefined) return [];
  const scatter = spread.cv === undefined ? "" : `, scatter ${percent(spread.cv, 1)}`;
  const middle = writeNumber(spread.median, unit, placesRead(assessment, unit));
  return [`Lowest/highest ${spread.ratio.toFixed(3)}, middle ${middle} ${unit}${scatter}.`];
};

const sources = {
  station: "read at the place",
  qnh: "from the weather report and the height",
  altitude: "from the height alone",
  assumed: "assumed: neither height nor barometer is known",
} as const;

const airText = ({ correction }: TestAssessment): string => {
  const { station, reference, from, basis, factor, uncertainty, temperatureExponent: share } = correction;
  const hPa = (pressure: number): string => `${(pressure / 100).toFixed(0)} hPa`;
  const thermal =
    share === 0 ? "" : `, of which x ${((factor * station) / reference).toFixed(4)} for the air temperature`;
  const contradiction =
    basis === "density" && share !== 1
      ? ` engine.json says density as well, which would take the power 1: correction.temperatureExponent ${String(share)} counts.`
      : "";
  return `Air ${hPa(station)}, ${sources[from]}; brought to ${hPa(reference)} by ${byText(share)}: x ${factor.toFixed(4)} ± ${(factor * uncertainty).toFixed(4)}${thermal}.${contradiction}`;
};

const byText = (share: number): string =>
  share === 0
    ? "pressure"
    : share === 1
      ? "density"
      : `pressure and air temperature to the power ${String(share)}`;
