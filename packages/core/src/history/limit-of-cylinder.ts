// The forecasts of one cylinder, turned into places on the axis of the caller.

import { at } from "./at.ts";
import { believedPerYear, chancesOf } from "./chances.ts";
import { crossingOf, knownLine, type Crossing } from "./forecast.ts";
import type { PooledVariance } from "./pooled-variance.ts";
import type { CylinderHistory } from "./result.ts";
import { distinctPlaces, lineThrough, type Series } from "./series.ts";

export interface Outlook {
  /** Plain contrasts, ln of the ratio to the median of the others. */
  readonly series: Series;
  readonly pooled: PooledVariance;
  readonly limitRatio: number;
  readonly perYear: number | undefined;
  /** Place of the last test that counts, in the unit of the series. */
  readonly now: number;
  /** Multiply by this for the axis of the caller. */
  readonly slopePer: number;
}

/** Nothing below four contrasts at three places. */
export const limitOfCylinder = (outlook: Outlook): Pick<CylinderHistory, "limit" | "stays"> => {
  const { series, pooled, limitRatio, perYear, now, slopePer } = outlook;
  const line = lineThrough(series);
  if (line === undefined || line.count < 4 || distinctPlaces(series.x, 0.02) < 3) return { stays: [] };
  const limit = Math.log(limitRatio);
  const span = { first: at(series.x, 0), last: at(series.x, line.count - 1) };
  const believed = perYear === undefined ? Infinity : believedPerYear / perYear;
  const crossing = onAxis(crossingOf(line, pooled, { limit, believed, x: span }), slopePer);
  const stays = chancesOf(knownLine(line, pooled), { limit, x: { ...span, now }, perYear });
  const lastRatio = Math.exp(at(series.contrasts, line.count - 1));
  return { limit: { kind: "ratio-to-others", value: limitRatio, lastRatio, ...crossing }, stays };
};

/** Places in the unit of slopes, as places on the axis of the caller. */
export const onAxis = ({ decline, leastLossShown, ...places }: Crossing, slopePer: number): Crossing => ({
  decline,
  leastLossShown,
  ...Object.fromEntries(Object.entries(places).map(([name, place]) => [name, place * slopePer])),
});
