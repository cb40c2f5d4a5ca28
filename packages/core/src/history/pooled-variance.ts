// How far a contrast scatters about its cylinder's line: one figure for the whole engine, because four tests of one
// cylinder cannot tell. The scatter is pooled; the slopes never are.

import { varianceOfMedian } from "../statistics/index.ts";
import { priorDegrees } from "./noise.ts";
import { scatterOf, type Series } from "./series.ts";

export interface PooledVariance {
  /** s^2 of one contrast about its line. */
  readonly variance: number;
  /** nu. */
  readonly df: number;
  /** v: mean over the contrasts in use of the variance of the median of the others read. */
  readonly reference: number;
  /** s0^2 (1 + v), what was assumed before looking. */
  readonly assumed: number;
}

/** s^2 = [nu0 s0^2 (1+v) + (N-1)/N sum SSE_i] / nu,  nu = nu0 + (N-1)/N sum(T_i - 2), over the cylinders with three
 *  contrasts or more; nu0 = 6. (N-1)/N because the contrasts of one test depend on each other.
 *  @param cell - s0^2 of one cell  @source handbook/statistics.md C.3, L.4 */
export const pooledVariance = (series: readonly Series[], cell: number): PooledVariance => {
  const reference = meanReference(series);
  const assumed = cell * (1 + reference);
  const cylinders = series.filter(({ contrasts }) => contrasts.length > 0).length;
  const share = cylinders > 0 ? (cylinders - 1) / cylinders : 0;
  let squares = 0;
  let degrees = 0;
  for (const one of series) {
    if (one.contrasts.length < 3) continue;
    squares += scatterOf(one);
    degrees += one.contrasts.length - 2;
  }
  const df = priorDegrees + share * degrees;
  return { variance: (priorDegrees * assumed + share * squares) / df, df, reference, assumed };
};

const meanReference = (series: readonly Series[]): number => {
  let sum = 0;
  let count = 0;
  for (const { others } of series)
    for (const k of others) {
      sum += varianceOfMedian(k);
      count += 1;
    }
  return count === 0 ? 1 : sum / count;
};
