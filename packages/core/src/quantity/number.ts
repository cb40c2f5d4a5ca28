// The number grammar: what a person may write for a number, and nothing else.
// Digits, one decimal point or decimal comma, no exponent, no thousands mark: a mark that could be either is refused.

export type NumberFault = "empty" | "not-a-number" | "two-marks" | "letter-o" | "full-width" | "unit-inside" | "too-long";
export type NumberReading =
  | {
      readonly ok: true;
      readonly value: number;
      /** What the text says if its mark is a thousands mark: `1,234` and `1.234` can be read two ways. */
      readonly thousands?: { readonly mark: "," | "."; readonly value: number };
    }
  | { readonly ok: false; readonly fault: NumberFault };

const plain = /^[+-]?\d{1,9}(?:[.,]\d{1,6})?$/;
const thousands = /^[+-]?[1-9]\d{0,2}([.,])\d{3}$/;
const withUnit = /^[+-]?\d+(?:[.,]\d+)?\s*[A-Za-z%/°"']/;
const letterO = /^[+-]?[\dOo]+(?:[.,][\dOo]+)?$/;

/** Reads one number; a comma is a decimal comma. `1.234,5`, `1e3`, `0x10` and the like are refused. */
export const readNumber = (text: string): NumberReading => {
  const trimmed = text.trim();
  if (trimmed === "") return { ok: false, fault: "empty" };
  if (plain.test(trimmed)) {
    const value = Number(trimmed.replace(",", "."));
    const mark = thousands.exec(trimmed)?.[1];
    if (mark !== "," && mark !== ".") return { ok: true, value };
    return { ok: true, value, thousands: { mark, value: Number(trimmed.replace(mark, "")) } };
  }
  if (/^[+-]?[\d.,]+$/.test(trimmed)) {
    const marks = (trimmed.match(/[.,]/g) ?? []).length;
    return { ok: false, fault: marks > 1 ? "two-marks" : /\d{10,}/.test(trimmed) || /[.,]\d{7,}/.test(trimmed) ? "too-long" : "not-a-number" };
  }
  if (letterO.test(trimmed)) return { ok: false, fault: "letter-o" };
  if (/[\uFF10-\uFF19]/.test(trimmed)) return { ok: false, fault: "full-width" };
  if (withUnit.test(trimmed)) return { ok: false, fault: "unit-inside" };
  return { ok: false, fault: "not-a-number" };
};
