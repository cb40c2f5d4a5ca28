// Kendall's S when order means nothing: how often chance alone gives each value.

import { at } from "./guard.ts";
import { keeping } from "./kept.ts";
import { normalCdf } from "./normal.ts";

/** Largest count for which the exact distribution is used. */
const exactUpTo = 40;

/** P(S >= s) where `groups` holds the sizes of the runs of equal values (1 for a value of its own) in one of the two
 *  variables, the other being without ties. Exact up to 40 values, beyond that normal with continuity correction.
 *  Exact: S = M - 2 inv with M = n(n-1)/2 - sum t(t-1)/2; the number of inversions inv among the orderings of a
 *  multiset has the generating function [n]_q! / prod [t]_q!. */
export const kendallUpperTail = (groups: readonly number[]): ((s: number) => number) => {
  const n = groups.reduce((sum, size) => sum + size, 0);
  if (n > exactUpTo) {
    const variance = kendallVariance(n, groups, []);
    return (s) => normalUpperTail(s, variance);
  }
  const pairs = groups.reduce((rest, size) => rest - size * (size - 1), n * (n - 1)) / 2;
  const cumulated = chances(groups);
  return (s) => {
    const most = Math.floor((pairs - s) / 2);
    if (most < 0) return 0;
    return most >= cumulated.length ? 1 : at(cumulated, most);
  };
};

/** P(S >= s) by the normal approximation, S moved half a step (1) towards 0. */
export const normalUpperTail = (s: number, variance: number): number =>
  variance > 0 ? normalCdf(-(s - 1) / Math.sqrt(variance)) : s <= 0 ? 1 : 0;

/** Variance of S when order means nothing, with runs of equal values in both variables (Kendall). */
export const kendallVariance = (
  n: number,
  xGroups: readonly number[],
  yGroups: readonly number[],
): number => {
  const sum = (groups: readonly number[], term: (t: number) => number): number =>
    groups.reduce((total, size) => total + term(size), 0);
  const first = (t: number): number => t * (t - 1) * (2 * t + 5);
  const pair = (t: number): number => t * (t - 1);
  const triple = (t: number): number => t * (t - 1) * (t - 2);
  const bothPairs = sum(xGroups, pair) * sum(yGroups, pair);
  const bothTriples = sum(xGroups, triple) * sum(yGroups, triple);
  return (
    (first(n) - sum(xGroups, first) - sum(yGroups, first)) / 18 +
    (bothPairs === 0 ? 0 : bothPairs / (2 * n * (n - 1))) +
    (bothTriples === 0 ? 0 : bothTriples / (9 * n * (n - 1) * (n - 2)))
  );
};

const tables = keeping<string, Float64Array>(64);

/** Chances of at most 0, 1, 2 ... inversions in a random ordering of a multiset. */
const chances = (groups: readonly number[]): Float64Array =>
  tables(groups.join(" "), () => cumulate(inversions(groups)));

/** Probabilities of 0, 1, 2 ... inversions in a random ordering of a multiset, whose groups are shuffled in one by one:
 *  t equal values among m others multiply the generating function by the product over j = 1 ... t of
 *  (1 - q^(m+j)) / (1 - q^j). */
const inversions = (groups: readonly number[]): Float64Array => {
  let placed = 0;
  let result = Float64Array.of(1);
  for (const size of groups) {
    for (let j = 1; j <= size; j += 1) result = shuffleIn(result, placed, j);
    placed += size;
  }
  return result;
};

/** One such factor. The lower half is built from its small end, which keeps the digits of the tail, and mirrored. */
const shuffleIn = (before: Float64Array, m: number, j: number): Float64Array<ArrayBuffer> => {
  const after = new Float64Array(before.length + m);
  const last = after.length - 1;
  const share = j / (m + j);
  for (let k = 0; 2 * k <= last; k += 1) {
    const one = share * ((before[k] ?? 0) - (before[k - m - j] ?? 0)) + (after[k - j] ?? 0);
    after[k] = one;
    after[last - k] = one;
  }
  return after;
};

const cumulate = (probabilities: Float64Array): Float64Array => {
  let sum = 0;
  return probabilities.map((p) => (sum += p));
};
