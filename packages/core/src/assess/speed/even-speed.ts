// Cylinders of one test that were cranked at differing speeds: the slower reads lower without being worse. They are compared
// at one speed, or where that is refused no shortfall that the speed may explain counts.

import {
  type SpeedRefusal,
  commonSpeedDoubt,
  correctSpeed,
  refusedLossFree,
  refusedSpeeds,
  speedRefusal,
  usualSpeedEffect,
} from "../../cranking/index.ts";
import { type Speed, speed as rpm } from "../../quantity/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import { correctionOf } from "../values/correction.ts";
import { type KindValues, isComparable, valuesOf } from "../values/values.ts";
import { lossFreeOf, sweptOf, usualLossOf } from "./speed-estimates.ts";
import { speedsRead } from "./speeds.ts";
import { middleOf, readingsOf, refusedByTest } from "./test-at-speed.ts";

/** Fastest to slowest, from which it tells: some 1 % of a reading; judgement. */
const differs = 1.03;
/** How many times the usual effect of the speed is forgiven where it could not be corrected: the usual loss is known to
 *  45 %, two standard deviations; rounded up. */
const forgiven = 2;

export interface Uneven {
  /** Middle speed of the cylinders: they are compared at it [rpm]. */
  readonly to: number;
  readonly refused?: SpeedRefusal;
  /** In the engine's order: ln(reading at that speed / reading); 0 where refused. */
  readonly lnFactors: readonly number[];
  /** ln of the most that a lower speed may have taken from each, 0 or more. */
  readonly lnForgiven: readonly number[];
}

/** Undefined where the cylinders of the dry readings were cranked alike, or nothing says otherwise.
 *  @source handbook/cranking.md I.1 and I.3 (computed from a cycle model; no published figure) */
export const unevenOf = (record: EngineRecord, test: Test): Uneven | undefined => {
  // nothing but a row of speeds tells one cylinder's from another's
  if (test.perCylinder.speed === undefined) return undefined;
  const values = valuesOf(test, "dry");
  if (values === undefined) return undefined;
  const speeds = speedsRead(test, values);
  const known = speeds.filter((speed) => speed !== undefined);
  const [least, most] = [Math.min(...known), Math.max(...known)];
  if (!(most > differs * least)) return undefined;
  const to = median(known);
  const { ignition } = record.engine;
  const evened = evenFactors(record, test, { values, speeds, to });
  return {
    to,
    ...("refused" in evened
      ? { refused: evened.refused, lnFactors: speeds.map(() => 0) }
      : { lnFactors: evened.lnFactors }),
    lnForgiven: speeds.map((speed = rpm(least)) =>
      Math.max(0, -forgiven * usualSpeedEffect(ignition, sweptOf(record.engine), { from: speed, to })),
    ),
  };
};

interface AtSpeeds {
  readonly values: KindValues;
  readonly speeds: readonly (Speed | undefined)[];
  readonly to: number;
}

/** Each cylinder by its own loss speed, as for any other step; refused where any of them could not carry it. */
const evenFactors = (
  record: EngineRecord,
  test: Test,
  { values, speeds, to }: AtSpeeds,
): { readonly refused: SpeedRefusal } | { readonly lnFactors: readonly number[] } => {
  const known = speeds.filter((speed) => speed !== undefined);
  const blank = record.engine.cylinders.filter((_, i) => {
    const cell = values.cells[i];
    return cell !== undefined && isComparable(cell) && cell.value > 0 && speeds[i] === undefined;
  });
  const refused =
    refusedByTest(record, test) ??
    (blank.length > 0 ? speedRefusal("speed-not-recorded", { labels: blank }) : refusedSpeeds(known, to));
  if (refused !== undefined) return { refused };
  const readings = readingsOf(values, speeds, correctionOf(record, test));
  const middle = middleOf(readings, to, usualLossOf(record.engine).value);
  const { lossFree } = lossFreeOf(record, middle, values.gauge);
  const corrected = readings.map((reading) =>
    reading === undefined ? undefined : correctSpeed(reading, { to: rpm(to), lossFree, middle }, "unknown"),
  );
  const doubt = Math.max(
    ...corrected.flatMap((one) => (one === undefined ? [] : commonSpeedDoubt(one.doubts))),
  );
  const tooLittle = refusedLossFree(lossFree, { middle: middle.pressure, doubt });
  if (tooLittle !== undefined) return { refused: tooLittle };
  return {
    lnFactors: corrected.map((one, i) => {
      const reading = readings[i];
      return one === undefined || reading === undefined ? 0 : Math.log(one.pressure / reading.pressure);
    }),
  };
};
