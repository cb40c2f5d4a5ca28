// A reading that a slip of the hand made: 1310, 13 or 311 among 131s. It may be true; it is worth a question. A zero and a
// reading that is only low are never questioned: a cylinder can hold nothing.

import { readNumber } from "../quantity/index.ts";
import { median } from "../statistics/index.ts";

/** How far a reading stands from what was to be expected. */
export type Slip = "tenfold" | "tenth";

/** A reading that a slip of the hand may have made, and what was likely meant. */
export interface ReadingSlip {
  readonly kind: Slip | "swapped";
  /** The reading that was meant, where the digits themselves tell. */
  readonly meant?: string;
}

/** A factor of ten, give or take what cylinders differ among themselves; judgement of this project. */
const factor = { least: 7, most: 15 };
/** So far above the highest of its fellows no cylinder reads of itself, and so near their middle a swap has to land;
 *  judgement of this project. */
const swap = { above: 1.4, lands: 0.15 };

/** What a reading looks like that was mistyped; undefined where nothing points to it.
 *  @param text - a plain number as typed  @param fellows - the other readings of the row
 *  @param last - the same cylinder's earlier one; all in one unit */
export const readingSlip = (
  text: string,
  fellows: readonly number[],
  last: number | undefined,
): ReadingSlip | undefined => {
  const reading = readNumber(text);
  if (!reading.ok) return undefined;
  const kind = slipOf(reading.value, fellows, last);
  const shifted = kind === undefined ? undefined : slippedTo(text, kind);
  const swapped = swappedTo(text, reading.value, { fellows, last });
  const off = (meant: string): number => Math.abs(numberIn(meant) - median(fellows));
  if (swapped !== undefined && (shifted === undefined || off(swapped) < off(shifted)))
    return { kind: "swapped", meant: swapped };
  return kind === undefined ? undefined : { kind, ...(shifted === undefined ? {} : { meant: shifted }) };
};

const numberIn = (text: string): number => Number(text.replace(",", "."));

/** Whether a reading is about ten times its fellows of the row, or a tenth of them; without fellows, its own last one.
 *  A zero is never a slip. Nor is a reading like its own last one.
 *  @param fellows - the other readings of the row  @param last - the same cylinder's earlier one; all in one unit */
export const slipOf = (
  value: number,
  fellows: readonly number[],
  last: number | undefined,
): Slip | undefined => {
  const sound = fellows.filter((other) => other > 0);
  const expected = sound.length > 0 ? median(sound) : last;
  if (expected === undefined || expected <= 0 || value <= 0) return undefined;
  if (isLikeLast(value, last)) return undefined;
  const is = (ratio: number): boolean => ratio >= factor.least && ratio <= factor.most;
  return is(value / expected) ? "tenfold" : is(expected / value) ? "tenth" : undefined;
};

const isLikeLast = (value: number, last: number | undefined): boolean =>
  last !== undefined && value > last / 2 && value < last * 2;

/** The reading that was meant, where the digits themselves tell: 1310 is 131, 98 is 9.8, 13.1 is 131; undefined where a
 *  digit would have to be made up, as for 13. @param text - a plain number as typed */
const slippedTo = (text: string, slip: Slip): string | undefined => {
  const [, whole = "", decimals = ""] = /^(\d+)(?:[.,](\d+))?$/.exec(text) ?? [];
  if (whole === "" || (slip === "tenth" && decimals === "")) return undefined;
  const shifted = Number(`${whole}.${decimals}e${slip === "tenfold" ? "-1" : "1"}`);
  return String(Number(shifted.toPrecision(9)));
};

/** The same digits in another order that fits the others, where the reading as typed stands far above all of them: a swap of
 *  neighbours before any other, then what lies nearest their middle. One that is low may be true, and is left alone. */
const swappedTo = (
  text: string,
  value: number,
  { fellows, last }: { readonly fellows: readonly number[]; readonly last: number | undefined },
): string | undefined => {
  const sound = fellows.filter((other) => other > 0);
  if (sound.length < 2 || isLikeLast(value, last) || value < swap.above * Math.max(...sound))
    return undefined;
  const middle = median(sound);
  const off = (other: string): number => Math.abs(numberIn(other) - middle);
  const fits = (other: string): boolean => off(other) <= swap.lands * middle && !/^0\d/.test(other);
  const [likeliest] = [neighboursSwapped(text), reordered(text)].flatMap((ways) =>
    ways.filter(fits).toSorted((a, b) => off(a) - off(b)),
  );
  return likeliest?.replace(",", ".");
};

const isDigit = (sign: string): boolean => /\d/.test(sign);

/** Each with one digit and the next in each other's place; the point stays. */
const neighboursSwapped = (text: string): readonly string[] => {
  const digits = [...text].filter(isDigit);
  return digits
    .slice(1)
    .map((next, i) => withDigits(text, digits.with(i, next).with(i + 1, digits[i] ?? next)));
};

/** More digits than a gauge shows are in no order worth trying. */
const mostDigits = 4;

const reordered = (text: string): readonly string[] => {
  const digits = [...text].filter(isDigit);
  return digits.length > mostDigits ? [] : orders(digits).map((order) => withDigits(text, order));
};

const orders = (digits: readonly string[]): readonly (readonly string[])[] =>
  digits.length < 2
    ? [digits]
    : digits.flatMap((digit, i) => orders(digits.toSpliced(i, 1)).map((rest) => [digit, ...rest]));

const withDigits = (text: string, digits: readonly string[]): string => {
  const left = [...digits];
  return [...text].map((sign) => (isDigit(sign) ? (left.shift() ?? sign) : sign)).join("");
};
