// Level and scatter of a short list. Mean and standard deviation are those of simple-statistics behind guards.

import * as simple from "simple-statistics";
import { checkList } from "./guard.ts";
import { medianInPlace } from "./order-statistic.ts";

/** Arithmetic mean, compensated sum. @throws RangeError on an empty list or a value that is not finite */
export const mean = (xs: readonly number[]): number => {
  checkList("mean", xs, 1);
  return simple.mean([...xs]);
};

/** Middle value; of an even count half the sum of the two middle ones. @throws RangeError as mean */
export const median = (xs: readonly number[]): number => {
  checkList("median", xs, 1);
  const values = xs.length <= short.length ? short : new Float64Array(xs.length);
  values.set(xs);
  return medianInPlace(values, xs.length);
};

/** Room for the short lists that most medians are of; a new one costs more than the median. */
const short = new Float64Array(64);

/** Standard deviation with n - 1. @throws RangeError below two values or on a value that is not finite */
export const sampleStandardDeviation = (xs: readonly number[]): number => {
  checkList("sampleStandardDeviation", xs, 2);
  return simple.sampleStandardDeviation([...xs]);
};

/** 1.4826 median |x - median|: estimates the standard deviation of normal values, indifferent to less than half of
 *  them. Biased low for few values (mean .83 of the true one at n = 4, computed by simulation). 0 when most are equal.
 *  1.4826 = 1/normalQuantile(.75).  @throws RangeError as mean */
export const scaledMad = (xs: readonly number[]): number => {
  const middle = median(xs);
  return 1.4826 * median(xs.map((x) => Math.abs(x - middle)));
};
