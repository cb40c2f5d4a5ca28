// The line of a cylinder's own level, with the doubt about the gauge in it: readings of one gauge are wrong together, which
// no scatter about a line can show.

import { leastSquares } from "../../statistics/index.ts";

export interface LevelPoints {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly variance: number;
}

/** From gauge to gauge, ln. @source handbook/statistics.md B (a choice) */
const gaugeDoubt = 0.03;

/** Four points that carry the line as it is known: its level at the middle of the tests with s^2/T + sg^2/gauges, its slope
 *  with its own standard error. Mean m, d^2 = level variance / slope variance: x = m -+ d sqrt(1.6), m -+ d sqrt(.4), s^2 =
 *  4 level variance.
 *  @param trend - slope and standard error in the unit that slopes count in  @param gauges - how many took part
 *  @source handbook/statistics.md E, L.7 */
export const levelPoints = (
  { x, y }: { readonly x: readonly number[]; readonly y: readonly number[] },
  {
    trend,
    perYear,
    gauges,
  }: {
    readonly trend: { readonly slope: number; readonly standardError: number };
    readonly perYear: number;
    readonly gauges: number;
  },
): LevelPoints => {
  const { meanX, meanY, sxx } = leastSquares(x, y);
  const slopeVariance = (trend.standardError * perYear) ** 2;
  const levelVariance = (slopeVariance * sxx) / x.length + gaugeDoubt ** 2 / gauges;
  const apart = Math.sqrt(levelVariance / slopeVariance);
  const away = [-Math.sqrt(1.6), -Math.sqrt(0.4), Math.sqrt(0.4), Math.sqrt(1.6)].map((part) => part * apart);
  return {
    x: away.map((part) => meanX + part),
    y: away.map((part) => meanY + part * trend.slope * perYear),
    variance: 4 * levelVariance,
  };
};
