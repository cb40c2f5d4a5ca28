// The standard normal distribution, with full relative accuracy in the lower tail.
// (simple-statistics has a four-digit table that stops at three sigma, hence our own.)

import { checkProbability } from "./guard.ts";

const rootTwoPi = Math.sqrt(2 * Math.PI);

/** phi(z) = exp(-z^2/2) / sqrt(2 pi). */
export const normalDensity = (z: number): number => Math.exp((-z * z) / 2) / rootTwoPi;

/** P(Z <= z). Relative error below 1e-13 down to z = -37.
 *  Series Phi(-a) = 1/2 - phi(a) (a + a^3/3 + a^5/15 + ...) for a < 2.5, beyond it Mills' ratio as the continued
 *  fraction Phi(-a) = phi(a) / (a + 1/(a + 2/(a + 3/(a + ...)))).
 *  @throws RangeError if z is not a number */
export const normalCdf = (z: number): number => {
  if (Number.isNaN(z)) throw new RangeError("normalCdf: z is not a number");
  const size = Math.abs(z);
  const lower = size < 2.5 ? 0.5 - halfArea(size) : farTail(size);
  return z <= 0 ? lower : 1 - lower;
};

/** z with P(Z <= z) = p. Newton's method on ln Phi, which is concave: from a start below the root it climbs to it.
 *  @param p - between 0 and 1, both excluded @throws RangeError outside */
export const normalQuantile = (p: number): number => {
  checkProbability("normalQuantile", p);
  if (p > 0.5) return -normalQuantile(1 - p);
  // Phi(z) <= exp(-z^2/2)/2 for z <= 0, so this start is never above the root
  let z = -Math.sqrt(-2 * Math.log(2 * p));
  for (let round = 0; round < 40; round += 1) {
    const area = normalCdf(z);
    const step = (Math.log(p / area) * area) / normalDensity(z);
    z += step;
    if (Math.abs(step) <= 1e-15 * (1 + Math.abs(z))) break;
  }
  return z;
};

/** Integral of phi from 0 to a. */
const halfArea = (a: number): number => {
  let term = a;
  let sum = a;
  for (let k = 3; term > 1e-17 * sum; k += 2) {
    term *= (a * a) / k;
    sum += term;
  }
  return normalDensity(a) * sum;
};

const farTail = (a: number): number => {
  if (a > 40) return 0;
  let fraction = a;
  // so many terms settle the sixteenth digit
  for (let k = Math.ceil(10 + 360 / (a * a)); k >= 1; k -= 1) fraction = a + k / fraction;
  return normalDensity(a) / fraction;
};
