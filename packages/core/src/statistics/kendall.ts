// Kendall's test of order (Mann-Kendall when x is time): do the readings tend to rise or fall, whatever the shape?

import { at, checkPairs } from "./guard.ts";
import { kendallUpperTail, kendallVariance, normalUpperTail } from "./kendall-null.ts";

export interface Kendall {
  /** Pairs in the same order less pairs in opposite order. */
  readonly s: number;
  /** Variance of S when order means nothing. */
  readonly variance: number;
  /** P(S <= s): small when y falls with x. */
  readonly lowerTail: number;
  readonly twoSided: number;
}

/** S, its variance with ties, and its tails. Exact up to 40 points when at most one of x and y holds equal values,
 *  else normal with continuity correction. Round readings to their resolution first, or ties go unseen.
 *  @throws RangeError below two points, on unequal lengths or a value that is not finite */
export const kendall = (x: readonly number[], y: readonly number[]): Kendall => {
  checkPairs("kendall", x, y, 2);
  const s = concordance(x, y);
  const xGroups = runs(x);
  const yGroups = runs(y);
  const variance = kendallVariance(x.length, xGroups, yGroups);
  const upper =
    hasTies(xGroups) && hasTies(yGroups)
      ? (value: number): number => normalUpperTail(value, variance)
      : kendallUpperTail(hasTies(xGroups) ? xGroups : yGroups);
  // S is symmetric about 0
  return { s, variance, lowerTail: upper(-s), twoSided: s === 0 ? 1 : Math.min(1, 2 * upper(Math.abs(s))) };
};

/** Sizes of the runs of equal values, 1 for a value of its own. */
export const runs = (xs: readonly number[]): readonly number[] => {
  const counts = new Map<number, number>();
  for (const x of xs) counts.set(x, (counts.get(x) ?? 0) + 1);
  return [...counts.values()];
};

const hasTies = (groups: readonly number[]): boolean => groups.some((size) => size > 1);

const concordance = (x: readonly number[], y: readonly number[]): number => {
  let s = 0;
  for (let k = 1; k < x.length; k += 1)
    for (let j = 0; j < k; j += 1) s += Math.sign(at(x, k) - at(x, j)) * Math.sign(at(y, k) - at(y, j));
  return s;
};
