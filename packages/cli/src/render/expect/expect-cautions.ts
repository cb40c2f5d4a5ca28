// What an expected pressure cannot say, in words; for the screen and the document.

import type { EngineRecord, ExpectedPressure } from "@sealtrend/core";
import type { Known } from "../../commands/expect-steps/expect-known.ts";

/** The answer, what it was made from, and the engine of the logbook it is about. */
export interface Expected {
  readonly answer: ExpectedPressure;
  readonly known: Known;
  readonly record: EngineRecord | undefined;
}

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
