// Has a cylinder dropped against the others since earlier tests? Works from the second test on; one flag asks for a
// repeat, two running at the start of an epoch are an alarm.

import { forwardTest, type ForwardReading } from "../spread/index.ts";
import { mean, median } from "../statistics/index.ts";
import { at } from "./at.ts";

export type Direction = "down" | "up";

/** Logarithm of every reading less the effect of its test, tests by cylinders; NaN where there is none. */
export interface Cleared {
  readonly cylinders: number;
  readonly values: Float64Array;
}

export interface Change {
  /** Standard deviations below (or above) the others; absent for those the test takes as unchanged. */
  readonly t?: number;
  readonly flagged: boolean;
  /** Change against the middle of the others, ln units, negative for a fall. */
  readonly change: number;
}

/** The forward test on d_i = y_i - mean of the cylinder's earlier y, with sigma0^2 = s0^2 (1 + 1/k), k = mean number of
 *  earlier readings, and 8 degrees of freedom. Taking test effects off first changes nothing where every cylinder was
 *  read in the same tests, and keeps a missed reading from looking like a change.
 *  @param earlier - rows of the earlier tests  @param cell - s0^2 of one cell
 *  @returns one entry a cylinder, undefined where it was not read now or not before
 *  @source handbook/statistics.md L.2 */
export const changeTest = (
  { cylinders, values }: Cleared,
  rows: { readonly now: number; readonly earlier: readonly number[] },
  { cell, direction }: { readonly cell: number; readonly direction: Direction },
): readonly (Change | undefined)[] => {
  const value = (row: number, i: number): number => at(values, row * cylinders + i);
  const counts: number[] = [];
  const changes = Array.from({ length: cylinders }, (_, i) => {
    const before: number[] = [];
    for (const row of rows.earlier) {
      const y = value(row, i);
      if (!Number.isNaN(y)) before.push(y);
    }
    const now = value(rows.now, i);
    if (Number.isNaN(now) || before.length === 0) return undefined;
    counts.push(before.length);
    return Math.round((now - mean(before)) * 1e12) / 1e12;
  });
  if (counts.length < 2) return changes.map(() => undefined);
  const sign = direction === "down" ? 1 : -1;
  const readings = changes.map((d): ForwardReading =>
    d === undefined ? { kind: "not-read" } : { kind: "read", ln: sign * d, repeats: 1 },
  );
  const sigma = Math.sqrt(cell * (1 + 1 / mean(counts)));
  const { cylinders: verdicts } = forwardTest(readings, { prior: { sigma, df: 8 } });
  return changes.map((d, i) => {
    const verdict = at(verdicts, i);
    if (d === undefined || verdict.kind !== "read") return undefined;
    const others = changes.filter((other, j): other is number => other !== undefined && j !== i);
    const t = verdict.t === undefined ? {} : { t: verdict.t };
    return { ...t, flagged: verdict.flagged, change: d - median(others) };
  });
};
