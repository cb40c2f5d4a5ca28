// Sentences for text that should be a number, a unit, a word or a date.

import { nearest } from "../nearest.ts";
import { listed, quoted } from "./print.ts";

const number = (text: string): string => /^[+-]?(?:\d+(?:[.,]\d+)?|\.\d+)/.exec(text)?.[0] ?? "the number";

interface Shape {
  readonly found: string;
  readonly mend: string;
}

/** @param or - what else can be written, behind a comma */
type ShapeWords = (text: string, or: string) => Shape;

/** Why a text is no number, by the fault of the number grammar. */
export const numberShapes: Readonly<Record<string, ShapeWords>> = {
  "letter-o": (text, or) => ({
    found: "a letter O stands where a zero may belong",
    mend: `write ${text.replace(/[Oo]/g, "0")}${or}`,
  }),
  "letter-l": (text, or) => ({
    found: `a letter ${/[lI|]/.exec(text)?.[0] ?? "l"} stands where a one may belong`,
    mend: `write ${text.replace(/[Oo]/g, "0").replace(/[lI|]/g, "1")}${or}`,
  }),
  "two-marks": () => ({
    found: "more than one decimal mark",
    mend: "write it with one decimal mark and no thousands mark",
  }),
  "mark-at-end": (text) => ({
    found: "a digit is missing beside the decimal mark",
    mend: `write ${text.replace(/^([+-]?),/, "$10,").replace(/[.,]$/, "")}, or the digit that is missing`,
  }),
  "full-width": (text) => ({
    found: "full-width digits",
    mend: `write ${text.normalize("NFKC")}`,
  }),
  "unit-inside": (text) => ({
    found: "a unit stands in the cell",
    mend: `write ${number(text)} here; the unit has a column of its own`,
  }),
  exponent: () => ({
    found: "a spreadsheet's short form of a long number",
    mend: "write all digits out, from the paper sheet",
  }),
  pair: (text) => ({
    found: "two readings stand in one cell",
    mend: `write the cylinder side, ${number(text)}, here and the supply in the column regulated_psi (or _kPa, _bar)`,
  }),
  "too-long": () => ({ found: "too many digits", mend: "write it as the gauge shows it" }),
};

/** Faults whose mend is made of the text itself. */
const ofTheText: readonly string[] = ["letter-o", "letter-l", "mark-at-end", "full-width"];

const dateFault = (text: string, ways: number): string => {
  if (ways > 1) return "can be read two ways";
  const [, year] = /^(\d{4})-\d{2}-\d{2}$/.exec(text) ?? [];
  if (year === undefined) return "is not written year-month-day";
  return year < "1900" || year > "2100" ? "lies outside the years 1900 to 2100" : "is no day of the calendar";
};

export const numberWords = {
  "number-bad": (facts: {
    readonly column: string;
    readonly text: string;
    readonly fault: string;
    /** Where it is no reading: what can stand there instead, and nothing else. */
    readonly within?: { readonly least: number; readonly most: number };
  }) => {
    const { column, text, fault, within } = facts;
    const wanted = within && `a number from ${String(within.least)} to ${String(within.most)}`;
    const words = numberShapes[fault]?.(text, wanted === undefined ? ", or x if it was not taken" : "");
    const why = words?.found ?? (text.startsWith("#") ? "a spreadsheet's error mark" : undefined);
    const mend = wanted === undefined || ofTheText.includes(fault) ? words?.mend : undefined;
    return {
      found: `${column} ${quoted(text)} is not a number${why === undefined ? "" : `: ${why}`}`,
      expected: wanted ?? "a number such as 131 or 9.8",
      mend: mend ?? `write ${wanted ?? "the number, or x if it was not taken"}`,
    };
  },
  "number-two-ways": ({ text, small, large }: { text: string; small: number; large: number }) => ({
    found: `${quoted(text)} can be read two ways: ${String(small)} or ${String(large)}`,
    expected: "a number without a thousands mark",
    // Four decimals cannot be a thousands group, in a file with decimal commas as in one with points.
    mend: `write ${String(large)} for the large one, ${text.replace(",", ".")}0 for the small one`,
  }),
  "number-range": (facts: {
    readonly text: string;
    readonly least: number;
    readonly most: number;
    readonly of: string;
    readonly mend?: string;
  }) => ({
    found: `${quoted(facts.text)} is out of range for ${facts.of}`,
    expected: `${facts.of} from ${String(facts.least)} to ${String(facts.most)}`,
    mend: facts.mend ?? "check the figure and its unit against the paper sheet",
  }),
  "word-unknown": ({ column, text, words }: { column: string; text: string; words: readonly string[] }) => {
    const [near] = nearest(text, words);
    return {
      found:
        text === ""
          ? `no word in the column ${column}`
          : `${column} ${quoted(text)} is not a word known here`,
      expected: `one of: ${listed(words)}`,
      mend: near === undefined ? "write one of these words" : `write ${near}`,
    };
  },
  "date-missing": ({ column }: { column: string }) => ({
    found: `no ${column}`,
    expected: "a date such as 2026-05-03",
    mend: "write the day as year-month-day",
  }),
  "date-bad": ({ text, ways }: { text: string; ways: readonly string[] }) => ({
    found: `the date ${quoted(text)} ${dateFault(text, ways.length)}`,
    expected: "a date such as 2026-05-03",
    mend: ways.length === 0 ? "write the day that is meant, as year-month-day" : `write ${ways.join(" or ")}`,
  }),
  "unit-missing": ({ text, units }: { text: string; units?: readonly string[] }) => ({
    found: `no unit for ${quoted(text)}`,
    expected: units === undefined ? "psi, kPa, bar, MPa or kgf/cm2" : `one of: ${listed(units)}`,
    mend:
      units === undefined
        ? "write the unit that stands on the dial in the unit column"
        : "write the unit it was measured in, in the unit column",
  }),
  "unit-unknown": ({ text, units }: { text: string; units: readonly string[] }) => ({
    found: `the unit ${quoted(text)} is not known here`,
    expected: `one of: ${listed(units)}`,
    mend: `write ${nearest(text, units)[0] ?? "the unit that stands on the dial, if it is one of these"}`,
  }),
} as const;
