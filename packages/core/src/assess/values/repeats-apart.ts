// Repeats of one reading that lie further apart than repeats do.

import { rangeUpperTail } from "../../statistics/index.ts";

/** Further apart than chance brings once in 20 times: the range of m readings against the scatter of one (for two readings
 *  this is the limit 1.96 sqrt(2) s). Readings of 0 beside others are apart whatever the scatter.
 *  @param scatter - standard deviation of ln of one reading @source handbook/statistics.md F */
export const isApart = (readings: readonly number[], scatter: number): boolean => {
  const [low, high] = [Math.min(...readings), Math.max(...readings)];
  if (readings.length < 2 || high === low) return false;
  return low <= 0 || rangeUpperTail(Math.log(high / low) / scatter, readings.length) < 0.05;
};

/** Repeats of one cylinder. `agree`: no further apart than repeats lie. `each-low`: further, but each of them by itself
 *  would be flagged. `contradict`: further, and not all of them would be. */
export type RepeatsWord = "agree" | "each-low" | "contradict";
