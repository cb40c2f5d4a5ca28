// Which feeler leaf, tried next, would turn "too close to tell" into a verdict.

import { type Length, length, toSi } from "../../quantity/index.ts";
import type { ClearanceVerdictCode } from "../teardown.ts";
import type { LengthUnit, LimitPair } from "../../record/index.ts";
import { type Leaves, insideByFeeler, verdictOf } from "./conforming.ts";

/** Leaves come so finely: 0.01 mm, or 0.0005 in. */
export const leafStep = (unit: LengthUnit): Length =>
  unit === "in" || unit === "thou" ? length(toSi(0.0005, "in")) : length(toSi(0.01, "mm"));

export interface SettlingLeaf {
  readonly leaf: Length;
  readonly verdict: Exclude<ClearanceVerdictCode, "too-close-to-tell">;
}

/** The nearest leaf to the limit that settles it when it does not go, and the one that settles it when it goes. A leaf of
 *  exactly the limit never settles: leaf and feel blur it, and 8 in 100 stay on the other side. */
export const settlingLeaves = (
  between: Leaves,
  limits: LimitPair,
  { step, blur }: { readonly step: Length; readonly blur: Length },
): { readonly stops?: SettlingLeaf; readonly goes?: SettlingLeaf } => {
  const first = Math.floor(between.low / step + 1e-6) + 1;
  const count = Math.max(0, Math.ceil(between.high / step - 1e-6) - first);
  const leaves = Array.from({ length: count }, (_, i) => length((first + i) * step));
  const settled = (low: Length, high: Length, leaf: Length): readonly SettlingLeaf[] => {
    const verdict = verdictOf(insideByFeeler({ low, high }, limits, blur));
    return verdict === "too-close-to-tell" ? [] : [{ leaf, verdict }];
  };
  const stops = leaves.flatMap((leaf) => settled(between.low, leaf, leaf)).at(-1);
  const goes = leaves.flatMap((leaf) => settled(leaf, between.high, leaf)).at(0);
  return { ...(stops === undefined ? {} : { stops }), ...(goes === undefined ? {} : { goes }) };
};
