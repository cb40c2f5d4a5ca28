// What an expected pressure cannot say, in words; for the screen and the document.

import {
  type EngineRecord,
  type ExpectedPressure,
  type Unlikely,
  fromSi,
  unlikelyOf,
} from "@sealtrend/core/parts";
import { short } from "./expect-units.ts";
import type { Known } from "../../commands/expect-steps/expect-known.ts";

/** The answer, what it was made from, and the engine of the logbook it is about. */
export interface Expected {
  readonly answer: ExpectedPressure;
  readonly known: Known;
  readonly record: EngineRecord | undefined;
}

interface UnlikelyWords {
  readonly name: string;
  readonly number: (si: number) => string;
  readonly unit: string;
}

const plain = (name: string, unit: string, places: number): UnlikelyWords => ({
  name,
  number: (value) => short(value, places),
  unit,
});

const unlikelyWords: Readonly<Record<Unlikely["name"], UnlikelyWords>> = {
  compressionRatio: plain("compression ratio", "", 1),
  shape: plain("bore to stroke", "", 2),
  rodToStroke: plain("rod to stroke", "", 2),
  size: { ...plain("size of the cylinder", " cm3", 0), number: (si) => short(fromSi(si, "cm3"), 0) },
  intakeCloses: plain("intake closes", " deg after bottom", 1),
  speed: plain("cranking speed", " rpm", 0),
};

/** What looks like a slip: `Unlikely: bore to stroke 0.1; nearly all engines have 0.4 to 2. …` */
export const unlikelyCautions = ({ cylinder }: Known): readonly string[] =>
  unlikelyOf(cylinder).map(({ name, found, least, most }) => {
    const { name: words, number, unit } = unlikelyWords[name];
    const range = `${number(least)} to ${number(most)}${unit}`;
    return `Unlikely: ${words} ${number(found)}${unit}; nearly all engines have ${range}. Are the figure and its unit right?`;
  });

/** The last line of every answer stands first; then what is special about this engine. */
export const expectCautions = ({ known, record }: Expected): readonly string[] => {
  const engine = record?.engine;
  return [
    "This cannot condemn a cylinder: compare the cylinders of one test with each other.",
    ...(known.cylinder.engine === "cold"
      ? ["A cold engine reads up to 10 % lower still, by its clearances and oil, which no method here sees."]
      : []),
    ...(engine?.cycle === "two-stroke"
      ? ["Two-stroke: the method was made for four-strokes and is unproved here."]
      : []),
    ...(engine?.compressionRelease === "automatic"
      ? ["With its automatic compression release defeated; with it at work far less."]
      : []),
  ];
};
