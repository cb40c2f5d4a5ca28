// The guards that acted, by what they mean, where the reason above does not say it.

import type { DecisionAssessment, Guard } from "@sealtrend/core/parts";
import { allAreLow, doubtText, lowEverywhereText, notItselfText, oddTestText } from "./decide-test-named.ts";
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

/** Rings that were out do not go back, where the verdict does not renew them anyway. */
const ringsText = ({ ringsDue, decision }: DecisionAssessment): readonly string[] => {
  const renewed = decision.verdict === "re-ring" || decision.verdict === "rebuild";
  return ringsDue === undefined || renewed ? [] : [`${sentence(ringsDue.text)}.`];
};

/** Said by the reason, by a conflict or by the last line. */
const isSaid = ({ code }: Guard, { decision, conflicts }: DecisionAssessment): boolean => {
  if (code === "safety") return true;
  if (code === "instruments-disagree") return conflicts.length > 0;
  if (code === "subject-to-measuring") return decision.basis === "opportunity";
  if (decision.verdict === "watch-it") return decision.reasons[0] === code;
  return decision.verdict === "test-again" && decision.reasons.some((reason) => reason === code);
};

/** What a guard means. */
export const guardText = (guard: Guard, assessment: DecisionAssessment): string => {
  switch (guard.code) {
    case "source-unknown":
      return "Damage that was seen or heard comes before any reading: its source is found first.";
    case "scored-bore":
      return "New rings do not cure what was seen in a bore: it is measured first.";
    case "test-void":
      return assessment.speaks === "none"
        ? "No test is on record: no verdict rests on one."
        : "The test gone by is void and carries no verdict.";
    case "test-doubtful":
      return `${doubtText(assessment)}: the verdict stands without it.`;
    case "cranking-alone":
      return `Only cranking readings speak for wear of ${joined(guard.places.map((place) => placeNames[place]))}: no repair follows from them alone.`;
    case "one-line-only":
      return "One kind of evidence alone speaks for a rebuild: no rebuild follows from it before it is measured again.";
    case "one-odd-test":
      return oddTestText(assessment);
    case "one-method-only":
      return `${allAreLow(assessment)}, and gauge, throttle and speed are proved: a leak-down comes before anything is decided.`;
    case "not-itself":
      return notItselfText(assessment);
    case "low-everywhere":
      return `${lowEverywhereText(assessment)} Until then those readings do not count.`;
    case "subject-to-measuring":
      return guard.open.length === 0
        ? "Bores, ring gaps and bearings are measured."
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
