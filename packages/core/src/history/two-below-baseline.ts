// Are both last readings of a cylinder below where its epoch began? One low reading alone never answers yes.

import { median, studentCdf, varianceOfMedian } from "../statistics/index.ts";
import { varianceOfLarger } from "./alarm-rule.ts";
import { at } from "./at.ts";
import { priorDegrees } from "./noise.ts";
import type { PooledVariance } from "./pooled-variance.ts";
import type { Series } from "./series.ts";

export interface StepScale {
  /** s^2 of one contrast from the differences of successive ones, which a step hardly touches. */
  readonly variance: number;
  readonly df: number;
  /** The part that the data say: 1.4826 median |r_k - r_(k-1)| / sqrt 2; absent without two successive contrasts. */
  readonly measured?: number;
}

/** s^2 = (nu0 s0^2 (1+v) + nuD sd^2) / (nu0 + nuD), nuD = half the number of differences, over all cylinders (C.4, L.4). */
export const stepScale = (series: readonly Series[], { assumed }: PooledVariance): StepScale => {
  const differences: number[] = [];
  for (const { contrasts } of series)
    for (let k = 1; k < contrasts.length; k += 1)
      differences.push(Math.abs(at(contrasts, k) - at(contrasts, k - 1)));
  if (differences.length === 0) return { variance: assumed, df: priorDegrees };
  const measured = (1.4826 * median(differences)) / Math.SQRT2;
  const weight = differences.length / 2;
  const df = priorDegrees + weight;
  return { variance: (priorDegrees * assumed + weight * measured ** 2) / df, df, measured };
};

export interface BaselineTest {
  /** How far the higher of the last two lies below the baseline, ln units. */
  readonly drop: number;
  readonly t: number;
  readonly df: number;
  readonly p: number;
}

/** t = (B - max of the last two) / (s sqrt(.68 + v_3)), B = median of the first three contrasts of the epoch; .68 is the
 *  variance of the larger of two normal values.  Needs four contrasts.  @source handbook/statistics.md C.4 */
export const twoBelowBaseline = ({ contrasts }: Series, { variance, df }: StepScale): BaselineTest => {
  const baseline = median(contrasts.slice(0, 3));
  const drop = baseline - Math.max(...contrasts.slice(-2));
  const t = drop / Math.sqrt(variance * (varianceOfLarger + varianceOfMedian(3)));
  return { drop, t, df, p: studentCdf(-t, df) };
};
