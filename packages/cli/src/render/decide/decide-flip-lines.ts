// The line of `decide` that says what would change the verdict.

import type { DecisionAssessment, PressureUnit } from "@sealtrend/core";
import { type Flip, flipText, flipsOf } from "./decide-flips.ts";
import type { Room } from "./decide-room.ts";
import { verdictWords } from "./decide-words.ts";
import { prose } from "../prose.ts";

interface Given {
  readonly unit: PressureUnit;
  readonly width: number;
  readonly forGood?: DecisionAssessment;
}

/** At most three inputs, the years of ownership always among them, and keeping it for good where that changes the word. The
 *  ratio stands in the reason. */
export const flipLines = (assessment: DecisionAssessment, given: Given, room: Room): readonly string[] => {
  const { unit, width, forGood } = given;
  const { decision } = assessment;
  if (decision.reasons[0] === "outside-the-chance")
    return prose("a bore or bearing over its limit", width, "flips      ");
  // what it turns on is asked for in the reason
  if (assessment.horizon.kind === "for-good" && decision.keep === undefined && decision.basis !== "needed")
    return [];
  if (decision.verdict === "test-again" && decision.testWorth?.asked !== "yes") return [];
  const isNeeded = decision.basis === "needed";
  const kept = forGood === undefined || isNeeded ? [] : keptText(assessment, forGood);
  const flips = flipsOf(assessment).filter(({ input }) => input !== "accessRatio");
  const texts = [...kept, ...marked(told(flips, room.flips), (flip) => flipText(flip, assessment, unit))];
  if (texts.length === 0)
    return isNeeded || room.flips < 3 || decision.comparison === undefined
      ? []
      : prose("no price, limit or span of years on its own, however far", width, "flips      ");
  return prose(texts.join(" · "), width, isNeeded ? "level at   " : "flips      ");
};

/** What lies beyond the range that is tried for it is marked once, before the first of them. */
const marked = (flips: readonly Flip[], text: (flip: Flip) => string): readonly string[] => {
  const far = flips.findIndex(({ where }) => where === "outside");
  return flips.map((flip, i) => (i === far ? `far off: ${text(flip)}` : text(flip)));
};

/** The first ones; the last of them gives way to the years of ownership where those are not among them. */
const told = (flips: readonly Flip[], most: number): readonly Flip[] => {
  const years = flips.findIndex(({ input }) => input === "horizon");
  return flips.filter((_, i) => (years < most ? i < most : i < most - 1 || i === years));
};

/** Kept for good: another word, or nothing to say. */
const keptText = ({ decision }: DecisionAssessment, forGood: DecisionAssessment): readonly string[] =>
  forGood.decision.verdict === decision.verdict
    ? []
    : [`if you keep it for good (${verdictWords[forGood.decision.verdict]})`];
