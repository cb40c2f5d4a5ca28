// The dry readings of one test brought to the speed that the engine's readings are held against, or why they are not.

import {
  type LossFreePressure,
  type PressureCorrection,
  type ReadingAtSpeed,
  type SpeedCorrected,
  type SpeedRefusal,
  commonSpeedDoubt,
  correctSpeed,
  refusedLossFree,
  refusedSpeeds,
  speedRefusal,
} from "../../cranking/index.ts";
import { type Speed, gaugePressure, speed as rpm } from "../../quantity/index.ts";
import { type EngineRecord, type Test, dayOf } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import { coldAgainst } from "../trust/cold.ts";
import type { EngineFigures } from "../figures.ts";
import { leakEvidence } from "./leak-shown.ts";
import { lossFreeOf, usualLossOf } from "./speed-estimates.ts";
import type { SpeedAssessment } from "./speed-assessment.ts";
import { speedsOf } from "./speeds.ts";
import { type KindValues, isComparable, valuesOf } from "../values/values.ts";

export interface SpeedFacts {
  readonly correction: PressureCorrection;
  readonly figures: EngineFigures;
}

/** Undefined where the test holds no dry reading that can be compared.
 *  @source handbook/cranking.md I (computed from a cycle model; no published figure) */
export const speedOf = (record: EngineRecord, test: Test, facts: SpeedFacts): SpeedAssessment | undefined => {
  const values = valuesOf(test, "dry");
  const read = (values?.cells ?? []).map(
    (cell) => cell !== undefined && isComparable(cell) && cell.value > 0,
  );
  if (values === undefined || !read.includes(true)) return undefined;
  const speeds = speedsOf(test, values).map((speed, i) => (read[i] === true ? speed : undefined));
  const known = speeds.filter((speed) => speed !== undefined);
  const from = known.length === 0 ? undefined : median(known);
  const to = facts.figures.referenceSpeed;
  const said = {
    ...(from === undefined ? {} : { from, least: Math.min(...known), most: Math.max(...known) }),
    ...(to === undefined ? {} : { to }),
  };
  const refuse = (refused: SpeedRefusal, more: Partial<SpeedAssessment> = {}): SpeedAssessment => ({
    ...said,
    ...more,
    refused,
    cylinders: values.cells.map(() => undefined),
  });
  const refused = refusedByTest(record, test);
  if (refused !== undefined && from !== undefined) return refuse(refused);
  const blank = record.engine.cylinders.filter((_, i) => read[i] === true && speeds[i] === undefined);
  if (from === undefined || blank.length > 0)
    return refuse(speedRefusal("speed-not-recorded", from === undefined ? {} : { labels: blank }));
  if (to === undefined) return refuse(speedRefusal("no-reference-speed"));
  const outside = refusedSpeeds(known, to);
  if (outside !== undefined) return refuse(outside);
  const readings = readingsOf(values, speeds, facts.correction);
  const middle = middleOf(readings, from, usualLossOf(record.engine).value);
  const { lossFree, calibration } = lossFreeOf(record, middle, values.gauge);
  const p0 = { lossFree, ...(calibration === undefined ? {} : { calibration }) };
  const step = { to: rpm(to), lossFree, middle };
  const doubt = commonSpeedDoubt(correctSpeed(middle, step, "alone").doubts);
  const tooLittle = refusedLossFree(lossFree, { middle: middle.pressure, doubt });
  if (tooLittle !== undefined) return refuse(tooLittle, p0);
  const evidence = leakEvidence(record, test, facts);
  return {
    ...said,
    ...p0,
    cylinders: readings.map((reading, i) =>
      reading === undefined ? undefined : correctSpeed(reading, step, evidence[i] ?? "unknown"),
    ),
  };
};

/** What of engine and test the form of the correction was not examined for. */
const refusedByTest = (record: EngineRecord, test: Test): SpeedRefusal | undefined => {
  const { cycle, porting, compressionRelease, ignition } = record.engine;
  const { release, throttle } = dayOf(test, valuesOf(test, "dry")?.gauge);
  if (cycle === "two-stroke" || porting !== "valves") return speedRefusal("two-stroke");
  if (release === "active" || (compressionRelease === "automatic" && release !== "defeated"))
    return speedRefusal("release");
  if (throttle === "closed" && ignition !== "compression") return speedRefusal("throttle-closed");
  return coldAgainst(record, test) === undefined ? undefined : speedRefusal("cold");
};

/** In reference air, at the speed each was read. */
const readingsOf = (
  { cells }: KindValues,
  speeds: readonly (Speed | undefined)[],
  { factor }: PressureCorrection,
): readonly (ReadingAtSpeed | undefined)[] =>
  cells.map((cell, i) => {
    const speed = speeds[i];
    return cell === undefined || speed === undefined
      ? undefined
      : { pressure: gaugePressure(cell.value * factor), speed };
  });

/** The middle reading at the middle speed. Readings at other speeds are first brought there by the usual loss.
 *  @param usual - loss speed [rpm] */
const middleOf = (
  readings: readonly (ReadingAtSpeed | undefined)[],
  from: number,
  usual: number,
): ReadingAtSpeed => {
  const there = readings.flatMap((reading) => {
    if (reading === undefined) return [];
    const { pressure, speed } = reading;
    return speed === from ? pressure : pressure * ((1 + usual / (2 * speed)) / (1 + usual / (2 * from))) ** 2;
  });
  return { pressure: gaugePressure(median(there)), speed: rpm(from) };
};
