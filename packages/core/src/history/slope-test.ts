// Does a cylinder lose against the others, steadily? Slopes are in ln units a year (or a 1000 units of the meter).

import { studentCdf, studentQuantile, theilSen } from "../statistics/index.ts";
import { sharedDegrees } from "./alarm-rule.ts";
import { roundForTies } from "./contrasts.ts";
import type { PooledVariance } from "./pooled-variance.ts";
import type { Line, Series } from "./series.ts";

export interface SlopeTest {
  readonly slope: number;
  readonly t: number;
  readonly df: number;
  /** One-sided: small when the cylinder loses. */
  readonly p: number;
}

/** t = b sqrt(Sxx) / s with the scatter of the whole engine (C.3); for intervals and forecasts. */
export const pooledSlope = (line: Line, { variance, df }: PooledVariance): SlopeTest =>
  tested(line, variance, df);

/** The same with s_i^2 = (n0 s^2 + SSE_i) / (n0 + T_i - 2), n0 = min(nu, 24): one bad reading that tilts this line also
 *  widens its own scatter. For the alarm only.  @source handbook/statistics.md L.8 */
export const ownScatterSlope = (line: Line, { variance, df }: PooledVariance): SlopeTest => {
  const weight = Math.min(df, sharedDegrees);
  const degrees = weight + line.count - 2;
  return tested(line, (weight * variance + line.sse) / degrees, degrees);
};

const tested = ({ slope, sxx }: Line, variance: number, df: number): SlopeTest => {
  const t = (slope * Math.sqrt(sxx)) / Math.sqrt(variance);
  return { slope, t, df, p: studentCdf(t, df) };
};

/** The slowest loss that this history would have shown: t(.95; nu) s / sqrt(Sxx), one-sided 5 %. */
export const leastLossShown = ({ sxx }: Line, { variance, df }: PooledVariance): number =>
  (studentQuantile(0.95, df) * Math.sqrt(variance)) / Math.sqrt(sxx);

/** One-sided 95 % bound of the loss: -(b - t(.95; nu) s / sqrt(Sxx)). */
export const lossBound = (line: Line, pooled: PooledVariance): number =>
  leastLossShown(line, pooled) - line.slope;

export interface RobustSlope {
  readonly slope: number;
  readonly low?: number;
  readonly high?: number;
  /** The true coverage of low ... high: at least .95, or .90 where only that can be had (4 tests). */
  readonly coverage?: number;
}

/** Theil-Sen through the rounded contrasts, with its exact interval (C.1). */
export const robustSlope = ({ x, contrasts }: Series): RobustSlope => {
  const rounded = contrasts.map(roundForTies);
  const { slope, interval } = theilSen(x, rounded, contrasts.length >= 5 ? 0.95 : 0.9);
  return { slope, ...interval };
};
