// What stands in the way of a verdict: figures that contradict each other, and figures too near a limit.

import type { LimitVerdict, TeardownAssessment, TeardownConflict, TeardownItem } from "@sealtrend/core";
import { byKey } from "@sealtrend/core/parts";
import { chanceText } from "../show/cause-words.ts";
import { counting, rulingVerdict, standingOf } from "./teardown-standing.ts";
import { itemName } from "./teardown-words.ts";

/** What waits for the mend before what is only doubtful. */
export const conflictsInOrder = ({ conflicts }: TeardownAssessment): readonly TeardownConflict[] => [
  ...conflicts.filter(({ weight }) => weight === "conflict"),
  ...conflicts.filter(({ weight }) => weight === "doubtful"),
];

/** `main 4: 2.4982 in by thread …: measure both again`. */
export const conflictText = ({ text, mend }: TeardownConflict): string => `${text}: ${mend}`;

/** The nearest to a limit first: `pin 6 clearance: about 9 in 10 inside; to settle it: …`. */
export const settleTexts = (assessment: TeardownAssessment): readonly string[] => {
  const close = counting(assessment).flatMap((item) => {
    const verdict = rulingVerdict(item);
    const isClose = standingOf(item) === "close";
    // without a settlement the part is decided by another place, and nothing is asked of this one
    return verdict?.settlement === undefined || !isClose ? [] : [{ item, verdict }];
  });
  const ways = byKey(
    close,
    ({ item, verdict }) => `${item.part}|${item.quantity}|${verdict.settlement?.text ?? ""}`,
  );
  return [...ways.values()].map((alike) => settleText(alike));
};

/** Figures named that the same would settle. */
const named = 3;

const settleText = (
  alike: readonly { readonly item: TeardownItem; readonly verdict: LimitVerdict }[],
): string => {
  const names = alike
    .slice(0, named)
    .map(({ item, verdict }) => `${itemName(item)} (${chanceText(verdict.probability)} inside)`);
  const more = alike.length > named ? ` and ${String(alike.length - named)} more` : "";
  const text = alike[0]?.verdict.settlement?.text ?? "ask the shop to measure";
  const [never = ""] = alike.flatMap(({ verdict: { neverInside, neverBy } }) =>
    neverInside === true ? [`; ${neverBy ?? "this instrument"} can never show it inside`] : [],
  );
  return `${names.join(", ")}${more}: ${text}${never}`;
};
