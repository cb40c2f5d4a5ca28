// One cylinder read at two cranking speeds: what this engine would read on this gauge without losses.

import {
  type CalibrationOutcome,
  type PressureCorrection,
  lossFreeFromTwoSpeeds,
  speedRefusal,
} from "../../cranking/index.ts";
import { type GaugePressure, type Speed, gaugePressure } from "../../quantity/index.ts";
import type { Engine, Gauge } from "../../record/index.ts";
import { mean, pooledRepeatability } from "../../statistics/index.ts";
import { trueReading } from "../values/values.ts";

/** Readings of one cylinder at one speed. */
export interface SpeedReadings {
  readonly speed: Speed;
  /** As read, each above 0. */
  readonly readings: readonly GaugePressure[];
}

/** Standard uncertainty of ln of a cranking speed that was measured. @source handbook/cranking.md I.4 */
const measuredSpeed = 0.015;

/** P0 in reference air. The scatter of a mean is that of these repeats blended with the usual one, and the steps of the
 *  dial; the doubt about the air of the day is added.  @param correction - to reference air
 *  @throws RangeError without readings or with one of 0  @source handbook/cranking.md I.2, I.5; statistics.md F */
export const speedCalibration = (
  { engine, gauge }: { readonly engine: Engine; readonly gauge: Gauge },
  { slow, fast }: { readonly slow: SpeedReadings; readonly fast: SpeedReadings },
  correction: PressureCorrection,
): CalibrationOutcome => {
  if (engine.cycle === "two-stroke" || engine.porting !== "valves")
    return { refused: speedRefusal("two-stroke") };
  if (engine.compressionRelease === "automatic") return { refused: speedRefusal("release") };
  const values = ({ readings }: SpeedReadings): readonly number[] =>
    readings.map((reading) => Math.log(trueReading(reading, gauge.readsHigh ?? 0)));
  const { blended } = pooledRepeatability([values(slow), values(fast)]);
  const at = (one: SpeedReadings) => {
    const pressure = Math.exp(mean(values(one)));
    const step = (gauge.division ?? 0) / (Math.sqrt(12) * pressure);
    return {
      speed: one.speed,
      pressure: gaugePressure(pressure * correction.factor),
      uPressure: Math.hypot(blended, step) / Math.sqrt(one.readings.length),
      uSpeed: measuredSpeed,
    };
  };
  const outcome = lossFreeFromTwoSpeeds(at(slow), at(fast));
  return "refused" in outcome
    ? outcome
    : { ...outcome, uncertainty: Math.hypot(outcome.uncertainty, correction.uncertainty) };
};
