// The dry readings of one test brought to the speed that the engine's readings are held against, or why they are not.

import {
  type PressureCorrection,
  type ReadingAtSpeed,
  type SpeedRefusal,
  type SpeedStep,
  commonSpeedDoubt,
  correctSpeed,
  pressureAtSpeed,
  refusedLossFree,
  refusedSpeeds,
  speedRefusal,
} from "../../cranking/index.ts";
import { type GaugePressure, type Speed, speed as rpm } from "../../quantity/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import type { EngineFigures } from "../figures.ts";
import { leakEvidence } from "./leak-shown.ts";
import { lossFreeOf, usualLossOf } from "./speed-estimates.ts";
import { type Uneven, unevenOf } from "./even-speed.ts";
import type { SpeedAssessment } from "./speed-assessment.ts";
import { speedsRead } from "./speeds.ts";
import { middleOf, readingsOf, refusedByTest } from "./test-at-speed.ts";
import { type KindValues, isComparable, valuesOf } from "../values/values.ts";

export interface SpeedFacts {
  readonly correction: PressureCorrection;
  readonly figures: EngineFigures;
}

/** Undefined where the test holds no dry reading that can be compared.
 *  @source handbook/cranking.md I (computed from a cycle model; no published figure) */
export const speedOf = (record: EngineRecord, test: Test, facts: SpeedFacts): SpeedAssessment | undefined => {
  const cranked = crankedOf(test);
  if (cranked === undefined) return undefined;
  const { values, speeds, known, from } = cranked;
  const uneven = unevenOf(record, test);
  const to = facts.figures.referenceSpeed;
  const said = {
    ...(from === undefined ? {} : { from, least: Math.min(...known), most: Math.max(...known) }),
    ...(to === undefined ? {} : { to }),
    speeds,
    ...(uneven === undefined ? {} : { uneven: unevenSaid(uneven) }),
  };
  const basis = basisOf(record, test, cranked, facts);
  const found = { ...said, ...basis.known };
  if ("refused" in basis)
    return { ...found, refused: basis.refused, cylinders: values.cells.map(() => undefined) };
  const evidence = leakEvidence(record, test, facts);
  return {
    ...found,
    cylinders: basis.readings.map((reading, i) =>
      reading === undefined ? undefined : correctSpeed(reading, basis.step, evidence[i] ?? "unknown"),
    ),
  };
};

/** The readings at that speed alone, without what tells how they came about.
 *  @returns "refused" where the readings stand as they are; undefined as above */
export const pressuresAtSpeed = (
  record: EngineRecord,
  test: Test,
  facts: SpeedFacts,
): readonly (GaugePressure | undefined)[] | "refused" | undefined => {
  const cranked = crankedOf(test);
  if (cranked === undefined) return undefined;
  const basis = basisOf(record, test, cranked, facts);
  if ("refused" in basis) return "refused";
  const evidence = leakEvidence(record, test, facts);
  return basis.readings.map((reading, i) =>
    reading === undefined ? undefined : pressureAtSpeed(reading, basis.step, evidence[i] ?? "unknown"),
  );
};

/** The dry readings of a test that compare, and the speeds they were taken at. */
interface Cranked {
  readonly values: KindValues;
  /** In the engine's order. */
  readonly read: readonly boolean[];
  readonly speeds: readonly (Speed | undefined)[];
  readonly known: readonly Speed[];
  readonly from: number | undefined;
}

const crankedOf = (test: Test): Cranked | undefined => {
  const values = valuesOf(test, "dry");
  if (values === undefined) return undefined;
  const read = values.cells.map((cell) => cell !== undefined && isComparable(cell) && cell.value > 0);
  if (!read.includes(true)) return undefined;
  const speeds = speedsRead(test, values);
  const known = speeds.filter((speed) => speed !== undefined);
  return { values, read, speeds, known, from: known.length === 0 ? undefined : median(known) };
};

/** What of the correction was come to know on the way. */
type Known = Partial<Pick<SpeedAssessment, "lossFree" | "calibration" | "middle">>;

/** What the readings of a test are corrected by, or why they are not. */
type Basis =
  | { readonly known: Known; readonly refused: SpeedRefusal }
  | {
      readonly known: Known;
      readonly readings: readonly (ReadingAtSpeed | undefined)[];
      readonly step: SpeedStep;
    };

const basisOf = (
  record: EngineRecord,
  test: Test,
  { values, read, speeds, known, from }: Cranked,
  { correction, figures: { referenceSpeed: to } }: SpeedFacts,
): Basis => {
  const refuse = (refused: SpeedRefusal, more: Known = {}): Basis => ({ known: more, refused });
  const refused = refusedByTest(record, test);
  if (refused !== undefined && from !== undefined) return refuse(refused);
  const blank = record.engine.cylinders.filter((_, i) => read[i] === true && speeds[i] === undefined);
  if (from === undefined || blank.length > 0)
    return refuse(speedRefusal("speed-not-recorded", from === undefined ? {} : { labels: blank }));
  if (to === undefined) return refuse(speedRefusal("no-reference-speed"));
  const outside = refusedSpeeds(known, to);
  if (outside !== undefined) return refuse(outside);
  const readings = readingsOf(values, speeds, correction);
  const middle = middleOf(readings, from, usualLossOf(record.engine).value);
  const p0 = lossFreeOf(record, middle, values.gauge);
  const { lossFree } = p0;
  const step = { to: rpm(to), lossFree, middle };
  const doubt = commonSpeedDoubt(correctSpeed(middle, step, "alone").doubts);
  const tooLittle = refusedLossFree(lossFree, { middle: middle.pressure, doubt });
  if (tooLittle !== undefined) return refuse(tooLittle, { ...p0, middle: middle.pressure });
  return { known: p0, readings, step };
};

const unevenSaid = ({ to, refused }: Uneven): NonNullable<SpeedAssessment["uneven"]> => ({
  to,
  ...(refused === undefined ? {} : { refused }),
});
