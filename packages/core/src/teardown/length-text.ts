// A length as a mechanic reads it, to the digit that a workshop measures.

import { writeNumber } from "../quantity/index.ts";
import type { LengthUnit } from "../record/index.ts";

/** Digits that are always written, and those that are written where they are not 0. */
const digits: Readonly<Record<LengthUnit, { readonly least: number; readonly most: number }>> = {
  mm: { least: 2, most: 3 },
  um: { least: 0, most: 0 },
  in: { least: 4, most: 5 },
  thou: { least: 1, most: 2 },
};

/** The number alone: 86.62, 0.005, 2.4986. */
export const lengthNumber = (metres: number, unit: LengthUnit): string => {
  const { least, most } = digits[unit];
  const short = writeNumber(metres, unit, least);
  const long = writeNumber(metres, unit, most);
  return Number(long) === Number(short) ? short : long;
};

/** With its unit: `86.62 mm`. */
export const lengthText = (metres: number, unit: LengthUnit): string =>
  `${lengthNumber(metres, unit)} ${unit}`;

/** Two of them with one number of digits: `47.732 to 47.750 mm`; one where they read the same. */
export const rangeText = (low: number, high: number, unit: LengthUnit): string => {
  const texts = [low, high].map((metres) => lengthNumber(metres, unit));
  const places = Math.max(...texts.map((text) => text.split(".")[1]?.length ?? 0));
  const [from, to] = [low, high].map((metres) => writeNumber(metres, unit, places));
  return from === to ? `${from ?? ""} ${unit}` : `${from ?? ""} to ${to ?? ""} ${unit}`;
};
