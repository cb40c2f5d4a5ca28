// How far repeats of one reading scatter, pooled over the cells they were taken in.

import { chiSquareQuantile } from "./chi-square.ts";
import { mean } from "./describe.ts";
import { checkList } from "./guard.ts";

export interface PooledRepeatability {
  /** Pooled standard deviation of one reading; absent when no cell holds a repeat. */
  readonly s?: number;
  /** Degrees of freedom, sum (m - 1). */
  readonly df: number;
  /** Sum of squares about the cell means. */
  readonly sumOfSquares: number;
  /** The pooled figure blended with the usual one, which counts as six degrees of freedom. */
  readonly blended: number;
}

const usualDegrees = 6;

/** s^2 = sum over cells of sum (x - cell mean)^2 / sum (m - 1);  blended^2 = (6 usual^2 + SS)/(6 + df).
 *  @param cells - the repeats of one cylinder in one test, each in ln units; cells of one reading add nothing
 *  @param usual - the standard deviation believed before any repeat [ln units]; .015 for cranking compression and .007
 *  for leak-down are choices, no published figure was found
 *  @throws RangeError on an empty cell or a value that is not finite */
export const pooledRepeatability = (
  cells: readonly (readonly number[])[],
  usual = 0.015,
): PooledRepeatability => {
  let sumOfSquares = 0;
  let df = 0;
  for (const cell of cells) {
    checkList("pooledRepeatability: cell", cell, 1);
    const centre = mean(cell);
    sumOfSquares += cell.reduce((sum, x) => sum + (x - centre) ** 2, 0);
    df += cell.length - 1;
  }
  const blended = Math.sqrt((usualDegrees * usual * usual + sumOfSquares) / (usualDegrees + df));
  return { ...(df > 0 ? { s: Math.sqrt(sumOfSquares / df) } : {}), df, sumOfSquares, blended };
};

/** Fewer pairs than this lie all one way too easily: six do once in 32 times. A choice. */
const fewestPairs = 6;

/** Whether repeats move one way from the first to the last in every cell, as oil on the rings or a warming engine makes
 *  them: then they are no independent readings. Cells whose ends are equal say nothing.
 *  @param cells - in the order they were taken  @source handbook/statistics.md F */
export const repeatsTrend = (cells: readonly (readonly number[])[]): "up" | "down" | "none" => {
  const moved = cells
    .map((cell) => Math.sign((cell.at(-1) ?? 0) - (cell[0] ?? 0)))
    .filter((sign) => sign !== 0);
  if (moved.length < fewestPairs) return "none";
  if (moved.every((sign) => sign > 0)) return "up";
  return moved.every((sign) => sign < 0) ? "down" : "none";
};

/** 1.96 sqrt(2) s: two repeats lie further apart than this once in twenty times (the sense of ISO 5725, from memory).
 *  @param s - standard deviation of one reading */
export const repeatabilityLimit = (s: number): number => 1.96 * Math.SQRT2 * s;

/** Where the true standard deviation lies 19 times in 20, when `s` was found with `df` degrees of freedom:
 *  s sqrt(df/chi2(.975; df)) to s sqrt(df/chi2(.025; df)), for normal scatter.
 *  @throws RangeError unless s is finite and 0 or more, df finite and above 0 */
export const repeatabilityInterval = (
  s: number,
  df: number,
): { readonly low: number; readonly high: number } => {
  if (!(s >= 0 && s < Infinity)) throw new RangeError(`repeatabilityInterval: s is ${String(s)}`);
  const bound = (p: number): number => s * Math.sqrt(df / chiSquareQuantile(p, df));
  return { low: bound(0.975), high: bound(0.025) };
};
