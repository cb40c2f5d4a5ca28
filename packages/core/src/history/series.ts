// The contrasts of one cylinder in its current epoch, in order, without the tests in which it has none.

import { leastSquares, mean } from "../statistics/index.ts";
import { at } from "./at.ts";

export interface Series {
  /** Places in the list of merged tests. */
  readonly tests: readonly number[];
  /** Place on the axis, in the unit that slopes count in: years, or 1000 units of the meter. */
  readonly x: readonly number[];
  readonly contrasts: readonly number[];
  /** Cylinders that each contrast is against. */
  readonly others: readonly number[];
}

/** The straight line through a series. */
export interface Line {
  readonly count: number;
  readonly slope: number;
  readonly meanX: number;
  readonly meanY: number;
  readonly sxx: number;
  readonly sse: number;
}

/** Least squares; undefined where the tests do not lie at two places or more. Pooling, slopes and forecast ask for the line
 *  of the same series, so it is kept with it. */
export const lineThrough = (series: Series): Line | undefined => {
  if (!lines.has(series)) lines.set(series, fitted(series));
  return lines.get(series);
};

const lines = new WeakMap<Series, Line | undefined>();

const fitted = ({ x, contrasts }: Series): Line | undefined => {
  if (x.length < 2 || x.every((place) => place === x[0])) return undefined;
  const { slope, meanX, meanY, sxx, sse } = leastSquares(x, contrasts);
  return { count: x.length, slope, meanX, meanY, sxx, sse };
};

/** Sum of squares about the line, about the mean where there is none. */
export const scatterOf = (series: Series): number => {
  const line = lineThrough(series);
  if (line !== undefined) return line.sse;
  const level = mean(series.contrasts);
  return series.contrasts.reduce((sum, r) => sum + (r - level) ** 2, 0);
};

/** How many places the tests lie at, those closer together than `share` of the whole span counted once. */
export const distinctPlaces = (x: readonly number[], share: number): number => {
  if (x.length === 0) return 0;
  const apart = share * (at(x, x.length - 1) - at(x, 0));
  let last = at(x, 0);
  let count = 1;
  for (const place of x)
    if (place > last && place - last >= apart) {
      count += 1;
      last = place;
    }
  return count;
};

/** Places of the entries that answer yes. */
export const placesOf = <T>(
  list: readonly T[],
  counts: (entry: T, place: number) => boolean,
): readonly number[] => {
  const places: number[] = [];
  list.forEach((entry, place) => {
    if (counts(entry, place)) places.push(place);
  });
  return places;
};
