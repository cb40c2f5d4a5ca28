// One test of one engine, assessed: trust, correction, spread, standing of each cylinder, rules, what to test next.

import { type PressureCorrection, pressureCorrection, speedDoubt } from "../cranking/index.ts";
import { gaugePressure } from "../quantity/index.ts";
import type { EngineRecord, PressureKind, Test } from "../record/index.ts";
import { type Rule, type RuleReading, judgeRules, shippedRules } from "../rules/index.ts";
import { type Instrument, type Spread, readingUncertainty, spreadOf, standing, worse } from "../spread/index.ts";
import { median } from "../statistics/index.ts";
import { earlierFlags, forwardOf } from "./flags.ts";
import { assessLeakDown } from "./assess-leak-down.ts";
import type { CylinderAssessment, PressureValue, TestAssessment } from "./assessment.ts";
import { nextTests } from "./next-tests.ts";
import { type EngineFigures, figuresOf, judgeTrust } from "./trust.ts";
import { type CylinderValue, type KindValues, valuesOf } from "./values.ts";

const kinds: readonly PressureKind[] = ["dry", "wet", "first-stroke", "running", "snap-throttle"];

/** Gauge to gauge, where nothing is known of the gauge: class 2.5 read at half scale; judgement. */
const unknownGauge = 0.03;

/** Assesses one test. @param sheet - the rules to hold it against @throws RangeError when the test is not of the record */
export const assessTest = (record: EngineRecord, test: Test, sheet: readonly Rule[] = shippedRules): TestAssessment => {
  if (!record.tests.includes(test)) throw new RangeError(`assessTest: ${test.id} is no test of ${record.engine.id}`);
  const figures = figuresOf(record);
  const trust = judgeTrust(record, test, figures);
  const correction = pressureCorrection(test.conditions);
  const values = new Map(kinds.map((what) => [what, valuesOf(test, what)] as const));
  const dry = values.get("dry");
  const pressures = record.engine.cylinders.map((_, i) => pressuresOf({ record, figures, values, correction }, i));
  const spread = spreadOf(pressures.map(({ dry: value }) => (value === undefined || value.pegged ? undefined : value.corrected)));
  const forward = forwardOf(record, test, "dry", figures);
  const earlier = earlierFlags(record, test, "dry", figures);
  const leak = assessLeakDown(record, test, figures);
  const cylinders = record.engine.cylinders.map((label, i): CylinderAssessment => {
    const own = pressures[i] ?? {};
    const verdict = forward?.cylinders[i];
    const belowLimit = isBelowLimit(record, own.dry, spread);
    const dryStanding = verdict === undefined ? undefined : standing({ verdict, repeats: (own.dry?.readings.length ?? 0) + (earlier[i]?.sameDayRepeats ?? 0), flaggedBefore: earlier[i]?.flaggedBefore === true, belowLimit });
    const both = worse([dryStanding, leak[i]?.standing]);
    const heard = test.heard?.[i];
    const belowMedian = spread?.belowMedian[i];
    return {
      label,
      pressures: own,
      flaggedBefore: earlier[i]?.flaggedBefore === true,
      belowLimit,
      ...(leak[i] === undefined ? {} : { leakDown: leak[i] }),
      ...(heard === undefined ? {} : { heard }),
      ...(both === undefined ? {} : { standing: both }),
      ...(dryStanding === undefined ? {} : { dryStanding }),
      ...(verdict?.kind === "read" && verdict.t !== undefined ? { t: verdict.t } : {}),
      ...(belowMedian === undefined ? {} : { belowMedian }),
      ...belowOthers(pressures, i),
    };
  });
  const rules = dry === undefined ? [] : judgeRules(sheet, ruleReadings({ record, figures, values, correction }, dry, pressures), record.engine);
  return {
    record,
    test,
    trust,
    correction,
    cylinders,
    ...(spread === undefined ? {} : { spread }),
    rules,
    nextTests: nextTests(record, test, trust, cylinders),
    missing: trust.missing,
  };
};

