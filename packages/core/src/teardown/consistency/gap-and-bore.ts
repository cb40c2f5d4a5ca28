// One ring at two depths of one bore is a bore gauge of its own: the gaps must differ as the bore does.

import type { TeardownConflict, TeardownItem } from "../teardown.ts";
import { lengthText } from "../length-text.ts";
import type { Estimate } from "./two-ways.ts";

export interface GapAndBore {
  /** gap_a − gap_b, and what the bores make of it. [m] */
  readonly byGap: number;
  readonly byBore: number;
  /** 2 · √(u_gap² + π² u_D²), u of the differences. [m] */
  readonly allowed: number;
}

/** gap_a − gap_b = π (D_a − D_b), the ring following the mean of the two directions at each depth.
 *  @param gaps - of one ring at depths a and b  @param bores - mean diameters there
 *  @source geometry of a circle; handbook/teardown.md 4.2 */
export const compareGapAndBore = (
  gaps: readonly [Estimate, Estimate],
  bores: readonly [Estimate, Estimate],
): GapAndBore => ({
  byGap: gaps[0].value - gaps[1].value,
  byBore: Math.PI * (bores[0].value - bores[1].value),
  allowed:
    2 *
    Math.hypot(
      Math.hypot(gaps[0].uncertainty, gaps[1].uncertainty),
      Math.PI * Math.hypot(bores[0].uncertainty, bores[1].uncertainty),
    ),
});

const depths = ["top", "middle", "bottom"] as const;
const pairs = [
  ["top", "bottom"],
  ["top", "middle"],
  ["middle", "bottom"],
] as const;

/** Each ring whose gap was taken at two depths where the bore was measured both ways; the widest pair that is there. */
export const gapConflicts = (items: readonly TeardownItem[]): readonly TeardownConflict[] => {
  const gaps = items.filter(({ part, quantity }) => part === "ring" && quantity === "end gap");
  const rings = [...new Set(gaps.map(({ label, at, state }) => `${label ?? ""}|${ringOf(at)}|${state}`))];
  return rings.flatMap((key) => {
    const own = gaps.filter(({ label, at, state }) => `${label ?? ""}|${ringOf(at)}|${state}` === key);
    return ofOneRing(own, items);
  });
};

const ofOneRing = (
  gaps: readonly TeardownItem[],
  items: readonly TeardownItem[],
): readonly TeardownConflict[] => {
  const [first] = gaps;
  if (first === undefined) return [];
  const gapAt = (depth: string): TeardownItem | undefined => gaps.find(({ at }) => depthOf(at) === depth);
  for (const [a, b] of pairs) {
    const [gapA, gapB] = [gapAt(a), gapAt(b)];
    const [boreA, boreB] = [a, b].map((depth) => meanBore(items, first.label, depth));
    if (gapA === undefined || gapB === undefined || boreA === undefined || boreB === undefined) continue;
    const { byGap, byBore, allowed } = compareGapAndBore([gapA, gapB], [boreA, boreB]);
    if (Math.abs(byGap - byBore) <= allowed) return [];
    const { unit, label } = first;
    return [
      {
        code: "gap-and-bore",
        part: "ring",
        ...(label === undefined ? {} : { label }),
        ...(first.at === undefined ? {} : { at: ringOf(first.at) }),
        quantity: "end gap",
        text: `ring ${ringOf(first.at)} of cylinder ${label ?? ""}: its gap is ${change(byGap, unit)} at the ${a} than at the ${b}, by the bore it must be ${change(byBore, unit)}`,
        mend: "square the ring with a piston crown at both depths and take the gaps again, then the bore at the same depths",
        weight: "doubtful",
      },
    ];
  }
  return [];
};

const change = (by: number, unit: TeardownItem["unit"]): string =>
  `${lengthText(Math.abs(by), unit)} ${by < 0 ? "smaller" : "larger"}`;

const ringOf = (at = ""): string => at.split("/")[0] ?? "";
const depthOf = (at = ""): string | undefined => depths.find((depth) => at.split("/")[1] === depth);

const meanBore = (
  items: readonly TeardownItem[],
  label: string | undefined,
  depth: string,
): Estimate | undefined => {
  const both = items.filter(
    (one) =>
      one.part === "bore" &&
      one.quantity === "diameter" &&
      one.label === label &&
      (one.at === `${depth}/thrust` || one.at === `${depth}/axial`),
  );
  const [one, other] = both;
  if (one === undefined || other === undefined) return undefined;
  return {
    value: (one.value + other.value) / 2,
    uncertainty: Math.hypot(one.uncertainty, other.uncertainty) / 2,
  };
};
