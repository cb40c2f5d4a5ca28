// Student's t distribution, with full relative accuracy in the lower tail.

import { checkDegrees, checkProbability } from "./guard.ts";
import { betaFraction } from "./incomplete-beta.ts";
import { type Kept, keeping } from "./kept.ts";
import { normalCdf, normalQuantile } from "./normal.ts";

const tiny = 1e-300;

/** P(T <= t) for `df` degrees of freedom; any df above 0, infinity gives the normal distribution.
 *  t < 0: I_x(df/2, 1/2) / 2 with x = df/(df + t^2), I the regularised incomplete beta function.
 *  @throws RangeError if t is not a number or df is not above 0 */
export const studentCdf = (t: number, df: number): number => {
  checkDegrees("studentCdf", df);
  if (Number.isNaN(t)) throw new RangeError("studentCdf: t is not a number");
  if (df === Infinity) return normalCdf(t);
  const lower = lowerTail(Math.abs(t), df);
  return t <= 0 ? lower : 1 - lower;
};

/** t with P(T <= t) = p. Newton's method on ln P against ln(-t), kept inside a bracket by bisection.
 *  @param p - between 0 and 1, both excluded @throws RangeError outside */
export const studentQuantile = (p: number, df: number): number => {
  checkProbability("studentQuantile", p);
  checkDegrees("studentQuantile", df);
  if (df === Infinity) return normalQuantile(p);
  if (p === 0.5) return 0;
  return p > 0.5 ? -keptQuantile(1 - p, df) : keptQuantile(p, df);
};

const quantiles = keeping<number, Kept<number, number>>(64);

const keptQuantile = (p: number, df: number): number =>
  quantiles(p, () => keeping(256))(df, () => lowerQuantile(p, df));

/** For p below 1/2. */
const lowerQuantile = (p: number, df: number): number => {
  // size = -t: the tail is heavier than the normal one, so the normal quantile bounds it from below
  let low = -normalQuantile(p) * (1 - 1e-12);
  let high = Math.max(2 * low, tiny);
  while (lowerTail(high, df) > p) high *= 2;
  let size = Math.min(Math.max(low, 1e-8), high);
  for (let round = 0; round < 200; round += 1) {
    const area = lowerTail(size, df);
    if (area > p) low = size;
    else high = size;
    const newton = size * Math.exp((Math.log(area / p) * area) / (density(size, df) * size));
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    const moved = Math.abs(next - size);
    size = next;
    if (moved <= 2e-16 * size) break;
  }
  return -size;
};

/** P(T <= -size). */
const lowerTail = (size: number, df: number): number => {
  const square = size * size;
  if (square === Infinity) return 0;
  const a = df / 2;
  const x = df / (df + square);
  // x^a (1-x)^(1/2) / B(a, 1/2), written so that no digit is lost for small or large t
  const front =
    Math.exp(-a * Math.log1p(square / df)) *
    (size / Math.sqrt(df + square)) *
    (gammaRatio(a) / Math.sqrt(Math.PI));
  return x < (a + 1) / (a + 2.5)
    ? (0.5 * front * betaFraction(a, 0.5, x)) / a
    : 0.5 - front * betaFraction(0.5, a, square / (df + square));
};

const density = (t: number, df: number): number =>
  (gammaRatio(df / 2) / Math.sqrt(df * Math.PI)) * Math.exp((-(df + 1) / 2) * Math.log1p((t * t) / df));

/** Gamma(a + 1/2) / Gamma(a): asymptotic series for a >= 20 (rest below 1e-14), stepped down to smaller a. */
const gammaRatio = (a: number): number => {
  let factor = 1;
  let b = a;
  for (; b < 20; b += 1) factor *= b / (b + 0.5);
  const r = 1 / (b * b);
  const log = (-1 / 8 + r * (1 / 192 + r * (-1 / 640 + r * (17 / 14336 - (r * 31) / 18432)))) / b;
  return factor * Math.sqrt(b) * Math.exp(log);
};
