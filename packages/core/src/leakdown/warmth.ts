// A warm cylinder passes less air through the same hole than a cold one: its air is thinner.

import { type Temperature, temperature } from "../quantity/index.ts";

/** What a warm cylinder does to a leak: its thinner air passes less of it through the same hole. */
export interface Warmth {
  /** √(T2/T1): what a leak is larger than it seems. */
  readonly factor: number;
  /** Standard uncertainty of ln factor. */
  readonly uncertainty: number;
}

/** Supply air where nothing is said: 20 °C. */
export const usualSupplyTemperature: Temperature = temperature(293.15);
/** How far a cylinder's temperature may be off where nothing is said [K]: judgement. */
export const usualTemperatureHalfWidth = 20;

/** Cylinder as warm as the supply air. */
export const noWarmth: Warmth = { factor: 1, uncertainty: 0 };

/** The warmth of a cylinder whose air is warmer than the supply: factor = √(T2/T1).
 *  @param halfWidth - of the cylinder's temperature [K], rectangular; 0 = taken as exact */
export const warmthOf = (cylinder: Temperature, supply: Temperature, halfWidth = 0): Warmth => ({
  factor: Math.sqrt(cylinder / supply),
  uncertainty: halfWidth / (2 * cylinder * Math.sqrt(3)),
});
