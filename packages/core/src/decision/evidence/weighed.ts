// The rows weighed, after the guards that set rows aside: G1 doubtful, G3 odd, G4 not itself, G5 low everywhere.

import type { DecisionInput, Doubt, EvidenceRow } from "../input.ts";
import { ladder } from "./ladder.ts";
import { needOf, type Need } from "./need.ts";
import { scoresOf, type Scores } from "./scores.ts";

export interface Weighed {
  readonly counted: readonly EvidenceRow[];
  /** Cranking rows that do not count until it was run warm, or gauge, throttle and battery were proved. */
  readonly suspended: readonly EvidenceRow[];
  readonly scores: Scores;
  /** What is established; where the readings are in doubt, without the rows that rest on them. */
  readonly need: Need;
  /** What `need` rests on. */
  readonly needRows: readonly EvidenceRow[];
  readonly needScores: Scores;
  readonly inDoubt: "yes" | "no";
}

/** Those that leave the readings in doubt: asking for a second method does not. */
export const aboutReadings = (doubts: readonly Doubt[] = []): readonly Doubt[] =>
  doubts.filter((doubt) => doubt !== "one-method-only");

/** @source handbook/decision.md 2, guards */
export const weighed = ({ rows, trust, doubts = [] }: DecisionInput): Weighed => {
  const noCranking = doubts.includes("not-itself") || doubts.includes("low-everywhere");
  const suspended = rows.filter(({ id }) => noCranking && ladder[id].line === "cranking");
  const counted = rows.filter((row) => !suspended.includes(row));
  const inDoubt = trust !== "trusted" || aboutReadings(doubts).length > 0 ? "yes" : "no";
  const needRows = inDoubt === "yes" ? counted.filter(({ restsOn }) => restsOn === "other-records") : counted;
  const needScores = scoresOf(needRows);
  return {
    counted,
    suspended,
    scores: scoresOf(counted),
    need: needOf(needScores),
    needRows,
    needScores,
    inDoubt,
  };
};
