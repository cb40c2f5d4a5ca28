// Did what moved in the first tests read as before again, and for good?

import { mean, median, studentQuantile, varianceOfMedian } from "../statistics/index.ts";
import { at } from "./at.ts";
import type { Series } from "./series.ts";

/** Part of the move that a test may still be off by to be no longer moved; judgement. */
const left = 1 / 2;

/** The same for a test that is told by itself, as back in between or moved again: nearer than that; judgement. */
const clear = 1 / 3;

/** What chance explains, in standard deviations: one in twenty is further off, on the degrees of freedom of the change test. */
export const byChance = (): number => studentQuantile(0.95, 8);

export interface Moved {
  readonly direction: "down" | "up";
  /** Place of the first test that showed it. */
  readonly test: number;
  readonly change: number;
}

interface Return {
  /** Place of the first test from which it stayed as before; absent where it did not, or reads otherwise now. */
  readonly back?: number;
  /** Place of the first test that was moved again, after one as before. */
  readonly again?: number;
  /** By contrast of the series: whether it was moved in that test. */
  readonly moved: readonly boolean[];
}

/** Back is what stays nearer to where it began than to where it went, and whose middle lies no further off than
 *  t(.95; 8) s0 sqrt((1 + v_others)(v_k + 1/k0)), k tests since it is back, k0 before it moved.
 *  @param cell - s0^2 of one cell */
export const returnOf = (series: Series, { direction, test, change }: Moved, cell: number): Return => {
  const { tests, contrasts } = series;
  const first = tests.indexOf(test);
  if (first < 1) return { moved: contrasts.map(() => false) };
  const sign = direction === "down" ? 1 : -1;
  const start = mean(contrasts.slice(0, first));
  const off = contrasts.map((contrast) => sign * (start - contrast));
  const within = (from: number): number =>
    offByRepeats(series, { cell, now: contrasts.length - from, before: first });
  const depth = Math.abs(change);
  const isMoved = off.map((one, i) => i >= first && (i < first + 2 || one >= depth * left));
  const from = isMoved.lastIndexOf(true) + 1;
  const least = Math.min(within(contrasts.length - 1), depth * clear);
  const before = off.findIndex((one, i) => i >= first + 2 && one <= least);
  const again = before === -1 ? -1 : off.findIndex((one, i) => i > before && one >= depth * (1 - clear));
  const isBack = from < tests.length && median(off.slice(from)) <= within(from);
  return {
    ...(isBack ? { back: at(tests, from) } : {}),
    ...(again === -1 ? {} : { again: at(tests, again) }),
    moved: isMoved,
  };
};

/** How far the middle of `now` contrasts lies from the mean of `before` others by what repeats explain, ln units. */
export const offByRepeats = (
  { others }: Series,
  { cell, now, before }: { readonly cell: number; readonly now: number; readonly before: number },
): number =>
  byChance() *
  Math.sqrt(
    cell * (1 + varianceOfMedian(Math.max(1, others.at(-1) ?? 1))) * (varianceOfMedian(now) + 1 / before),
  );
