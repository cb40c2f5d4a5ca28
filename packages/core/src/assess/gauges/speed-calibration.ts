// One cylinder read at two cranking speeds: what this engine would read on this gauge without losses.

import {
  type PressureCorrection,
  type SpeedRefusal,
  type TwoSpeedsRefusal,
  lossFreeFromTwoSpeeds,
  lossSpeed,
  speedRefusal,
} from "../../cranking/index.ts";
import { type GaugePressure, type Speed, gaugePressure } from "../../quantity/index.ts";
import type { Engine, Gauge } from "../../record/index.ts";
import { mean, pooledRepeatability, rangeUpperTail } from "../../statistics/index.ts";
import { trueReading } from "../values/values.ts";

/** Readings of one cylinder at one speed. */
export interface SpeedReadings {
  readonly speed: Speed;
  /** As read, each above 0. */
  readonly readings: readonly GaugePressure[];
}

/** What an engine would read on this gauge without losses, from one cylinder at two cranking speeds. */
export interface SpeedCalibration {
  readonly P0: GaugePressure;
  /** Standard uncertainty of ln P0. */
  readonly uncertainty: number;
  /** What the cylinder that was read loses: 1/sqrt(P) is a straight line in 1/N with this slope. */
  readonly lossSpeed: Speed;
  /** The mean of each speed in reference air, what the gauge reads too high taken out; u of ln of it. */
  readonly slow: MeanAtSpeed;
  readonly fast: MeanAtSpeed;
}

interface MeanAtSpeed {
  readonly speed: Speed;
  readonly pressure: GaugePressure;
  readonly uPressure: number;
  readonly uSpeed: number;
}

/** Why a calibration at two speeds gives no number. */
export type SpeedCalibrationRefused =
  | TwoSpeedsRefusal
  | SpeedRefusal<"two-stroke" | "release">
  /** Repeats at one speed lie further apart than once in a hundred times. */
  | { readonly code: "repeats-differ"; readonly at: "slow" | "fast"; readonly by: GaugePressure }
  /** Standard uncertainty of ln P0. */
  | { readonly code: "tells-too-little"; readonly uncertainty: number };

/** Standard uncertainty of ln of a cranking speed that was measured. @source handbook/cranking.md I.4 */
const measuredSpeed = 0.015;
/** Standard deviation of ln of one reading. @source handbook/statistics.md F, a choice */
const usualRepeatability = 0.015;
/** A loss-free reading less sure than this says less than the usual figures do; judgement. */
const mostDoubt = 0.25;

/** P0 in reference air. The scatter of a mean is that of these repeats blended with the usual one, and the steps of the
 *  dial; the doubt about the air of the day is added.  @param correction - to reference air
 *  @throws RangeError without readings or with one of 0  @source handbook/cranking.md I.2, I.5; statistics.md F */
export const speedCalibration = (
  { engine, gauge }: { readonly engine: Engine; readonly gauge: Gauge },
  both: { readonly slow: SpeedReadings; readonly fast: SpeedReadings },
  correction: PressureCorrection,
): SpeedCalibration | { readonly refused: SpeedCalibrationRefused } => {
  if (engine.cycle === "two-stroke" || engine.porting !== "valves")
    return { refused: speedRefusal("two-stroke") };
  if (engine.compressionRelease === "automatic") return { refused: speedRefusal("release") };
  for (const at of ["slow", "fast"] as const)
    if (liesApart(both[at]))
      return { refused: { code: "repeats-differ", at, by: gaugePressure(rangeOf(both[at].readings)) } };
  const values = ({ readings }: SpeedReadings): readonly number[] =>
    readings.map((reading) => Math.log(trueReading(reading, gauge.readsHigh ?? 0)));
  const { blended } = pooledRepeatability([values(both.slow), values(both.fast)], usualRepeatability);
  const meanAt = (one: SpeedReadings): MeanAtSpeed => {
    const pressure = Math.exp(mean(values(one)));
    const step = (gauge.division ?? 0) / (Math.sqrt(12) * pressure);
    return {
      speed: one.speed,
      pressure: gaugePressure(pressure * correction.factor),
      uPressure: Math.hypot(blended, step) / Math.sqrt(one.readings.length),
      uSpeed: measuredSpeed,
    };
  };
  const [slow, fast] = [meanAt(both.slow), meanAt(both.fast)];
  const outcome = lossFreeFromTwoSpeeds(slow, fast);
  if ("refused" in outcome) return outcome;
  const uncertainty = Math.hypot(outcome.uncertainty, correction.uncertainty);
  return uncertainty > mostDoubt
    ? { refused: { code: "tells-too-little", uncertainty } }
    : {
        P0: outcome.P0,
        uncertainty,
        lossSpeed: lossSpeed(outcome.P0, slow.pressure, slow.speed),
        slow,
        fast,
      };
};

const rangeOf = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

/** Further apart than repeats of the usual scatter lie once in a hundred times. */
const liesApart = ({ readings }: SpeedReadings): boolean =>
  readings.length > 1 &&
  rangeUpperTail(rangeOf(readings.map(Math.log)) / usualRepeatability, readings.length) < 0.01;
