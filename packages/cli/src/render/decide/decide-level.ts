// Level: the two ways cost about the same, or one input that nobody knows so well tips it.

import { type DecisionAssessment, judgedOf } from "@sealtrend/core/parts";
import { flipsOf, inputName } from "./decide-flips.ts";
import { joined, sentence } from "../words.ts";

/** `Level: the two ways are within a tenth of the job's price. Your choice.` */
export const levelText = (assessment: DecisionAssessment): string => {
  const { comparison, keep } = assessment.decision;
  if (comparison?.edge === "on") return "Level: the two ways cost the same, any input tips it. Your choice.";
  const tips = flipsOf(assessment)
    .filter(({ where, input }) => where !== "outside" && input !== "yearsLeft")
    .slice(0, 3)
    .map(({ input }) => inputName(input));
  const each = tips.length === 1 ? "alone tips it" : "each tip it";
  const tipped = tips.length === 0 ? "" : ` ${sentence(joined(tips))} ${each}.`;
  const { levelShare } = judgedOf(assessment.input);
  const near =
    comparison !== undefined && Math.abs(comparison.difference) < levelShare * comparison.price
      ? "the two ways are within a tenth of the job's price"
      : keep === undefined
        ? "the two ways are too near to tell apart"
        : "it hangs on how long new rings last, which is a judgement";
  return `Level: ${near}.${tipped} Your choice.`;
};
