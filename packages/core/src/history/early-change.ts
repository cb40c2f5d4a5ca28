// The change test over the tests of one epoch: the last test against all before, and the alarm of its first tests.

import { at } from "./at.ts";
import { anyFlagged, changeTest, type Change, type Cleared, type Direction } from "./change-test.ts";

export interface EarlyChange {
  readonly direction: Direction;
  /** Row of the first of the two tests that showed it. */
  readonly row: number;
  readonly change: number;
}

/** Early change: flagged at test t and again at test t+1 against the same earlier tests 1 ... t-1, for t = 2 and 3 only. By
 *  cylinder.
 *  @param rows - rows of the tests of the epoch, in order  @param cell - s0^2  @source handbook/statistics.md L.2 */
export const earlyChanges = (
  cleared: Cleared,
  rows: readonly number[],
  cell: number,
): readonly (EarlyChange | undefined)[] => {
  const early = new Array<EarlyChange | undefined>(cleared.cylinders).fill(undefined);
  for (const direction of ["up", "down"] as const)
    for (const second of [2, 1]) {
      if (second + 1 >= rows.length) continue;
      const earlier = rows.slice(0, second);
      const ofTest = (now: number) => ({ now: at(rows, now), earlier });
      const by = { cell, direction };
      // few engines have a flag so soon, and without one the next test cannot repeat it
      if (!anyFlagged(cleared, ofTest(second), by)) continue;
      const first = changeTest(cleared, ofTest(second), by);
      const again = changeTest(cleared, ofTest(second + 1), by);
      first.forEach((one, i) => {
        const two = again[i];
        if (one?.flagged === true && two?.flagged === true)
          early[i] = { direction, row: at(rows, second), change: (one.change + two.change) / 2 };
      });
    }
  return early;
};

/** The last test against all before it. By cylinder; undefined where it was not read in the last test or never before. */
export const lastChanges = (
  cleared: Cleared,
  rows: readonly number[],
  cell: number,
): readonly (Change | undefined)[] => {
  const now = rows.at(-1);
  if (now === undefined || rows.length < 2) return [];
  return changeTest(cleared, { now, earlier: rows.slice(0, -1) }, { cell, direction: "down" });
};
