// The judgements that one decision went by, filled in: to be shown beside it, each the user's to change.

import type { DecisionInput, Shares } from "./input.ts";
import { margins, riskTaken, usual } from "./judgements.ts";
import { chancesOf } from "./money/money-case.ts";
import type { Repair } from "./words.ts";

/** The judgements that a decision goes by, each the user's to change. Chances and shares from 0 to 1. */
export interface Judged {
  /** Chance that a repair does not hold and is done again. */
  readonly redo: Readonly<Record<Repair, number>>;
  /** Chance that waiting turns a re-ring into a rebuild, and the share of those that watching catches. */
  readonly spoil: number;
  readonly caught: number;
  readonly testsPerYear: number;
  /** Where the need arises if it does. */
  readonly shares: Shares;
  /** Chance, at most, that the limit is passed before the next test. */
  readonly risk: number;
  /** Two ways that differ by less than this share of the job are level. */
  readonly levelShare: number;
  /** Life after a re-ring as a share of the life before it. */
  readonly lifeFactor: number;
}

/** The judgements that a decision goes by, where its user says nothing else filled in with the usual ones.
 *  @source handbook/decision.md 3 to 6 (judgement) */
export const judgedOf = (input: DecisionInput): Judged => {
  const { use, ownership } = input;
  return {
    ...chancesOf(input),
    risk: riskTaken[use],
    levelShare: margins.shareOfJob,
    lifeFactor: (ownership.kind === "for-good" ? ownership.lifeFactor : undefined) ?? usual.lifeFactor,
  };
};
