// The chi-square distribution: how far a standard deviation from few readings may be off.

import { gammaln } from "simple-statistics";
import { checkDegrees, checkProbability } from "./guard.ts";
import { normalQuantile } from "./normal.ts";

/** x with P(X <= x) = p for `df` degrees of freedom. Newton's method on the logarithm of the smaller tail, kept inside a
 *  bracket by bisection, from the cube-root approximation of Wilson and Hilferty. Relative error below 1e-11.
 *  @param p - between 0 and 1, both excluded  @param df - above 0, finite  @throws RangeError outside */
export const chiSquareQuantile = (p: number, df: number): number => {
  checkProbability("chiSquareQuantile", p);
  checkDegrees("chiSquareQuantile", df);
  if (df === Infinity) throw new RangeError("chiSquareQuantile: degrees of freedom must be finite");
  const a = df / 2;
  const aim = p < 0.5 ? "lower" : "upper";
  const wanted = p < 0.5 ? p : 1 - p;
  const cube = 1 - 2 / (9 * df) + normalQuantile(p) * Math.sqrt(2 / (9 * df));
  // for a small x the series begins with x^a / Gamma(a + 1)
  const small = Math.exp((Math.log(p) + gammaln(a + 1)) / a);
  let x = cube > 0.2 ? (df * cube ** 3) / 2 : small;
  let [low, high] = [0, Infinity];
  for (let round = 0; round < 200; round += 1) {
    const tails = gammaTails(a, x);
    const tail = tails[aim];
    if (tails.lower < p) low = x;
    else high = x;
    const density = Math.exp((a - 1) * Math.log(x) - x - gammaln(a));
    const sign = aim === "lower" ? 1 : -1;
    const newton = x + (sign * Math.log(wanted / tail) * tail) / density;
    const half = high === Infinity ? 2 * x : (low + high) / 2;
    const next = newton > low && newton < high ? newton : half;
    const moved = Math.abs(next - x);
    x = next;
    if (moved <= 1e-15 * x) break;
  }
  return 2 * x;
};

/** P(a, x) and 1 - P(a, x), P the regularised incomplete gamma function: its series below x = a + 1, else the continued
 *  fraction of the other tail by the modified Lentz method, so that the smaller tail keeps its digits. */
const gammaTails = (a: number, x: number): { readonly lower: number; readonly upper: number } => {
  const front = Math.exp(a * Math.log(x) - x - gammaln(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; term > 1e-17 * sum; n += 1) {
      term *= x / (a + n);
      sum += term;
    }
    return { lower: front * sum, upper: 1 - front * sum };
  }
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < 100_000; n += 1) {
    const numerator = n * (a - n);
    b += 2;
    d = 1 / (b + numerator * d);
    c = b + numerator / c;
    value *= c * d;
    if (Math.abs(c * d - 1) < 1e-16) break;
  }
  return { lower: 1 - front * value, upper: front * value };
};
