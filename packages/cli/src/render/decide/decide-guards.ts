// The guards that acted, by what they mean, where the reason above does not say it.

import type { DecisionAssessment, Guard } from "@sealtrend/core";
import { doubtText, toProve } from "./decide-test-named.ts";
import { placeNames } from "./decide-words.ts";
import { joined, percent, sentence } from "../words.ts";

/** Sentences: contradictions, what does not count, what a repair hangs on. */
export const guardTexts = (assessment: DecisionAssessment): readonly string[] => {
  const { decision, conflicts } = assessment;
  return [
    ...conflicts.map(({ text }) => `${sentence(text)}: both stand, neither is averaged away.`),
    ...ringsText(assessment),
    ...decision.guards
      .filter((guard) => !isSaid(guard, assessment))
      .map((guard) => guardText(guard, assessment)),
  ].filter((text) => text !== "");
};

/** Rings that were out do not go back.  @source TM 10-3930-647-14&P, second hand in handbook/trade.md E2 */
const ringsText = ({ opened, decision }: DecisionAssessment): readonly string[] => {
  const isOut = opened === "pistons-out" || opened === "crank-out";
  const renewed = decision.verdict === "re-ring" || decision.verdict === "rebuild";
  return isOut && !renewed
    ? [
        "The pistons are out: rings that ran 50 h or more are not put back but replaced (TM 10-3930-647-14&P).",
      ]
    : [];
};

/** Said by the reason, by a conflict or by the last line. */
const isSaid = ({ code }: Guard, { decision, conflicts }: DecisionAssessment): boolean => {
  if (code === "safety") return true;
  if (code === "instruments-disagree") return conflicts.length > 0;
  if (code === "subject-to-measuring") return decision.basis === "opportunity";
  return decision.verdict === "test-again" && decision.reasons.some((reason) => reason === code);
};

/** What a guard means. */
export const guardText = (guard: Guard, assessment: DecisionAssessment): string => {
  switch (guard.code) {
    case "test-void":
      return "The test gone by is void and carries no verdict.";
    case "test-doubtful":
      return `${doubtText(assessment)}: the verdict stands without it.`;
    case "cranking-alone":
      return `Only cranking readings speak for wear of ${joined(guard.places.map((place) => placeNames[place]))}: no repair follows from them alone.`;
    case "one-line-only":
      return "One kind of evidence alone speaks for a rebuild: no rebuild follows from it before it is measured again.";
    case "one-odd-test":
      return "One test is out of step: read it again before you believe it.";
    case "not-itself":
      return "It was not itself at the last test (storage, flooding, overheating or running in): those cranking readings do not count until it was run warm.";
    case "low-everywhere":
      return `All cylinders are low: those readings do not count before this is proved: ${joined(toProve(assessment))}.`;
    case "subject-to-measuring":
      return guard.open.length === 0
        ? "Bores, ring gaps and bearings are measured inside their limits."
        : `Subject to measuring: ${joined(guard.open.map((part) => openParts[part]))} first.`;
    case "instruments-disagree":
      return guard.leakDown === "leaks"
        ? "The leak-down tells of a leak and the cranking readings are level: both stand, neither is averaged away."
        : "The leak-down is healthy and the cranking readings are low: both stand, neither is averaged away.";
    case "safety":
      return licensedText;
    case "replacement":
      return `The work costs ${percent(guard.share)} of another engine: think of one before you begin.`;
  }
};

const openParts = { bore: "bores", "ring-gap": "ring gaps", bearings: "bearings" } as const;

/** @source handbook/decision.md 8 */
export const licensedText =
  "This is a record for the person who decides. Airworthiness, and any return to service, is a licensed person's call under the maker's instructions.";
