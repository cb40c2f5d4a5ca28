// With two cylinders every contrast is the mirror image of the other: what the levels of both say of which one moved.

import { mean, median } from "../statistics/index.ts";
import { at } from "./at.ts";
import type { Wide } from "./engine-wide.ts";
import type { Mirrored } from "./result.ts";
import { byChance, type Moved, offByRepeats, returnOf } from "./return-of.ts";
import type { Series } from "./series.ts";

interface OneOfTwo {
  readonly series: Series;
  readonly early: Moved | undefined;
}

/** Whether the last readings of one of two lie no lower than where it began: if it seems to have fallen, it is because the
 *  other was low for a while, or it was high itself, and that is over.
 *  @param last - how many of them, of which the highest counts  @param cell - s0^2 of one cell */
export const onlyReturns = (
  { series, early }: OneOfTwo,
  { last, cell }: { readonly last: 1 | 2; readonly cell: number },
): boolean => {
  const { contrasts, tests } = series;
  const first = early?.direction === "up" ? tests.indexOf(early.test) : 0;
  if (last === 2 && first < 1) return false;
  const earlier = contrasts.slice(0, first < 1 ? -last : first);
  if (earlier.length === 0) return false;
  const start = first < 1 ? median(earlier) : mean(earlier);
  const highest = Math.max(...contrasts.slice(-last));
  return start - highest <= offByRepeats(series, { cell, now: 1, before: earlier.length });
};

/** Named where the engine-wide channel does not rise; of one that came back, where the other stayed at its own level
 *  a_t + r/2 the while and it did not.  @param cell - s0^2 of one cell  @source handbook/statistics.md L.1 */
export const whichOfTwo = ({ series, early }: OneOfTwo, wide: Wide, cell: number): Mirrored => {
  const { common, effects, variance } = wide;
  const found = early === undefined ? undefined : returnOf(series, early, cell);
  if (early === undefined || found?.back === undefined)
    return common.count >= 4 && common.word !== "rising" ? "named" : "either";
  const moves = (["fell", "other"] as const).map((who) => {
    const isOwn = (who === "fell") === (early.direction === "down");
    const levels = series.tests.map(
      (test, k) => (effects[test] ?? NaN) + ((isOwn ? 1 : -1) * at(series.contrasts, k)) / 2,
    );
    const [low, rest] = [true, false].map((moved) => levels.filter((_, k) => found.moved[k] === moved));
    return mean(low ?? []) - mean(rest ?? []);
  });
  const lows = found.moved.filter((moved) => moved).length;
  const chance = byChance() * Math.sqrt(variance * (1 / lows + 1 / (series.tests.length - lows)));
  const [fell = NaN, other = NaN] = moves;
  return fell < -chance && Math.abs(other) <= chance ? "named" : "either";
};
