// The line of wear, and the chance that it has passed its limit.

import { believing, believedPerYear, chanceAbove, type KnownLine } from "../../history/index.ts";
import type { WearLine } from "../input.ts";

/** Least squares with s^2 given from outside, and the slope believed beforehand; one place tells no slope.
 *  @source handbook/statistics.md E */
export const knownOf = ({ x, y, variance, df, believed }: WearLine): KnownLine => {
  const meanX = sum(x) / x.length;
  const meanY = sum(y) / y.length;
  const sxx = sum(x.map((place) => (place - meanX) ** 2));
  const sxy = sum(x.map((place, k) => (place - meanX) * ((y[k] ?? meanY) - meanY)));
  const line = {
    meanX,
    meanY,
    slope: sxx === 0 ? 0 : sxy / sxx,
    levelVariance: variance / x.length,
    slopeVariance: sxx === 0 ? Infinity : variance / sxx,
    df,
  };
  return believing(line, believed ?? believedPerYear);
};

/** The place of today. */
export const todayOf = ({ x, now }: WearLine): number => now ?? x.at(-1) ?? 0;

/** Where the line stands today. */
export const levelToday = (line: WearLine): number => {
  const { meanX, meanY, slope } = knownOf(line);
  return meanY + slope * (todayOf(line) - meanX);
};

/** F: the chance that the limit is passed within so many years from now. As wear does not heal it is never less than that of
 *  being below today.  @source handbook/statistics.md E, handbook/decision.md 3 */
export const passedWithin = (line: WearLine, years: number): number => {
  const known = knownOf(line);
  const today = todayOf(line);
  const belowAt = (ahead: number): number => 1 - chanceAbove(known, line.limit, today + ahead);
  return Math.max(belowAt(0), belowAt(years));
};

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
