// Nothing is needed: leave it, or watch it?

import { placesIn } from "../evidence/scores.ts";
import type { Grounds } from "./grounds.ts";

/** Why an engine that needs nothing is watched. */
export type WatchReason =
  | "wear-developing"
  | "history-alarm"
  | "limit-in-sight"
  | "watching-cheaper"
  | "chance-above-risk"
  | "work-in-sight";

/** Below this chance cheap watching is no reason to watch. @source handbook/decision.md 7 (judgement) */
const leastChance = 0.05;

/** None of these: leave it. The limit counts as in sight by the usual interval: by the one that scores shorten, a row that
 *  speaks for wear could turn watching into leaving.  @source handbook/decision.md 7, step 3 */
export const watchReasons = ({ evidence, next, outlook, costs, input }: Grounds): readonly WatchReason[] => {
  const probability = outlook?.probability ?? 0;
  const holds: readonly (readonly [WatchReason, boolean])[] = [
    ["wear-developing", placesIn(evidence.scores, "developing").length > 0],
    ["history-alarm", evidence.counted.some(({ id }) => id === "A8")],
    ["limit-in-sight", next.riskYears !== undefined && next.riskYears < 2 * next.usualCap],
    ["watching-cheaper", costs !== undefined && costs.watch < costs.leave && probability > leastChance],
    ["chance-above-risk", input.prices === undefined && probability > next.risk],
  ];
  return holds.flatMap(([reason, is]) => (is ? [reason] : []));
};
