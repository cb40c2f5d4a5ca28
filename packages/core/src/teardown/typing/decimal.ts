// Decimal figures as text, exact to the last digit: a size is stored with the digits that were typed.

import { fromSi, toSi } from "../../quantity/index.ts";
import type { LengthUnit } from "../../record/index.ts";
import type { TypedLength, TypedLengthUnit } from "./typing.ts";

/** Most digits behind the point that a table of the logbook takes. */
const most = 6;

interface Decimal {
  readonly digits: bigint;
  readonly places: number;
}

const decimalOf = (text: string): Decimal => {
  const [whole = "", decimals = ""] = plain(text).split(".");
  return { digits: BigInt(`${whole}${decimals}` || "0"), places: decimals.length };
};

const textOf = ({ digits, places }: Decimal): string => {
  const sign = digits < 0n ? "-" : "";
  const all = String(digits < 0n ? -digits : digits).padStart(places + 1, "0");
  const end = all.length - places;
  return `${sign}${all.slice(0, end)}${places === 0 ? "" : `.${all.slice(end)}`}`;
};

/** A figure of the number grammar with a decimal point, and a zero before it where none was typed. */
export const plain = (text: string): string => text.replace(",", ".").replace(/^\./, "0.");

/** The same figure with its point moved: `shifted("22.5", -3)` is `0.0225`. Trailing zeros that were typed stay. */
export const shifted = (text: string, by: number): string => {
  const { digits, places } = decimalOf(text);
  const moved = places - by;
  return textOf(
    moved < 0 ? { digits: digits * 10n ** BigInt(-moved), places: 0 } : { digits, places: moved },
  );
};

/** The sum, with as many decimals as the longer of the two. */
export const sum = (a: string, b: string): string => {
  const [left, right] = [decimalOf(a), decimalOf(b)];
  const places = Math.max(left.places, right.places);
  const at = ({ digits, places: own }: Decimal): bigint => digits * 10n ** BigInt(places - own);
  return textOf({ digits: at(left) + at(right), places });
};

/** The power of ten of each unit within its family: millimetres and inches. */
const powers: Readonly<Record<TypedLengthUnit, { readonly of: "mm" | "in"; readonly power: number }>> = {
  mm: { of: "mm", power: 0 },
  um: { of: "mm", power: -3 },
  in: { of: "in", power: 0 },
  thou: { of: "in", power: -3 },
  tenths: { of: "in", power: -4 },
};

/** A length in another unit: exact within millimetres or inches, else to the sixth decimal. */
export const inUnit = ({ text, unit }: TypedLength, wanted: TypedLengthUnit): string => {
  const [from, to] = [powers[unit], powers[wanted]];
  const based = shifted(text, from.power);
  const other = from.of === to.of ? based : rounded(fromSi(toSi(Number(based), from.of), to.of));
  return shifted(other, -to.power);
};

/** A length as measurements.csv holds it: there are no tenths there. */
export const stored = (length: TypedLength): { readonly text: string; readonly unit: LengthUnit } => {
  const unit = length.unit === "tenths" ? "in" : length.unit;
  return { text: inUnit(length, unit), unit };
};

/** A fraction of an inch in decimals: `3-7/16` is 3.4375; any other figure as it is. */
export const inDecimals = (text: string): string => {
  const [, whole = "0", over, under] = /^(?:(\d+)-)?(\d+)\/(\d+)$/.exec(text) ?? [];
  return over === undefined || under === undefined
    ? text
    : String(Number(whole) + Number(over) / Number(under));
};

/** Whether a table of the logbook takes it. */
export const fitsTable = (text: string): boolean => (text.split(".")[1] ?? "").length <= most;

const rounded = (value: number): string => value.toFixed(most).replace(/\.?0+$/, "");
