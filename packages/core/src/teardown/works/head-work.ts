// Last question: deck, head and valves.

import type { MeasuredPart } from "../../record/index.ts";
import { figuresText } from "../judging/figure-text.ts";
import { hotTank, springsFly } from "./cautions.ts";
import { type Answer, type Known, counted, figuresOf, isOutside, isWorn, labelsIn } from "./known.ts";

/** @source makers state a total that may come off; compression ratio: handbook/teardown.md 2.3 */
export const skim =
  (part: "deck" | "head") =>
  (known: Known): Answer | undefined => {
    const off = figuresOf(known, part, "flatness", "flatness 150").filter(isWorn);
    if (off.length === 0) return undefined;
    const least = known.skims.find(
      (one) => one.part === part && off.some(({ label = "" }) => label === one.label),
    );
    return {
      text: `skim the ${part}${least === undefined ? "" : `, ${least.text} at least`}, within the maker's total; then compression ratio and valve room`,
      why: figuresText(off),
      labels: labelsIn(off),
      caution: hotTank,
    };
  };

const outsideOf = (known: Known, ...parts: readonly MeasuredPart[]) =>
  parts.flatMap((part) => figuresOf(known, part).filter(isOutside));

/** Seat after guide, spring length after seat.  @source Ford */
export const guidesAndSeats = (known: Known): Answer | undefined => {
  const off = outsideOf(known, "guide", "seat");
  return off.length === 0
    ? undefined
    : {
        text: `guides, seats and valves of ${labelsIn(off).join(", ")} as a set: seat after guide, spring length after seat`,
        why: figuresText(off),
        labels: labelsIn(off),
        caution: springsFly,
      };
};

export const valves = (known: Known): Answer | undefined => {
  const off = outsideOf(known, "valve", "stem");
  return off.length === 0
    ? undefined
    : {
        text: `new ${counted("valve", labelsIn(off))}`,
        why: figuresText(off),
        labels: labelsIn(off),
        caution: springsFly,
      };
};

export const springs = (known: Known): Answer | undefined => {
  const off = outsideOf(known, "spring");
  return off.length === 0
    ? undefined
    : {
        text: `new ${counted("spring", labelsIn(off))}`,
        why: figuresText(off),
        labels: labelsIn(off),
        caution: springsFly,
      };
};
