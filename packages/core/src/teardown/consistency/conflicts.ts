// All that contradicts itself on one engine taken apart. Nothing is corrected: each conflict is told with what would mend it.

import { type Engine, isLimitFor } from "../../record/index.ts";
import type { PartCount, TeardownConflict, TeardownItem } from "../teardown.ts";
import { impossible, impossibleDerived } from "./cannot-be.ts";
import { gapConflicts } from "./gap-and-bore.ts";
import { misprintConflicts } from "./limit-misprint.ts";
import { countConflicts } from "./part-counts.ts";
import { apartFromSiblings, swappedDigits, wholeTurn } from "./siblings.ts";
import { threadRange } from "./thread-range.ts";
import { twoWayConflicts } from "./two-ways.ts";

interface Found {
  readonly items: readonly TeardownItem[];
  /** Each with what it was made of. */
  readonly derived: readonly { readonly item: TeardownItem; readonly sources: readonly TeardownItem[] }[];
  readonly counts: readonly PartCount[];
}

/** A figure is told of once: what cannot be at all before what is only off the others. */
export const conflictsOf = (
  { items, derived, counts }: Found,
  engine: Engine,
): readonly TeardownConflict[] => {
  const each = items.map(
    (item) =>
      impossible(item, engine) ?? threadRange(item) ?? wholeTurn(item, items) ?? swappedDigits(item, items),
  );
  const sound = items.filter((_, i) => each[i] === undefined);
  // what is made of a figure that cannot be tells nothing more
  const made = derived
    .filter(({ sources }) => sources.every((source) => sound.includes(source)))
    .map(({ item }) => item);
  return [
    ...each.filter((conflict) => conflict !== undefined),
    ...apartFromSiblings(sound),
    ...made.flatMap((item) => impossibleDerived(item) ?? []),
    ...twoWayConflicts(
      sound.filter(({ quantity }) => quantity === "thread clearance"),
      made.filter(({ quantity }) => quantity === "clearance"),
    ),
    ...gapConflicts(sound),
    ...misprintConflicts(engine.clearances),
    ...countConflicts(counts, engine),
  ];
};

/** Whether the verdicts of a figure wait until a conflict about it is cleared. */
export const waitsFor = (
  item: Pick<TeardownItem, "part" | "label" | "at" | "quantity">,
  conflicts: readonly TeardownConflict[],
): boolean =>
  conflicts.some(
    ({ weight, part, label, at, quantity }) =>
      weight === "conflict" &&
      part === item.part &&
      (label === undefined || label === item.label) &&
      (at === undefined || item.at === undefined || at === item.at) &&
      (quantity === undefined ||
        quantity === item.quantity ||
        isLimitFor({ part, quantity }, { part, quantity: item.quantity })),
  );
