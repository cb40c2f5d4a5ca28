// The bivariate normal distribution.

import { normalCdf } from "../../statistics/index.ts";

/** P(X <= h, Y <= k) of two standard normal values with correlation rho:
 *  Phi(h) Phi(k) + 1/(2 pi) integral from 0 to asin rho of exp(-(h^2 + k^2 - 2 h k sin t)/(2 cos^2 t)) dt, Simpson's rule
 *  with 400 parts.
 *  @param rho - 0 to 1, 1 excluded  @source Plackett 1954, from memory; handbook/decision.md 5 */
export const bivariateNormal = (h: number, k: number, rho: number): number => {
  if (!Number.isFinite(h) || !Number.isFinite(k)) return normalCdf(h) * normalCdf(k);
  const parts = 400;
  const end = Math.asin(rho);
  const height = (t: number): number =>
    Math.exp(-(h * h + k * k - 2 * h * k * Math.sin(t)) / (2 * Math.cos(t) ** 2));
  let sum = height(0) + height(end);
  for (let part = 1; part < parts; part += 1) sum += (part % 2 === 1 ? 4 : 2) * height((end * part) / parts);
  return normalCdf(h) * normalCdf(k) + (end / parts / 3 / (2 * Math.PI)) * sum;
};
