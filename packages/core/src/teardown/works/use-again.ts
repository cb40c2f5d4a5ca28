// Nothing outside, nothing in doubt: what was measured goes back as it is.

import type { MeasuredPart } from "../../record/index.ts";
import { isComplete } from "../consistency/part-counts.ts";
import { type Answer, type Known, figuresOf, isInside } from "./known.ts";

interface Kind {
  readonly name: string;
  /** Any of these tells. */
  readonly parts: readonly MeasuredPart[];
}

/** What an engine is put together of, as far as it wears.  @source handbook/teardown.md 5, first row */
const kinds: readonly Kind[] = [
  { name: "bores", parts: ["bore"] },
  { name: "rings", parts: ["ring"] },
  { name: "main bearings", parts: ["main bearing", "main"] },
  { name: "rod bearings", parts: ["rod bearing", "pin"] },
];
const others: readonly Kind[] = [
  { name: "pistons", parts: ["piston"] },
  { name: "crank", parts: ["crank"] },
  { name: "rods", parts: ["rod", "housing"] },
  { name: "deck and head", parts: ["deck", "head"] },
  { name: "valves and guides", parts: ["guide", "stem", "seat", "valve", "spring"] },
];

/** @param works - lines that were asked for before: with one of them nothing goes back as it is */
export const useAgain = (known: Known, works: number): Answer | undefined => {
  const measured = [...kinds, ...others].filter(({ parts }) => parts.some((part) => isProved(known, part)));
  if (works > 0 || measured.length === 0) return undefined;
  const missing = kinds.filter((kind) => !measured.includes(kind)).map(({ name }) => name);
  const names = measured.map(({ name }) => name).join(", ");
  return {
    text:
      missing.length === 0
        ? "put it back as it is: new gaskets and seals, every part in its place; disturbed rings that ran 50 h go new"
        : `${names}: back as they are, new gaskets and seals, every part in its place`,
    why:
      missing.length === 0
        ? `inside their limits: ${names}`
        : `inside their limits: ${names}; nothing is said of ${missing.join(", ")}: not measured, or without a limit`,
    labels: [],
  };
};

/** Each of the engine's, and all that has a limit is inside. */
const isProved = (known: Known, part: MeasuredPart): boolean => {
  const figures = figuresOf(known, part).filter(({ verdicts }) => verdicts.length > 0);
  const counts = known.counts.filter((count) => count.part === part);
  return figures.length > 0 && figures.every(isInside) && counts.every(isComplete);
};
