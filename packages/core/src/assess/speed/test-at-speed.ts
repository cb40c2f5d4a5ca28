// What the speed correction of a test starts from: whether its form was examined for such a test at all, the readings in
// reference air at the speed each was taken at, and the middle of them.

import {
  type PressureCorrection,
  type ReadingAtSpeed,
  type SpeedRefusal,
  speedRefusal,
} from "../../cranking/index.ts";
import { type Speed, gaugePressure, speed as rpm } from "../../quantity/index.ts";
import { type EngineRecord, type Test, dayOf } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import { coldAgainst } from "../trust/cold.ts";
import { type KindValues, valuesOf } from "../values/values.ts";

/** What of engine and test the form of the correction was not examined for. */
export const refusedByTest = (record: EngineRecord, test: Test): SpeedRefusal | undefined => {
  const { cycle, porting, compressionRelease, ignition } = record.engine;
  const { release, throttle } = dayOf(test, valuesOf(test, "dry")?.gauge);
  if (cycle === "two-stroke" || porting !== "valves") return speedRefusal("two-stroke");
  if (release === "active") return speedRefusal("release");
  if (compressionRelease === "automatic" && release !== "defeated") return speedRefusal("release-unknown");
  if (throttle === "closed" && ignition !== "compression") return speedRefusal("throttle-closed");
  const against = coldAgainst(record, test);
  if (against === undefined) return undefined;
  return speedRefusal(against === "other-tests" ? "cold" : "cold-for-maker");
};

/** In reference air, at the speed each was read. */
export const readingsOf = (
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
export const middleOf = (
  readings: readonly (ReadingAtSpeed | undefined)[],
  from: number,
  usual: number,
): ReadingAtSpeed => {
  const there: number[] = [];
  for (const reading of readings) {
    if (reading === undefined) continue;
    const { pressure, speed } = reading;
    const step = speed === from ? 1 : ((1 + usual / (2 * speed)) / (1 + usual / (2 * from))) ** 2;
    there.push(pressure * step);
  }
  return { pressure: gaugePressure(median(there)), speed: rpm(from) };
};
