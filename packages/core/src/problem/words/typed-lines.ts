// Sentences for lines typed at the bench.

import { nearest } from "../nearest.ts";
import { listed, plural, quoted } from "./print.ts";

/** What a figure of a typed line can be besides no number. */
export type TypedFigureFault = "dash" | "too-fine" | "no-figure" | "note" | "found-by" | "instrument";
/** Why a figure with a sign cannot be counted from the size set. */
export type TypedDeviationFault = "sign" | "which-unit" | "no-deviation" | "below-zero";
/** What a line leaves open of where its figures stand. */
export type TypedPlaceFault = "no-step" | "not-a-place" | "which";

type Said = Readonly<Record<"found" | "expected" | "mend", string>>;

/** @param line - the typed line before its colon */
const figures: Readonly<Record<TypedFigureFault, (text: string, line: string) => Said>> = {
  dash: (text) => ({
    found: `${quoted(text)} are two figures with a dash between`,
    expected: "one figure, or two feeler leaves with two points between",
    mend: `write ${text.replace("-", "..")} for the leaf that goes and the one that stops, ${text.replace("-", "/")} for two readings`,
  }),
  "too-fine": (text) => ({
    found: `${quoted(text)} has more decimals than are stored`,
    expected: "at most 6 decimals in mm or in",
    mend: "write it as the instrument shows it",
  }),
  "no-figure": (_, line) => ({
    found: `nothing stands behind ${quoted(`${line}:`)}`,
    expected: "the figures, with blanks between; - for one that was not taken",
    mend: `write ${line}: and the figures behind it`,
  }),
  note: (text) => ({
    found: `${quoted(text)} is no figure`,
    expected: "figures, or a note behind a blank and a semicolon",
    mend: `write a blank before the semicolon: ; ${text}`,
  }),
  instrument: (text) => ({
    found: `${quoted(text)} is an instrument, not a figure`,
    expected: "figures alone behind the colon",
    mend: `write it on a line of its own before this one: with ${text}`,
  }),
  "found-by": (text, line) => ({
    found: "a crack, and not how it was found",
    expected: "dye, magnetic, pressure or seen, behind a comma",
    mend: `write ${line}: ${text}, seen`,
  }),
};

const deviations: Readonly<Record<TypedDeviationFault, (text: string) => Said>> = {
  sign: (text) => ({
    found: `${quoted(text)} has a sign, and no size was set`,
    expected: "a size, which carries no sign; with a sign it is how far off the set size it is",
    mend: `write ${text.slice(1)}, or the size of the setting first, on a line of its own: set 86.50`,
  }),
  "which-unit": (text) => ({
    found: `${quoted(text)} can be in the unit last chosen or in the unit of the set size`,
    expected: "a unit behind it, where the two are not of one kind",
    mend: `write ${text}mm or ${text}in`,
  }),
  "no-deviation": (text) => ({
    found: `${quoted(text)} is not one plain figure`,
    expected: "how far off the set size, such as +.12",
    mend: "write one number with its sign, or the whole sizes without",
  }),
  "below-zero": (text) => ({
    found: `${quoted(text)} from the set size is less than nothing`,
    expected: "a size",
    mend: "check the set size and the unit, or write set off",
  }),
};

/** @param line - the typed line before its colon */
const places: Readonly<Record<TypedPlaceFault, (text: string, line: string) => Said>> = {
  "no-step": (text, line) => ({
    found: "several gaps along one line, and not how far apart",
    expected: "the distance from one place to the next",
    mend: `write ${line} at 75mm: ${text}`,
  }),
  "not-a-place": (text) => ({
    found: `${quoted(text)} is no distance along the part`,
    expected: "a number of mm or in behind the word at",
    mend: "write such as at 75mm",
  }),
  which: (text, line) => ({
    found: `${quoted(line)} does not say which figure`,
    expected: "end play, or runout with the number of the main",
    mend: `write end play: ${text}, or runout 3: ${text}`,
  }),
};

export const typedLineWords = {
  "typed-start": (facts: {
    readonly text: string;
    /** What a line may begin with. */
    readonly words: readonly string[];
    /** The line with its colon, where only the colon is missing. */
    readonly line?: string;
  }) => {
    const { text, words, line } = facts;
    if (line !== undefined)
      return {
        found: `no colon behind ${quoted(text)}`,
        expected: "the part and its number, a colon, then the figures",
        mend: `write ${line}`,
      };
    const [near] = nearest(text, words);
    const isFigure = /^[-+<.,]?\d/.test(text);
    return {
      found: isFigure ? `${quoted(text)} stands without its part` : `no line begins with ${quoted(text)}`,
      expected: `one of: ${listed(words)}`,
      mend: isFigure
        ? `write the part first: bore 3: ${text}`
        : `write ${near ?? "the part first, such as bore 3: and its figures"}`,
    };
  },
  "typed-unit": ({ text, units }: { text: string; units: readonly string[] }) => ({
    found: `no unit for ${quoted(text)}`,
    expected: `a unit chosen before, or one behind the figure: ${listed(units)}`,
    mend: `write ${units[0] ?? ""} (or ${units[1] ?? ""}) on a line of its own first, or here: ${text}${units[0] ?? ""}`,
  }),
  "typed-figure": (facts: {
    readonly text: string;
    readonly fault: TypedFigureFault;
    readonly line: string;
  }) => figures[facts.fault](facts.text, facts.line),
  "typed-deviation": (facts: { readonly text: string; readonly fault: TypedDeviationFault }) =>
    deviations[facts.fault](facts.text),
  "typed-place": (facts: { readonly text: string; readonly fault: TypedPlaceFault; readonly line: string }) =>
    places[facts.fault](facts.text, facts.line),
  "typed-count": (facts: {
    /** `bore 3`. */
    readonly what: string;
    readonly given: number;
    readonly places: readonly string[];
    /** How many a shorter order takes, where they are between it and these places. */
    readonly fewer?: number;
  }) => ({
    found: `${plural(facts.given, "figure")} for ${facts.what}`,
    expected:
      facts.places.length === 1
        ? "one figure"
        : `${facts.fewer === undefined ? "at most" : `${String(facts.fewer)}, or`} ${String(facts.places.length)}: ${listed(facts.places)}`,
    mend:
      facts.fewer === undefined
        ? "give one figure a place; join readings of one place with a stroke: 86.62/86.63"
        : "put - at a place that was not taken",
  }),
  "typed-setting": (facts: {
    readonly setting: string;
    readonly text: string;
    readonly expected: string;
    readonly example: string;
  }) => ({
    found:
      facts.text === ""
        ? `nothing stands behind ${quoted(facts.setting)}`
        : `${facts.setting} ${quoted(facts.text)} is not understood`,
    expected: facts.expected,
    mend: `write such as: ${facts.example}`,
  }),
} as const;
