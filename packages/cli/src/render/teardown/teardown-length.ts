// Lengths as they are told: in the unit that was typed unless another is asked for, to the places that were typed.

import { type Length, type LengthUnit, type UnitName, fromSi } from "@sealtrend/core";
import { fixed } from "../words.ts";

/** How the lengths of one row are written. */
export interface Written {
  readonly unit: LengthUnit;
  readonly places: number;
}

const families: Readonly<Record<string, LengthUnit>> = { us: "in", metric: "mm" };

/** @param asked - the value of --units: `us` and `metric` change lengths, the units of pressure do not
 *  @param typed - the units of the readings, of which the first counts */
export const lengthUnit = (asked: string | undefined, typed: readonly LengthUnit[]): LengthUnit =>
  families[asked ?? ""] ?? typed[0] ?? "mm";

/** Places that are always written, and those that a workshop's instruments carry at most. */
const places: Readonly<Record<LengthUnit, { readonly least: number; readonly most: number }>> = {
  mm: { least: 2, most: 3 },
  um: { least: 0, most: 1 },
  in: { least: 4, most: 4 },
  thou: { least: 1, most: 1 },
};

/** As many places for all of them as the one needs that has the most. */
export const writtenIn = (unit: LengthUnit, values: readonly Length[]): Written => {
  const { least, most } = places[unit];
  return {
    unit,
    places: values.reduce((so, value) => Math.max(so, Math.min(most, placesOf(fromSi(value, unit)))), least),
  };
};

/** Decimals of a number that was typed in this unit, or in one that it is a whole part of. */
const placesOf = (value: number): number =>
  /\.(\d+)$/.exec(String(Number(value.toPrecision(9))))?.[1]?.length ?? 0;

/** The number alone. */
export const lengthNumber = (value: Length, { unit, places }: Written): string =>
  fixed(fromSi(value, unit), places);

/** With its sign, where the quantity has one: `+0.09`. */
export const signedNumber = (value: Length, written: Written): string => {
  const text = lengthNumber(value, written);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text;
};

/** Number and unit, held together. */
export const lengthText = (value: Length, written: Written): string =>
  `${lengthNumber(value, written)}\u00a0${written.unit}`;

/** An uncertainty to the digit that counts: one, two where it begins with 1 or 2. */
export const spreadText = (uncertainty: Length, unit: UnitName & LengthUnit): string => {
  const value = fromSi(uncertainty, unit);
  if (value <= 0) return "0";
  const digits = /^[12]/.test(value.toExponential(1)) ? 2 : 1;
  const shown = Number(value.toPrecision(digits));
  return fixed(shown, Math.max(0, digits - 1 - Math.floor(Math.log10(shown))));
};
