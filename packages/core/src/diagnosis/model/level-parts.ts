// How likely the level of one cylinder is over the grid of levels, as parts that the causes share. A table has six classes
// and many more causes: what is summed over the grid is summed by class, and given to the causes once.

import type { Faults } from "../faults/faults.ts";
import { classRowsOf } from "./class-rows.ts";
import type { AtDay } from "./day.ts";
import type { Weighed } from "./findings.ts";
import { type Rows, rowAt, rowsOf } from "./rows.ts";

/** L(cause; place) = Σ over parts of share(part, cause)·value(place, part). */
export interface LevelParts {
  /** A row a place, aligned with the parts. */
  readonly values: Rows;
  /** A row a part, aligned with the causes; absent where each cause is a part of its own. */
  readonly shares?: readonly Float64Array[];
  /** Likelihood with a cause, by place; each made where it is first asked for. */
  readonly columns: Float64Array[];
}

/** A likelihood that is raised to a power is no mixture any more, nor is a product: then each cause is a part.
 *  @param found - what depends on the level */
export const levelPartsOf = (
  found: readonly Weighed[],
  places: readonly AtDay[],
  faults: Faults,
): LevelParts => {
  const [first, ...others] = found;
  if (first?.weight !== 1 || others.length > 0) return { values: rowsOf(found, places, faults), columns: [] };
  const { rows } = classRowsOf(faults.findings[first.finding]);
  const values = new Float64Array(places.length * rows.length);
  for (const [m, at] of places.entries()) values.set(first.classesAt(at), m * rows.length);
  return { values: { count: places.length, width: rows.length, values }, shares: rows, columns: [] };
};

/** Writes Σ over causes of amount·share, for each part. */
export const toParts = ({ shares }: LevelParts, amounts: Float64Array, parts: Float64Array): void => {
  if (shares === undefined) parts.set(amounts);
  else
    for (let b = 0; b < shares.length; b += 1) {
      const share = shares[b];
      let sum = 0;
      for (let h = 0; h < amounts.length; h += 1) sum += (amounts[h] ?? 0) * (share?.[h] ?? 0);
      parts[b] = sum;
    }
};

/** Σ over parts of share·part, for one cause. */
export const ofParts = ({ shares }: LevelParts, parts: Float64Array, cause: number): number => {
  if (shares === undefined) return parts[cause] ?? 0;
  let sum = 0;
  for (let b = 0; b < shares.length; b += 1) sum += (shares[b]?.[cause] ?? 0) * (parts[b] ?? 0);
  return sum;
};

/** L(cause; place) at every place. */
export const levelColumn = (parts: LevelParts, cause: number, places: number): Float64Array =>
  (parts.columns[cause] ??= columnOf(parts, cause, places));

const columnOf = ({ values: rows, shares }: LevelParts, cause: number, places: number): Float64Array => {
  const column = new Float64Array(places);
  const { values, width } = rows;
  const ofCause = shares?.map((share) => share[cause] ?? 0);
  for (let m = 0; m < places; m += 1) {
    const from = rowAt(rows, m);
    let sum = ofCause === undefined ? (values[from + cause] ?? 0) : 0;
    if (ofCause !== undefined)
      for (let b = 0; b < width; b += 1) sum += (ofCause[b] ?? 0) * (values[from + b] ?? 0);
    column[m] = sum;
  }
  return column;
};
