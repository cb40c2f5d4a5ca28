// How finely a figure was read, by the digits that were written, where nobody stated the resolution.

import { type Length, toSi } from "../../quantity/index.ts";
import type { Measurement } from "../../record/index.ts";
import type { DivisionBy } from "../conformity/index.ts";

export interface Digits {
  /** The most that any of them was written with. */
  readonly decimals: number;
  readonly unit: "mm" | "in";
  /** [m] */
  readonly values: readonly Length[];
}

/** Of all figures of one kind that one instrument took: a 0 at the end is often left out. Undefined in units that nobody
 *  divides so, and where a resolution is stated.
 *  @param rows - all of the teardown  @param repeats - of the kind that is asked about */
export const digitsOf = (rows: readonly Measurement[], [one]: readonly Measurement[]): Digits | undefined => {
  if (one === undefined || one.resolution !== undefined || (one.unit !== "mm" && one.unit !== "in"))
    return undefined;
  const alike = rows.filter(
    (row) =>
      row.part === one.part &&
      row.quantity === one.quantity &&
      row.instrument === one.instrument &&
      row.unit === one.unit &&
      row.resolution === undefined,
  );
  const values = alike.flatMap(({ value }) => (value.kind === "length" ? [value.value] : []));
  return { decimals: Math.max(0, ...alike.map(({ decimals = 0 }) => decimals)), unit: one.unit, values };
};

/** The coarsest division that an instrument is made with and that can have given such digits, where the usual one cannot; more
 *  digits than any of them shows are its finest, split by eye. */
export const divisionBy =
  (digits: Digits | undefined): DivisionBy =>
  (usual, finer) => {
    if (digits === undefined) return undefined;
    const step = toSi(10 ** -digits.decimals, digits.unit);
    const shows = (division: Length): boolean =>
      digits.values.every((value) => isMultiple(value, division)) && !isFiner(step, division);
    if (shows(usual)) return undefined;
    const falling = finer.toSorted((a, b) => b - a);
    return falling.find(shows) ?? falling.at(-1);
  };

const isMultiple = (value: number, division: number): boolean =>
  Math.abs(value / division - Math.round(value / division)) < 1e-3;

/** Whether more digits were written than a division shows: 0.0005 in has four, 0.002 mm three. */
const isFiner = (step: number, division: number): boolean => division / step > 9.5;
