// The straight line of least squares, centred before summing.

import { mean } from "./describe.ts";
import { at, checkPairs } from "./guard.ts";

export interface LeastSquares {
  readonly slope: number;
  readonly intercept: number;
  readonly meanX: number;
  readonly meanY: number;
  /** Sum (x - meanX)^2. */
  readonly sxx: number;
  /** Sum of the squared residuals. */
  readonly sse: number;
  /** Standard errors from the line's own residuals, n - 2 degrees of freedom; absent for two points. */
  readonly slopeError?: number;
  readonly interceptError?: number;
  /** Share of the scatter of y that the line takes up; absent where all y are equal. */
  readonly r2?: number;
}

export type ThroughOrigin = Pick<LeastSquares, "slope" | "sse" | "r2"> & { readonly slopeError: number };

/** y = intercept + slope x; slope = Sxy/Sxx, se(slope) = s/sqrt(Sxx), se(intercept) = s sqrt(1/n + meanX^2/Sxx),
 *  s^2 = SSE/(n - 2).
 *  @throws RangeError below two different x, on unequal lengths or a value that is not finite */
export const leastSquares = (x: readonly number[], y: readonly number[]): LeastSquares => {
  checkPairs("leastSquares", x, y, 2);
  const n = x.length;
  const meanX = mean(x);
  const meanY = mean(y);
  let [sxx, syy, sxy] = [0, 0, 0];
  for (let i = 0; i < n; i += 1) {
    const dx = at(x, i) - meanX;
    const dy = at(y, i) - meanY;
    sxx += dx * dx;
    syy += dy * dy;
    sxy += dx * dy;
  }
  if (sxx === 0 || x.every((value) => value === x[0]))
    throw new RangeError("leastSquares: all values of x are equal");
  const slope = sxy / sxx;
  const intercept = meanY - slope * meanX;
  let sse = 0;
  for (let i = 0; i < n; i += 1) {
    const rest = at(y, i) - meanY - slope * (at(x, i) - meanX);
    sse += rest * rest;
  }
  const r2 = syy > 0 ? { r2: 1 - sse / syy } : {};
  if (n === 2) return { slope, intercept, meanX, meanY, sxx, sse, ...r2 };
  const s = Math.sqrt(sse / (n - 2));
  const slopeError = s / Math.sqrt(sxx);
  const interceptError = s * Math.sqrt(1 / n + (meanX * meanX) / sxx);
  return { slope, intercept, meanX, meanY, sxx, sse, slopeError, interceptError, ...r2 };
};

/** The line y = slope x through the origin; its r2 is taken about zero, its errors on n - 1 degrees of freedom.
 *  @throws RangeError below two points, where all x are 0, on unequal lengths or a value that is not finite */
export const leastSquaresThroughOrigin = (x: readonly number[], y: readonly number[]): ThroughOrigin => {
  checkPairs("leastSquaresThroughOrigin", x, y, 2);
  const sxx = dot(x, x);
  if (sxx === 0) throw new RangeError("leastSquaresThroughOrigin: all values of x are 0");
  const slope = dot(x, y) / sxx;
  const residuals = x.map((value, i) => at(y, i) - slope * value);
  const sse = dot(residuals, residuals);
  const syy = dot(y, y);
  const r2 = syy > 0 ? { r2: 1 - sse / syy } : {};
  return { slope, sse, slopeError: Math.sqrt(sse / (x.length - 1) / sxx), ...r2 };
};

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * at(b, i), 0);
