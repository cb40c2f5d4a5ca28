// How uncertain the middle of a few normal readings is.

import { at } from "./guard.ts";

/** v_1 ... v_11, computed by numerical integration in R 4.2.2. */
const table = [
  1, 0.5, 0.448671, 0.2982, 0.286834, 0.214743, 0.210447, 0.168181, 0.166101, 0.138326, 0.137162,
];

/** Variance of the median of `k` independent standard normal values; beyond k = 11 the large-sample pi/(2k).
 *  @param k - a whole number, 1 or more @throws RangeError otherwise */
export const varianceOfMedian = (k: number): number => {
  if (!Number.isInteger(k) || k < 1)
    throw new RangeError(`varianceOfMedian: count must be a whole number of at least 1, got ${String(k)}`);
  return k <= table.length ? at(table, k - 1) : Math.PI / (2 * k);
};
