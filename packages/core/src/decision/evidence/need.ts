// Is work needed? From the scores alone.

import type { EvidenceRow } from "../input.ts";
import type { CurePlace, Repair } from "../words.ts";
import { ladder } from "./ladder.ts";
import type { Scores } from "./scores.ts";

export interface Need {
  /** The word by need; absent where nothing is established. */
  readonly repair?: Repair;
  /** What needs work for certain. */
  readonly places: readonly CurePlace[];
}

/** bottom or bore established: rebuild; else rings: re-ring, with the head where the top is too; else top: top end.
 *  @source handbook/decision.md 2 */
export const needOf = (scores: Scores): Need => {
  const established = (place: keyof Scores): boolean => scores[place].state === "established";
  const deep: readonly CurePlace[] = established("bore") || established("bottom") ? ["bottom"] : [];
  const rings: readonly CurePlace[] = established("rings") ? ["rings"] : [];
  const top: readonly CurePlace[] = established("top") ? ["top"] : [];
  const places = [...top, ...rings, ...deep];
  if (deep.length > 0) return { repair: "rebuild", places };
  if (rings.length > 0) return { repair: "reRing", places };
  if (top.length > 0) return { repair: "topEnd", places };
  return { places };
};

/** A rebuild asks for two lines; a direct measurement made twice counts as two.
 *  @source handbook/decision.md 2, G2 (judgement) */
export const linesForRebuild = (scores: Scores, rows: readonly EvidenceRow[]): "enough" | "one-only" => {
  const places = (["bore", "bottom"] as const).filter((place) => scores[place].state === "established");
  const lines = new Set(places.flatMap((place) => scores[place].linesFor));
  const measured = rows
    .filter(({ id }) => places.some((place) => (ladder[id].points[place] ?? 0) >= 4))
    .reduce((sum, { times }) => sum + (times ?? 1), 0);
  return lines.size >= 2 || measured >= 2 ? "enough" : "one-only";
};
