// The forecasts of one cylinder, turned into places on the axis of the caller.

import { at } from "./at.ts";
import { chanceAbove, crossingOf, knownLine, type Crossing } from "./forecast.ts";
import type { PooledVariance } from "./pooled-variance.ts";
import type { CylinderHistory } from "./result.ts";
import { distinctPlaces, lineThrough, type Series } from "./series.ts";

/** Spread of yearly losses believed beforehand, ln units (a choice, E). */
const believedPerYear = 0.04;
/** Years ahead. */
const horizons = [1, 3, 5];

export interface Outlook {
  /** Plain contrasts, ln of the ratio to the median of the others. */
  readonly series: Series;
  readonly pooled: PooledVariance;
  readonly limitRatio: number;
  readonly perYear: number | undefined;
  /** Multiply by this for the axis of the caller. */
  readonly slopePer: number;
}

/** Nothing below four contrasts at three places. */
export const limitOfCylinder = (outlook: Outlook): Pick<CylinderHistory, "limit" | "stays"> => {
  const { series, pooled, limitRatio, perYear, slopePer } = outlook;
  const line = lineThrough(series);
  if (line === undefined || line.count < 4 || distinctPlaces(series.x, 0.02) < 3) return { stays: [] };
  const limit = Math.log(limitRatio);
  const span = { first: at(series.x, 0), last: at(series.x, line.count - 1) };
  const believed = perYear === undefined ? Infinity : believedPerYear / perYear;
  const crossing = onAxis(crossingOf(line, pooled, { limit, believed, x: span }), slopePer);
  const known = knownLine(line, pooled, believed);
  const stays = (
    perYear === undefined ? [] : horizons.map((ahead) => ({ ahead, place: span.last + ahead * perYear }))
  ).map(({ ahead, place }) => ({ ahead, probability: chanceAbove(known, limit, place) }));
  const lastRatio = Math.exp(at(series.contrasts, line.count - 1));
  return { limit: { kind: "ratio-to-others", value: limitRatio, lastRatio, ...crossing }, stays };
};

/** Places in the unit of slopes, as places on the axis of the caller. */
export const onAxis = ({ decline, leastLossShown, ...places }: Crossing, slopePer: number): Crossing => ({
  decline,
  leastLossShown,
  ...Object.fromEntries(Object.entries(places).map(([name, place]) => [name, place * slopePer])),
});
