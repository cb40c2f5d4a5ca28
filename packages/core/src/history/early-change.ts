// The change test over the tests of one epoch: the last test against all before, and the alarm of its first tests.

import { at } from "./at.ts";
import { changeTest, type Change, type Cleared, type Direction } from "./change-test.ts";

export interface EarlyChange {
  readonly direction: Direction;
  /** Row of the first of the two tests that showed it. */
  readonly row: number;
  readonly change: number;
}

export interface EpochChanges {
  /** By cylinder; undefined where it was not read in the last test or never before. */
  readonly last: readonly (Change | undefined)[];
  readonly early: readonly (EarlyChange | undefined)[];
}

/** Early change: flagged at test t and again at test t+1 against the same earlier tests 1 ... t-1, for t = 2 and 3 only.
 *  @param rows - rows of the tests of the epoch, in order  @param cell - s0^2  @source handbook/statistics.md L.2 */
export const changesOf = (cleared: Cleared, rows: readonly number[], cell: number): EpochChanges => {
  const run = (now: number, earlier: number, direction: Direction): readonly (Change | undefined)[] =>
    changeTest(cleared, { now: at(rows, now), earlier: rows.slice(0, earlier) }, { cell, direction });
  const early = new Array<EarlyChange | undefined>(cleared.cylinders).fill(undefined);
  for (const direction of ["up", "down"] as const)
    for (const second of [2, 1]) {
      if (second + 1 >= rows.length) continue;
      const first = run(second, second, direction);
      const again = run(second + 1, second, direction);
      first.forEach((one, i) => {
        const two = again[i];
        if (one?.flagged === true && two?.flagged === true)
          early[i] = { direction, row: at(rows, second), change: (one.change + two.change) / 2 };
      });
    }
  const last = rows.length < 2 ? [] : run(rows.length - 1, rows.length - 1, "down");
  return { last: early.map((_, i) => last[i]), early };
};
