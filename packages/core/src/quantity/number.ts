// The number grammar: what a person may write for a number, and nothing else.
// Digits, one decimal point or decimal comma, no exponent, no thousands mark: a mark that could be either is said. A point
// may stand first, as people who measure in inches write it (`.040`); a comma may not, for it also parts one number from the
// next.

import { unitNamed } from "./units.ts";

/** Why a text is no number; each has a sentence and a mend of its own in problem/words. */
export type NumberFault =
  | "empty"
  | "not-a-number"
  | "two-marks"
  | "mark-at-end"
  | "letter-o"
  | "letter-l"
  | "full-width"
  | "unit-inside"
  | "exponent"
  | "pair"
  | "too-long";

/** A number as it was read, or why the text is none; a mark that could part thousands is told. */
export type NumberReading =
  | {
      readonly ok: true;
      readonly value: number;
      /** What the text says if its mark is a thousands mark: `1,234` and `1.234` can be read two ways. */
      readonly thousands?: { readonly mark: "," | "."; readonly value: number };
    }
  | { readonly ok: false; readonly fault: NumberFault };

const plain = /^[+-]?(?:\d{1,9}(?:[.,]\d{1,6})?|\.\d{1,6})$/;
const thousands = /^[+-]?[1-9]\d{0,2}([.,])\d{3}$/;
const leading = /^[+-]?(?:\d+(?:[.,]\d+)?|\.\d+)/;

/** What a text that is no number looks like; the first that fits is the fault. */
const looks: readonly (readonly [NumberFault, (text: string) => boolean])[] = [
  ["mark-at-end", (text) => /^[+-]?(?:,\d+|\d+[.,])$/.test(text)],
  ["too-long", (text) => /^[+-]?(?:\d+(?:[.,]\d+)?|\.\d+)$/.test(text)],
  ["two-marks", (text) => /^[+-]?[\d.,]*\d[\d.,]*$/.test(text)],
  ["letter-o", (text) => /\d/.test(text) && /^[+-]?[\dOo]+(?:[.,][\dOo]+)?$/.test(text)],
  ["letter-l", (text) => /\d/.test(text) && /^[+-]?[\dOolI|]+(?:[.,][\dOolI|]+)?$/.test(text)],
  ["full-width", (text) => /[\uFF10-\uFF19]/.test(text)],
  ["exponent", (text) => /^[+-]?(?:\d+(?:[.,]\d+)?|\.\d+)[eE][+-]?\d+$/.test(text)],
  ["pair", (text) => /^\d+(?:[.,]\d+)?\s*\/\s*\d+(?:[.,]\d+)?$/.test(text)],
  ["unit-inside", (text) => leading.test(text) && isUnit(text.replace(leading, "").trim())],
];

/** A number with the letters that were typed for a one or a zero put right: `8l` is 81, `I3O` is 130. */
export const lettersAsDigits = (text: string): string => text.replace(/[Oo]/g, "0").replace(/[lI|]/g, "1");

const isUnit = (text: string): boolean => text === "%" || unitNamed(text) !== undefined;

/** The value of a text of one to nine digits and nothing else, as nearly every cell of a table is; NaN for any other. The same as
 *  `readNumber`, without a pattern. */
export const digitsValue = (text: string): number => {
  const { length } = text;
  if (length === 0 || length > 9) return NaN;
  let value = 0;
  for (let at = 0; at < length; at += 1) {
    const digit = text.charCodeAt(at) - 48;
    if (!(digit >= 0 && digit <= 9)) return NaN;
    value = 10 * value + digit;
  }
  return value;
};

/** Reads one number; a comma is a decimal comma. `1.234,5`, `1e3`, `0x10` and the like are refused. */
export const readNumber = (text: string): NumberReading => {
  const trimmed = text.trim();
  if (trimmed === "") return { ok: false, fault: "empty" };
  if (!plain.test(trimmed))
    return { ok: false, fault: looks.find(([, fits]) => fits(trimmed))?.[0] ?? "not-a-number" };
  if (!trimmed.includes(".") && !trimmed.includes(",")) return { ok: true, value: Number(trimmed) };
  const value = Number(trimmed.replace(",", "."));
  const mark = thousands.exec(trimmed)?.[1];
  if (mark !== "," && mark !== ".") return { ok: true, value };
  return { ok: true, value, thousands: { mark, value: Number(trimmed.replace(mark, "")) } };
};
