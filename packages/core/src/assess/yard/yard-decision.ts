// The word for one engine of a yard, and what a list of many needs of the whole decision.

import type { Decision } from "../../decision/index.ts";
import { isCurrent } from "../deciding/current.ts";
import type { DecisionAssessment } from "../deciding/decision-assessment.ts";
import type { LowEverywhere } from "../deciding/low-everywhere.ts";

/** The word for one engine of a yard, and the first of its reasons. */
export interface YardDecision {
  readonly code: Decision["verdict"];
  /** What the work rests on: `needed` where the evidence asks for it, `opportunity` where it only pays. */
  readonly basis: Decision["basis"];
  /** Why this word and not a milder one: the first of its reasons. */
  readonly reason: Decision["reasons"][0];
  /** Why the last test does not speak for today: over a year old, or there was work since, maybe with rings that have
   *  to run in. */
  readonly tooOld?: "over-a-year" | "before-work" | "run-in";
  /** ISO: of the last test that counts, where a later one does not. */
  readonly counts?: string;
  /** Where it is low everywhere, what nobody proved right. */
  readonly prove?: LowEverywhere["unproved"];
  readonly urgency?: NonNullable<Decision["urgency"]>;
  /** How it may be used until that is done: not run at all, not before the test where lives hang on it, or not hard. */
  readonly use?: "not-run" | "not-before-test" | "not-hard";
}

export const decisionOf = (decided: DecisionAssessment): YardDecision => {
  const { decision, speaks, test, today, nextAction, lowEverywhere, notCounted } = decided;
  const {
    verdict,
    basis,
    reasons: [reason],
    urgency,
  } = decision;
  const isOld = test !== undefined && !isCurrent(test.test.date, today);
  const tooOld = nextAction?.code === "run-in" ? "run-in" : isOld ? "over-a-year" : "before-work";
  const use = useOf(decided);
  return {
    code: verdict,
    basis,
    reason,
    ...(speaks !== "too-old" ? {} : { tooOld }),
    ...(notCounted === undefined || test === undefined ? {} : { counts: test.test.date }),
    ...(reason !== "low-everywhere" || lowEverywhere === undefined ? {} : { prove: lowEverywhere.unproved }),
    ...(urgency === undefined ? {} : { urgency }),
    ...(use === undefined ? {} : { use }),
  };
};

/** What runs in is used before it is tested. */
const useOf = ({ decision, nextAction }: DecisionAssessment): YardDecision["use"] => {
  const { urgency, reasons, ifNotTested } = decision;
  const isStopped = urgency === "stop" || urgency === "before-further-use";
  if (isStopped || reasons[0] === "source-unknown") return "not-run";
  if (ifNotTested?.use === "not-used" && nextAction?.code !== "run-in") return "not-before-test";
  return urgency === "no-hard-use" || ifNotTested?.use === "no-hard-use" ? "not-hard" : undefined;
};
