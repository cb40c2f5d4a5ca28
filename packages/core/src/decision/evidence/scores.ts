// What the rows come to for each place of wear.

import type { EvidenceRow } from "../input.ts";
import { wornPlaces, type WornPlace } from "../words.ts";
import { ladder, type EvidenceId } from "./ladder.ts";
import type { EvidenceLine } from "./row.ts";

export type State = "established" | "developing" | "not-shown";

export interface PlaceScore {
  /** Sum over lines of the largest for and the largest against. Points, never a probability. */
  readonly score: number;
  readonly state: State;
  /** Lines with a row for wear there. */
  readonly linesFor: readonly EvidenceLine[];
}

export type Scores = Readonly<Record<WornPlace, PlaceScore>>;

/** Oil use, blow-by and pressure that moved together: one alone is not enough, and there is no urgent stop.
 *  @source Caterpillar G3500 manual SEBU6711, second hand in handbook/trade.md F1 */
const together: readonly EvidenceId[] = ["A7", "C0", "D1"];

/** established: a direct measurement beyond a limit, or 4 points from two lines or more and no direct measurement against;
 *  developing: 2 points. Two lines are never cranking alone.  @source handbook/decision.md 2 (judgement) */
export const scoresOf = (rows: readonly EvidenceRow[]): Scores => ({
  top: scoreOf(rows, "top"),
  rings: scoreOf(rows, "rings"),
  bore: scoreOf(rows, "bore"),
  bottom: scoreOf(rows, "bottom"),
});

/** Places in that state. */
export const placesIn = (scores: Scores, state: State): readonly WornPlace[] =>
  wornPlaces.filter((place) => scores[place].state === state);

const scoreOf = (rows: readonly EvidenceRow[], place: WornPlace): PlaceScore => {
  const points = rows.map(({ id }) => ({ line: ladder[id].line, points: ladder[id].points[place] ?? 0 }));
  const lines = [...new Set(points.map(({ line }) => line))];
  const score = lines.reduce((sum, line) => {
    const own = points.filter((row) => row.line === line).map((row) => row.points);
    return sum + Math.max(0, ...own) + Math.min(0, ...own);
  }, 0);
  const linesFor = lines.filter((line) => points.some((row) => row.line === line && row.points > 0));
  const measuredBeyond = points.some((row) => row.points >= 4);
  const measuredInside = points.some((row) => row.points <= -3);
  const joint = place === "rings" && together.every((id) => rows.some((row) => row.id === id));
  const established = measuredBeyond || joint || (score >= 4 && linesFor.length >= 2 && !measuredInside);
  return { score, state: established ? "established" : score >= 2 ? "developing" : "not-shown", linesFor };
};
