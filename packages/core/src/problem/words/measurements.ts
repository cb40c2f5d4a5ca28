// Sentences for faults in measurements.csv and in what is typed for it.

import { numberShapes } from "./number.ts";
import { quoted } from "./print.ts";

interface Shape {
  readonly found: string;
  readonly mend: string;
}

type ShapeWords = (text: string, unit: string) => Shape;

const unitsNamed = (unit: string): string => (unit === "in" ? "inches" : unit);

const asNumber = (text: string): string => /\d+(?:[.,]\d+)?|\.\d+/.exec(text)?.[0] ?? "the figure";

const shapes: Readonly<Record<string, ShapeWords>> = {
  "not-taken": () => ({
    found: "nothing was measured",
    mend: "write the figure, or delete the row: what was not measured has no row",
  }),
  sign: (text) => ({
    found: "a size carries no sign",
    mend: `write ${asNumber(text)}, or the whole size if this is how far it is from it`,
  }),
  leaves: () => ({
    found: "the leaf that goes must be thinner than the one that stops",
    mend: "write the leaf that goes first: 0.35..0.40",
  }),
  "no-feeler": () => ({ found: "only a length lies between two feelers", mend: "write one figure" }),
  fraction: () => ({
    found: "not a fraction of an inch",
    mend: "write it in decimals, or as 3-7/16 with the unit in",
  }),
  "too-much": (_, unit) => ({
    found: `more ${unitsNamed(unit)} than anything measures`,
    mend: "check the figure and its unit against the paper sheet",
  }),
  coarse: (_, unit) => ({
    found: "too fine or too coarse for an instrument",
    mend: `write it in ${unitsNamed(unit)}, or leave it empty where nobody knows`,
  }),
  "unit-spare": (_, unit) => ({
    found: `a word has no unit, and ${quoted(unit)} stands there`,
    mend: "empty the unit",
  }),
  pair: () => ({ found: "two figures stand in one cell", mend: "give each figure a row of its own" }),
};

/** What is expected where that is not the figure itself. */
const expectations: Readonly<Record<string, string>> = {
  "unit-spare": "the word alone",
  "no-feeler": "one number",
  coarse: "a number above 0, up to 5 mm",
};

/** What belongs to a figure: no feeler reads it. */
const smallThings: readonly string[] = ["the resolution", "the uncertainty"];

export const measurementWords = {
  "measure-bad": (facts: {
    /** `ring end gap`. */
    readonly what: string;
    readonly text: string;
    readonly fault: string;
    readonly unit: string;
  }) => {
    const { what, text, fault, unit } = facts;
    const shape = shapes[fault]?.(text, unit) ?? numberShapes[fault]?.(text, "");
    const isSmall = smallThings.includes(what);
    return {
      found: `${what} ${quoted(text)}: ${shape?.found ?? (text.startsWith("#") ? "a spreadsheet's error mark" : "not a number")}`,
      expected:
        expectations[isSmall ? "coarse" : fault] ??
        `a number of ${unitsNamed(unit)}, or feeler leaves such as 0.35..0.40 or <0.04`,
      mend:
        isSmall && fault === "sign"
          ? `write ${asNumber(text)}`
          : (shape?.mend ?? "write the number as the instrument shows it"),
    };
  },
  "label-bad": (facts: {
    readonly what: string;
    readonly text: string;
    readonly expected: string;
    readonly mend: string;
  }) => ({
    found:
      facts.text === ""
        ? `no label for ${facts.what}`
        : `${facts.what}: the label ${quoted(facts.text)} names nothing of this engine`,
    expected: facts.expected,
    mend: facts.mend,
  }),
  "place-bad": (facts: {
    readonly what: string;
    readonly text: string;
    readonly expected: string;
    readonly example: string;
  }) => ({
    found:
      facts.text === ""
        ? `${facts.what} does not say where`
        : `${facts.what}: ${quoted(facts.text)} is no place on it`,
    expected: facts.expected,
    mend: facts.example === "" ? "leave the place empty" : `write such as ${facts.example}`,
  }),
} as const;
