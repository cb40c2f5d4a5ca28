// The Theil-Sen line: the median of all slopes between two points, indifferent to one bad reading in four.

import { at, checkPairs, checkProbability } from "./guard.ts";
import { kendallUpperTail } from "./kendall-null.ts";
import { runs } from "./kendall.ts";
import { medianInPlace, orderStatistic } from "./order-statistic.ts";

export interface TheilSen {
  readonly slope: number;
  /** The joint intercept, median of y - slope x. */
  readonly intercept: number;
  /** Absent where so few points allow no interval of the coverage asked for (below five points at 95 %). */
  readonly interval?: SlopeInterval;
}

export interface SlopeInterval {
  readonly low: number;
  readonly high: number;
  /** The true coverage, at least the one asked for. */
  readonly coverage: number;
}

/** Slope with its distribution-free interval from the null distribution of Kendall's S (Theil 1950, Sen 1968).
 *  With M slopes in order and S* the smallest value with P(S >= S*) <= (1 - coverage)/2, the interval runs from slope
 *  (M - S* + 2)/2 to slope M + 1 - (M - S* + 2)/2, counted from 1. Pairs with equal x have no slope and are left out.
 *  @param coverage - asked for, between 0 and 1  @throws RangeError below two different x, on unequal lengths or a value
 *  that is not finite */
export const theilSen = (x: readonly number[], y: readonly number[], coverage: number): TheilSen => {
  checkPairs("theilSen", x, y, 2);
  checkProbability("theilSen: coverage", coverage);
  const slopes = slopesOf(x, y);
  if (slopes.length === 0) throw new RangeError("theilSen: all values of x are equal");
  const slope = medianInPlace(slopes);
  const intercept = medianInPlace(Float64Array.from(x, (value, i) => at(y, i) - slope * value));
  const order = orderIndices(x, coverage);
  if (order === undefined) return { slope, intercept };
  // the search for the median has parted the slopes at their middle
  const half = slopes.length >> 1;
  const ofPlace = (place: number): number =>
    place < half ? orderStatistic(slopes, place, 0, half) : orderStatistic(slopes, place, half);
  const interval = {
    low: ofPlace(order.low - 1),
    high: ofPlace(order.high - 1),
    coverage: order.coverage,
  };
  return { slope, intercept, interval };
};

/** All slopes between two points of different x, in no order. Run for each cylinder over all pairs of tests: plain arrays of
 *  doubles, whose places are known to exist. */
const slopesOf = (x: readonly number[], y: readonly number[]): Float64Array => {
  const [places, values] = [new Float64Array(x), new Float64Array(y)];
  const slopes = new Float64Array((x.length * (x.length - 1)) / 2);
  let count = 0;
  for (let k = 1; k < places.length; k += 1) {
    const [place, value] = [places[k] ?? NaN, values[k] ?? NaN];
    for (let j = 0; j < k; j += 1) {
      const run = place - (places[j] ?? NaN);
      // adding 0 turns -0 into 0
      if (run !== 0) slopes[count++] = (value - (values[j] ?? NaN)) / run + 0;
    }
  }
  return slopes.subarray(0, count);
};

interface OrderIndices {
  readonly low: number;
  readonly high: number;
  readonly coverage: number;
}

/** The places, counted from 1, of the two slopes that bound the interval; undefined where none exists. */
const orderIndices = (x: readonly number[], coverage: number): OrderIndices | undefined => {
  const groups = runs(x);
  const pairs = (x.length * (x.length - 1) - groups.reduce((sum, t) => sum + t * (t - 1), 0)) / 2;
  const upper = kendallUpperTail(groups);
  const allowed = (1 - coverage) / 2;
  if (upper(pairs) > allowed) return undefined;
  // the tail falls with S: halve the ladder of possible values pairs, pairs - 2, ...
  let steps = 0;
  let most = pairs >> 1;
  while (steps < most) {
    const middle = (steps + most + 1) >> 1;
    if (upper(pairs - 2 * middle) <= allowed) steps = middle;
    else most = middle - 1;
  }
  const low = steps + 1;
  return { low, high: pairs + 1 - low, coverage: 1 - 2 * upper(pairs - 2 * steps) };
};
