// The change test for every cylinder, in the epoch it is in.

import { at } from "./at.ts";
import type { Cleared } from "./change-test.ts";
import { changesOf } from "./early-change.ts";
import type { Own } from "./judge-cylinder.ts";
import type { RelativeChannel } from "./relative-channel.ts";

/** Cylinders are compared over the tests of the epoch in question; one whose own epoch began later is left out there.
 *  Tests with one cylinder read say nothing here.
 *  @param current - place of each cylinder's current column  @param cell - s0^2 of one cell */
export const changesByCylinder = (
  channel: RelativeChannel,
  current: readonly number[],
  cell: number,
): readonly Pick<Own, "change" | "early">[] => {
  const starts = current.map((column) => at(channel.columns, column).from);
  const byStart = new Map(
    [...new Set(starts)].map((start) => [start, changesSince(channel, current, { start, cell })]),
  );
  return starts.map((start, i) => byStart.get(start)?.[i] ?? { change: undefined, early: undefined });
};

const changesSince = (
  channel: RelativeChannel,
  current: readonly number[],
  { start, cell }: { readonly start: number; readonly cell: number },
): readonly Pick<Own, "change" | "early">[] => {
  const { rows, table, polish } = channel;
  const values = new Float64Array(rows.length * current.length).fill(NaN);
  const used: number[] = [];
  rows.forEach((test, row) => {
    if (test < start) return;
    let read = 0;
    current.forEach((column, i) => {
      if (at(channel.columns, column).from > start) return;
      const value = at(table.ln, row * table.columns + column) - at(polish.effects, row);
      values[row * current.length + i] = value;
      if (!Number.isNaN(value)) read += 1;
    });
    if (read > 1) used.push(row);
  });
  const cleared: Cleared = { cylinders: current.length, values };
  const { last, early } = changesOf(cleared, used, cell);
  return current.map((_, i) => {
    const [change, found] = [last[i], early[i]];
    return {
      change: change === undefined ? undefined : { ...change, test: at(rows, at(used, used.length - 1)) },
      early: found === undefined ? undefined : { ...found, test: at(rows, found.row) },
    };
  });
};
