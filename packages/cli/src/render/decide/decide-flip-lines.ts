// The line of `decide` that says what would change the verdict.

import type { DecisionAssessment, PressureUnit } from "@sealtrend/core";
import type { Room } from "./decide-evidence.ts";
import { flipText, flipsOf } from "./decide-flips.ts";
import { verdictWords } from "./decide-words.ts";
import { prose } from "../prose.ts";

interface Given {
  readonly unit: PressureUnit;
  readonly width: number;
  readonly forGood?: DecisionAssessment;
}

/** At most three inputs, and keeping it for good where that changes the word. The ratio stands in the reason. */
export const flipLines = (assessment: DecisionAssessment, given: Given, room: Room): readonly string[] => {
  const { unit, width, forGood } = given;
  const { decision } = assessment;
  if (decision.verdict === "test-again" && decision.testWorth?.asked !== "yes") return [];
  const isNeeded = decision.basis === "needed";
  const kept = forGood === undefined || isNeeded ? [] : keptText(assessment, forGood);
  const flips = flipsOf(assessment)
    .filter(({ input }) => input !== "accessRatio")
    .slice(0, room === "least" ? 2 : 3);
  const texts = [...kept, ...flips.map((flip) => flipText(flip, assessment, unit))];
  if (texts.length === 0)
    return isNeeded || decision.comparison === undefined
      ? []
      : prose("nothing that was tried, one thing at a time", width, "flips      ");
  return prose(texts.join(" · "), width, isNeeded ? "level at   " : "flips      ");
};

/** Kept for good: another word, or nothing to say. */
const keptText = ({ decision }: DecisionAssessment, forGood: DecisionAssessment): readonly string[] =>
  forGood.decision.verdict === decision.verdict
    ? []
    : [`if you keep it for good (${verdictWords[forGood.decision.verdict]})`];
