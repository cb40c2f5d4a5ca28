// The range of n normal values whose standard deviation is known.

import { normalCdf, normalDensity } from "./normal.ts";

/** P(range > q) for `n` independent standard normal values: the chance that highest and lowest lie q sigma apart.
 *  P = n int phi(z) { Phi(z)^(n-1) - [Phi(z) - Phi(z-q)]^(n-1) } dz, z the highest value; trapezoidal rule, step 1/4
 *  (for such smooth integrands exact to rounding: halving the step moves the fourteenth digit).  @param q - 0 or more  @param n - a whole number, 2 or more
 *  @throws RangeError outside */
export const rangeUpperTail = (q: number, n: number): number => {
  if (!(q >= 0)) throw new RangeError(`rangeUpperTail: range must be 0 or more, got ${String(q)}`);
  if (!Number.isInteger(n) || n < 2)
    throw new RangeError(`rangeUpperTail: count must be a whole number of at least 2, got ${String(n)}`);
  if (q > 80) return 0;
  const step = 1 / 4;
  let sum = 0;
  for (let z = -9; z <= 9 + q / 2; z += step)
    sum += normalDensity(z) * lost(normalCdf(z), normalCdf(z - q), n - 1);
  return Math.min(1, n * step * sum);
};

/** a^k - (a - d)^k without cancellation, for 0 <= d <= a. */
const lost = (a: number, d: number, k: number): number =>
  d >= a ? a ** k : -(a ** k) * Math.expm1(k * Math.log1p(-d / a));
