// First question: can block and head be used at all?

import { hotTank } from "./cautions.ts";
import { type Answer, type Known, figuresOf, labelsIn, seenText, whyText } from "./known.ts";
import { figuresText } from "../judging/figure-text.ts";

/** Makers: do not try to repair cracks (a maker's block text, 1997); stitching is an old trade method, common practice. */
export const crackRepair = (known: Known): Answer | undefined => {
  const found = known.findings.filter(({ part }) => part === "crack");
  const sizes = figuresOf(known, "crack");
  if (found.length === 0 && sizes.length === 0) return undefined;
  const castings = labelsIn([...found, ...sizes]);
  const which = castings.length === 0 ? "the cracked casting" : `cracked ${castings.join(", ")}`;
  const told =
    known.engine.use === "aircraft"
      ? "an approved repair, or replace"
      : "replace, or a specialist's repair and pressure test where the maker allows one";
  return {
    text: `${which}: ${told}; settle this before any other work is paid for`,
    why: whyText(seenText(found), figuresText(sizes)),
    labels: castings,
    caution: hotTank,
  };
};