const belowOthers = (pressures: readonly Partial<Record<PressureKind, PressureValue>>[], cylinder: number): { belowOthers?: number } => {
  const usable = (value: PressureValue | undefined): value is PressureValue => value !== undefined && !value.pegged;
  const own = pressures[cylinder]?.dry;
  const others = pressures.flatMap(({ dry }, i) => (i !== cylinder && usable(dry) && dry.value > 0 ? [dry.corrected] : []));
  return usable(own) && others.length > 0 ? { belowOthers: 1 - own.corrected / median(others) } : {};
};

interface Bench {
  readonly record: EngineRecord;
  readonly figures: EngineFigures;
  readonly values: ReadonlyMap<PressureKind, KindValues | undefined>;
  readonly correction: PressureCorrection;
}

const pressuresOf = (
  { record, figures, values, correction }: Bench,
  cylinder: number,
): Partial<Record<PressureKind, PressureValue>> =>
  Object.fromEntries(
    kinds.flatMap((what) => {
      const kind = values.get(what);
      const cell = kind?.cells[cylinder];
      return kind === undefined || cell === undefined ? [] : [[what, pressureValue(cell, instrumentOf(record, figures, kind), correction)] as const];
    }),
  );

const pressureValue = (cell: CylinderValue, instrument: GaugeDoubt, { factor, uncertainty }: PressureCorrection): PressureValue => {
  const corrected = cell.value * factor;
  const relative =
    cell.value > 0
      ? Math.hypot(readingUncertainty({ pressure: cell.value, repeats: cell.readings.length }, instrument, uncertainty).relative, instrument.unknown)
      : undefined;
  return {
    readings: cell.readings,
    value: cell.value,
    corrected,
    ...(relative === undefined ? {} : { uncertainty: relative * corrected }),
    doubtful: cell.doubtful,
    pegged: cell.pegged,
  };
};

interface GaugeDoubt extends Instrument {
  /** Stands in for the class where the gauge is not described. */
  readonly unknown: number;
}

const instrumentOf = (record: EngineRecord, figures: EngineFigures, kind: KindValues): GaugeDoubt => {
  const gauge = record.gauges.find(({ id }) => id === kind.gauge);
  const known = gauge?.classPercent !== undefined && gauge.fullScale !== undefined ? { classPercent: gauge.classPercent, fullScale: gauge.fullScale } : undefined;
  return {
    repeatability: figures.repeatability.blended,
    ...(gauge?.division === undefined ? {} : { division: gauge.division }),
    ...(known === undefined ? {} : { accuracy: known }),
    unknown: known === undefined ? unknownGauge : 0,
  };
};

/** Below the maker's own limits, or below three quarters of the highest where the maker gives no ratio of his own. */
const isBelowLimit = (record: EngineRecord, value: PressureValue | undefined, spread: Spread | undefined): boolean => {
  if (value === undefined || value.pegged || spread === undefined) return false;
  const { minimum, difference, lowestToHighest } = record.engine.compressionLimits;
  const maker = minimum !== undefined || difference !== undefined || lowestToHighest !== undefined;
  if (minimum !== undefined && value.corrected < minimum) return true;
  if (difference !== undefined && spread.highest - value.corrected > difference) return true;
  if (lowestToHighest !== undefined) return value.corrected / spread.highest < lowestToHighest;
  return !maker && value.corrected / spread.highest < 0.75;
};

const ruleReadings = (
  { record, figures, correction }: Bench,
  dry: KindValues,
  pressures: readonly Partial<Record<PressureKind, PressureValue>>[],
): RuleReading[] => {
  const instrument = instrumentOf(record, figures, dry);
  return record.engine.cylinders.map((label, i): RuleReading => {
    const value = pressures[i]?.dry;
    const pressure = value === undefined || value.value <= 0 ? 1 : value.value;
    const parts = readingUncertainty({ pressure, repeats: Math.max(1, value?.readings.length ?? 1) }, instrument, correction.uncertainty);
    return {
      label,
      state: value === undefined ? "not-taken" : value.pegged ? "pegged" : value.doubtful ? "doubtful" : "taken",
      ...(value === undefined ? {} : { pressureCorrected: gaugePressure(value.corrected), fullyCorrected: gaugePressure(value.corrected) }),
      ownUncertainty: value !== undefined && value.value > 0 ? parts.reading : 0,
      commonUncertainty: Math.hypot(parts.gauge, instrument.unknown, correction.uncertainty, speedDoubt(record.engine.ignition)),
    };
  });
};
