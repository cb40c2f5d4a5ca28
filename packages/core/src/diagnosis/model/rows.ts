// Likelihoods of findings over one of the grids of the day: a row a place.

import type { Faults } from "../faults/faults.ts";
import type { AtDay } from "./day.ts";
import { likelihoodInto, type Weighed } from "./findings.ts";

/** Rows one after the other; one for all places where nothing depends on them. */
export interface Rows {
  readonly count: number;
  readonly width: number;
  readonly values: Float64Array;
}

/** Where the row of a place begins. */
export const rowAt = ({ count, width }: Rows, place: number): number => (count === 1 ? 0 : place * width);

/** Π of the findings at each place, aligned with the causes; ones where there is no finding. */
export const rowsOf = (found: readonly Weighed[], places: readonly AtDay[], faults: Faults): Rows => {
  const width = faults.causes.length;
  const [first, ...others] = found;
  if (first === undefined) return { count: 1, width, values: new Float64Array(width).fill(1) };
  const values = new Float64Array(places.length * width);
  const factor = new Float64Array(width);
  for (const [r, at] of places.entries()) {
    const from = r * width;
    likelihoodInto(values, from, { one: first, at, faults });
    for (const one of others) {
      likelihoodInto(factor, 0, { one, at, faults });
      for (let h = 0; h < width; h += 1) values[from + h] = (values[from + h] ?? 0) * (factor[h] ?? 0);
    }
  }
  return { count: places.length, width, values };
};

/** The largest of each cause over all places. */
export const largest = ({ width, values }: Rows): Float64Array => {
  const most = values.slice(0, width);
  for (let i = width; i < values.length; i += 1) {
    const value = values[i] ?? 0;
    if (value > (most[i % width] ?? 0)) most[i % width] = value;
  }
  return most;
};
