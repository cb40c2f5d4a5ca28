// The guards: rules that stand above points and money. Each names itself.

import { placesIn } from "../evidence/scores.ts";
import type { EvidenceId } from "../evidence/ladder.ts";
import { linesForRebuild } from "../evidence/need.ts";
import { replacementShare } from "../judgements.ts";
import type { Repair, WornPlace } from "../words.ts";
import { disagreement } from "./disagreement.ts";
import type { Grounds } from "./grounds.ts";
import { isRenewedScored, isSourceAsked } from "./stops.ts";

/** A rule that stands above points and money: by name, with what it set aside. */
export type Guard =
  /** G1 */
  | { readonly code: "test-void" | "test-doubtful" }
  /** G2: only cranking speaks for wear there, and no repair follows from cranking alone. */
  | { readonly code: "cranking-alone"; readonly places: readonly WornPlace[] }
  /** G2: no rebuild from one line. */
  | { readonly code: "one-line-only" }
  /** Nothing is closed or ordered before the source of damage is known, or the scored bore measured (our judgement). */
  | { readonly code: "source-unknown" | "scored-bore" }
  /** G3 */
  | { readonly code: "one-odd-test" }
  /** G5, all of it proved: cranking alone says so. */
  | { readonly code: "one-method-only" }
  /** G4, G5: these rows do not count until it was run warm, or gauge, throttle and battery were proved. */
  | { readonly code: "not-itself" | "low-everywhere"; readonly suspended: readonly EvidenceId[] }
  /** G6: what nobody measured against its limit yet. */
  | { readonly code: "subject-to-measuring"; readonly open: readonly ("bore" | "ring-gap" | "bearings")[] }
  /** G7: leak-down says leak and cranking says level, or the reverse; not averaged. */
  | { readonly code: "instruments-disagree"; readonly leakDown: "leaks" | "healthy" }
  /** G8: a licensed person decides under the maker's limits. */
  | { readonly code: "safety" }
  /** G9: the repair's price over that of another engine. */
  | { readonly code: "replacement"; readonly share: number };

/** Guards that hold before any verdict.  @source handbook/decision.md 2 */
export const guardsOf = (grounds: Grounds): readonly Guard[] => {
  const { input, evidence } = grounds;
  const { trust, doubts = [], use } = input;
  const { suspended, scores, counted, need, needRows, needScores } = evidence;
  const alone = placesIn(scores, "developing").filter((place) =>
    scores[place].linesFor.every((line) => line === "cranking"),
  );
  const ids = suspended.map(({ id }) => id);
  const oneLine = need.repair === "rebuild" && linesForRebuild(needScores, needRows) === "one-only";
  const leakDown = disagreement(counted);
  return [
    ...damageFirst(grounds),
    ...(trust === "void" ? [{ code: "test-void" } as const] : []),
    ...(trust === "doubtful" ? [{ code: "test-doubtful" } as const] : []),
    ...(alone.length > 0 ? [{ code: "cranking-alone", places: alone } as const] : []),
    ...(oneLine ? [{ code: "one-line-only" } as const] : []),
    ...doubts.map((code) =>
      code === "one-odd-test" || code === "one-method-only" ? { code } : { code, suspended: ids },
    ),
    ...(leakDown === undefined ? [] : [{ code: "instruments-disagree", leakDown } as const]),
    ...(use === "safety" ? [{ code: "safety" } as const] : []),
  ];
};

const damageFirst = (grounds: Grounds): readonly Guard[] => {
  if (grounds.evidence.need.repair !== undefined) return [];
  if (isSourceAsked(grounds)) return [{ code: "source-unknown" }];
  return isRenewedScored(grounds) ? [{ code: "scored-bore" }] : [];
};

/** Guards that a repair brings: measuring before a re-ring, another engine beside a dear one.
 *  @source handbook/decision.md 2, G6 and G9 */
export const guardsOfRepair = (
  repair: Repair,
  { input, evidence, comparison, beside, due }: Grounds,
): readonly Guard[] => {
  const rows = new Set(evidence.counted.map(({ id }) => id));
  const open = measured.filter(({ ids }) => !ids.some((id) => rows.has(id))).map(({ part }) => part);
  const price = [due, beside, comparison].find((one) => one?.act === repair)?.price;
  const share = price === undefined || !input.prices?.replacement ? 0 : price / input.prices.replacement;
  return [
    ...(repair === "reRing" ? [{ code: "subject-to-measuring", open } as const] : []),
    ...(share > replacementShare ? [{ code: "replacement", share } as const] : []),
  ];
};

/** Beyond its limit a part is measured too. */
const measured = [
  { ids: ["J1", "J2"], part: "bore" },
  { ids: ["J3", "J4"], part: "ring-gap" },
  { ids: ["J5", "J6"], part: "bearings" },
] as const;
