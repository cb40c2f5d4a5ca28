// Calibration: one cylinder read at two cranking speeds gives the reading without losses, for this engine and this gauge.

import { type GaugePressure, type Speed, gaugePressure } from "../../quantity/index.ts";
import { type SpeedRefusal, outsideSpeeds, speedRefusal } from "./speed-refusal.ts";

/** The mean reading of one cylinder at one speed, in reference air. */
export interface CalibrationReading {
  readonly speed: Speed;
  readonly pressure: GaugePressure;
  /** Standard uncertainty of ln pressure, of the mean. */
  readonly uPressure: number;
  /** Standard uncertainty of ln speed. */
  readonly uSpeed: number;
}

/** P_0 from a calibration of this engine on this gauge. */
export interface CalibratedLossFree {
  readonly P0: GaugePressure;
  /** Standard uncertainty of ln P0. */
  readonly uncertainty: number;
}

/** Why two speeds tell no reading without losses. */
export type TwoSpeedsRefusal = SpeedRefusal<
  "speed-out-of-range" | "speeds-too-close" | "not-rising" | "rises-too-much"
>;

/** P_0 by two cranking speeds, or why they do not give it. */
export type CalibrationOutcome = CalibratedLossFree | { readonly refused: TwoSpeedsRefusal };

/** The second speed must be this many times the first. */
const leastRatio = 1.25;

/** P_0 = [(N_2 - N_1)/(s_2 - s_1)]^2, s_i = N_i/sqrt(P_i);
 *  u^2(ln P_0) = g_1^2 u_r1^2 + g_2^2 u_r2^2 + h^2 (u_n1^2 + u_n2^2), g_i = s_i/(s_2 - s_1), h = 2(N_2/(N_2 - N_1) - g_2).
 *  @returns a refusal where the speeds lie too close or out of range, or the readings do not rise as a loss makes them
 *  @source cycle model of the handbook (computed) */
export const lossFreeFromTwoSpeeds = (
  slow: CalibrationReading,
  fast: CalibrationReading,
): CalibrationOutcome => {
  if (slow.speed > fast.speed) return lossFreeFromTwoSpeeds(fast, slow);
  const outside = outsideSpeeds([slow.speed, fast.speed]);
  if (outside !== undefined) return { refused: outside };
  if (fast.speed / slow.speed < leastRatio)
    return { refused: speedRefusal("speeds-too-close", { slow: slow.speed, fast: fast.speed }) };
  if (!(slow.pressure > 0) || fast.pressure <= slow.pressure)
    return { refused: speedRefusal("not-rising", { slow: slow.speed, fast: fast.speed }) };
  const [s1, s2] = [slow.speed / Math.sqrt(slow.pressure), fast.speed / Math.sqrt(fast.pressure)];
  if (s2 <= s1) return { refused: speedRefusal("rises-too-much", { slow: slow.speed, fast: fast.speed }) };
  const run = fast.speed - slow.speed;
  const [g1, g2] = [s1 / (s2 - s1), s2 / (s2 - s1)];
  const h = 2 * (fast.speed / run - g2);
  return {
    P0: gaugePressure((run / (s2 - s1)) ** 2),
    uncertainty: Math.hypot(g1 * slow.uPressure, g2 * fast.uPressure, h * slow.uSpeed, h * fast.uSpeed),
  };
};

/** Calibrations of several cylinders of one engine on one gauge, as one: the mean of ln P_0, u/sqrt(k).
 *  @throws RangeError without any */
export const lossFreeOfCylinders = (calibrations: readonly CalibratedLossFree[]): CalibratedLossFree => {
  const k = calibrations.length;
  if (k === 0) throw new RangeError("lossFreeOfCylinders: no calibration");
  const ln = calibrations.reduce((sum, { P0 }) => sum + Math.log(P0), 0) / k;
  return {
    P0: gaugePressure(Math.exp(ln)),
    uncertainty: Math.hypot(...calibrations.map(({ uncertainty }) => uncertainty)) / k,
  };
};
