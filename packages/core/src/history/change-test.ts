// Has a cylinder dropped against the others since earlier tests? Works from the second test on; one flag asks for a
// repeat, two running at the start of an epoch are an alarm.

import { type CylinderVerdict, forwardTest, type ForwardReading } from "../spread/index.ts";
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

interface Rows {
  readonly now: number;
  readonly earlier: readonly number[];
}

interface By {
  /** s0^2 of one cell. */
  readonly cell: number;
  readonly direction: Direction;
}

/** The forward test on d_i = y_i - mean of the cylinder's earlier y, with sigma0^2 = s0^2 (1 + 1/k), k = mean number of
 *  earlier readings, and 8 degrees of freedom. Taking test effects off first changes nothing where every cylinder was
 *  read in the same tests, and keeps a missed reading from looking like a change.
 *  @param rows - of the test in question and of the earlier ones
 *  @returns one entry a cylinder, undefined where it was not read now or not before
 *  @source handbook/statistics.md L.2 */
export const changeTest = (cleared: Cleared, rows: Rows, by: By): readonly (Change | undefined)[] => {
  const { changes, verdicts } = changesSince(cleared, rows, by);
  return changes.map((d, i) => {
    const verdict = verdicts[i];
    if (d === undefined || verdict?.kind !== "read") return undefined;
    const others = changes.filter((other, j): other is number => other !== undefined && j !== i);
    const change: Change = { flagged: verdict.flagged, change: d - median(others) };
    return verdict.t === undefined ? change : { ...change, t: verdict.t };
  });
};

/** Whether it flags any cylinder, and nothing else of it. */
export const anyFlagged = (cleared: Cleared, rows: Rows, by: By): boolean =>
  changesSince(cleared, rows, by).verdicts.some((verdict) => verdict.kind === "read" && verdict.flagged);

const changesSince = (
  { cylinders, values }: Cleared,
  { now, earlier }: Rows,
  { cell, direction }: By,
): {
  readonly changes: readonly (number | undefined)[];
  /** None where there are fewer than two changes. */
  readonly verdicts: readonly CylinderVerdict[];
} => {
  const value = (row: number, i: number): number => at(values, row * cylinders + i);
  const counts: number[] = [];
  const changes = Array.from({ length: cylinders }, (_, i) => {
    const before: number[] = [];
    for (const row of earlier) {
      const y = value(row, i);
      if (!Number.isNaN(y)) before.push(y);
    }
    const y = value(now, i);
    if (Number.isNaN(y) || before.length === 0) return undefined;
    counts.push(before.length);
    return Math.round((y - mean(before)) * 1e12) / 1e12;
  });
  if (counts.length < 2) return { changes, verdicts: [] };
  const sign = direction === "down" ? 1 : -1;
  const readings = changes.map((d): ForwardReading =>
    d === undefined ? { kind: "not-read" } : { kind: "read", ln: sign * d, repeats: 1 },
  );
  const sigma = Math.sqrt(cell * (1 + 1 / mean(counts)));
  const { cylinders: verdicts } = forwardTest(readings, { prior: { sigma, df: 8 } });
  return { changes, verdicts };
};
