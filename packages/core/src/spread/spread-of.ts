// The spread of one test in the terms that manuals use.

import { mean, median, sampleStandardDeviation } from "../statistics/index.ts";

/** How far the readings of one test lie apart, in the terms that manuals use. */
export interface Spread {
  /** In the unit of the readings (Pa for gauge pressures). */
  readonly highest: number;
  readonly lowest: number;
  readonly median: number;
  readonly range: number;
  /** Lowest / highest. */
  readonly ratio: number;
  /** Standard deviation (n - 1) / mean; absent for one reading. */
  readonly cv?: number;
  /** 1 - value/median in the order given; absent where nothing was read, 1 for a reading of 0. */
  readonly belowMedian: readonly (number | undefined)[];
  /** Readings of 0 or less: counted here, left out of every figure above but belowMedian. */
  readonly noCompression: number;
}

/** @param values - one reading a cylinder, undefined where none was taken
 *  @returns undefined when nothing above 0 was read @throws RangeError on a value that is not finite */
export const spreadOf = (values: readonly (number | undefined)[]): Spread | undefined => {
  const taken = values.filter((value) => value !== undefined);
  const read = taken.filter((value) => !(value <= 0));
  if (read.length === 0) return undefined;
  const middle = median(read);
  const highest = Math.max(...read);
  const lowest = Math.min(...read);
  return {
    highest,
    lowest,
    median: middle,
    range: highest - lowest,
    ratio: lowest / highest,
    ...(read.length > 1 ? { cv: sampleStandardDeviation(read) / mean(read) } : {}),
    belowMedian: values.map((value) => (value === undefined ? undefined : 1 - Math.max(0, value) / middle)),
    noCompression: taken.length - read.length,
  };
};
