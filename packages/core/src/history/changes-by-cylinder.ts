// The change test for every cylinder, in the epoch it is in.

import { at } from "./at.ts";
import type { Cleared } from "./change-test.ts";
import { earlyChanges, lastChanges } from "./early-change.ts";
import type { Own } from "./judge-cylinder.ts";
import type { RelativeChannel } from "./relative-channel.ts";

/** What a cylinder's changes are found in. */
interface Epoch {
  /** Place of each cylinder's current column. */
  readonly current: readonly number[];
  /** s0^2 of one cell. */
  readonly cell: number;
  /** First test of the epoch. */
  readonly start: number;
}

type Changes = Pick<Own, "change" | "early">;

/** By cylinder, the alarm of its first tests, and the last test against all before.
 *  @param current - place of each cylinder's current column  @param cell - s0^2 of one cell */
export const changesByCylinder = (
  channel: RelativeChannel,
  current: readonly number[],
  cell: number,
): readonly Changes[] =>
  byEpoch(channel, current, (start): readonly Changes[] => {
    const epoch = { current, cell, start };
    const { cleared, used } = clearedSince(channel, epoch, Infinity);
    const last = lastChanges(cleared, used, cell);
    return earlyOf(channel, cleared, used, epoch).map(({ early }, i): Changes => {
      const change = last[i];
      return {
        early,
        change: change && { ...change, test: at(channel.rows, at(used, used.length - 1)) },
      };
    });
  });

/** The same without the last test: the alarm of the first tests looks at no more than four. */
export const earlyByCylinder = (
  channel: RelativeChannel,
  current: readonly number[],
  cell: number,
): readonly Pick<Own, "early">[] =>
  byEpoch(channel, current, (start) => {
    const epoch = { current, cell, start };
    const { cleared, used } = clearedSince(channel, epoch, 4);
    return earlyOf(channel, cleared, used, epoch);
  });

/** Cylinders are compared over the tests of the epoch in question; what cylinders of one epoch share is worked out once. */
const byEpoch = <T>(
  { columns }: RelativeChannel,
  current: readonly number[],
  ofEpoch: (start: number) => readonly T[],
): readonly T[] => {
  const starts = current.map((column) => at(columns, column).from);
  const byStart = new Map([...new Set(starts)].map((start) => [start, ofEpoch(start)]));
  return starts.map((start, i) => at(byStart.get(start) ?? [], i));
};

const earlyOf = (
  { rows }: RelativeChannel,
  cleared: Cleared,
  used: readonly number[],
  { cell }: Epoch,
): readonly Pick<Own, "early">[] =>
  earlyChanges(cleared, used, cell).map((early) => ({
    early: early && { ...early, test: at(rows, early.row) },
  }));

/** The readings of an epoch less the effects of their tests, and the rows that count: a test with one cylinder read says
 *  nothing here. A cylinder whose own epoch began later is left out.  @param most - rows to look for */
const clearedSince = (
  { rows, columns, table, polish }: RelativeChannel,
  { current, start }: Epoch,
  most: number,
): { readonly cleared: Cleared; readonly used: readonly number[] } => {
  const values = new Float64Array(rows.length * current.length).fill(NaN);
  const used: number[] = [];
  for (let row = 0; row < rows.length && used.length < most; row += 1) {
    if (at(rows, row) < start) continue;
    let read = 0;
    current.forEach((column, i) => {
      if (at(columns, column).from > start) return;
      const value = at(table.ln, row * table.columns + column) - at(polish.effects, row);
      values[row * current.length + i] = value;
      if (!Number.isNaN(value)) read += 1;
    });
    if (read > 1) used.push(row);
  }
  return { cleared: { cylinders: current.length, values }, used };
};
