// How strongly a cylinder's reading goes with the cranking speed. 1/sqrt(P) is a straight line in 1/N: its height is the
// reading without losses, its slope the loss speed, which grows with wear.

import { type GaugePressure, type Speed, type Volume, speed as rpm } from "../../quantity/index.ts";

export type IgnitionKind = "spark" | "compression" | "unknown";

/** A loss speed [rpm] and its standard uncertainty [rpm]. */
export interface UsualLossSpeed {
  readonly value: number;
  readonly uncertainty: number;
}

/** N_s = 2N(sqrt(P_0/P) - 1); 0 for a reading that is not below P_0: what is lost is never less than nothing.
 *  @param lossFree - P_0, in the same air as the reading  @param pressure - the reading, above 0
 *  @throws RangeError on a pressure not above 0
 *  @source cycle model of the handbook (computed, no published figure) */
export const lossSpeed = (lossFree: GaugePressure, pressure: GaugePressure, speed: Speed): Speed => {
  if (!(pressure > 0) || !(lossFree > 0))
    throw new RangeError(`lossSpeed: pressures ${String(lossFree)} and ${String(pressure)} Pa, both above 0`);
  return rpm(Math.max(0, 2 * speed * (Math.sqrt(lossFree / pressure) - 1)));
};

/** What healthy cylinders of this size lose: 70 rpm at 0.5 L (spark), 90 rpm at 0.8 L (diesel), as V^-0.4, known to 45 %;
 *  to half where the size is not known. An unknown ignition is taken for spark.
 *  @param swept - of one cylinder
 *  @source cycle model of the handbook, 44 to 100 rpm over its leaks; makers' standard figures give a mean of 68 rpm
 *  (computed, no published figure) */
export const usualLossSpeed = (ignition: IgnitionKind, swept?: Volume): UsualLossSpeed => {
  const [usual, size] = ignition === "compression" ? [90, 0.8e-3] : [70, 0.5e-3];
  if (swept === undefined || swept <= 0) return { value: usual, uncertainty: 0.5 * usual };
  const value = usual * (size / swept) ** 0.4;
  return { value, uncertainty: 0.45 * value };
};
