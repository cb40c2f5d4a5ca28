// The readings as a table, tests by columns. A column is one cylinder in one epoch: an epoch that a service opens gives
// the cylinder a new column, so untouched cylinders stay one column across it and link the epochs.

import { at } from "./at.ts";
import type { MergedTest } from "./merge-tests.ts";

export interface Column {
  readonly cylinder: number;
  /** First test of the epoch and the one after its last, by place in the list of merged tests. */
  readonly from: number;
  readonly to: number;
  /** Place in the list of works of the one that opened it; absent for the first. */
  readonly opened?: number;
}

export interface ReadingTable {
  readonly rows: number;
  readonly columns: number;
  /** Row after row; NaN where the column was not read. */
  readonly ln: Float64Array;
}

/** The table of some tests (by place) and some columns. */
export const readingTable = (
  tests: readonly MergedTest[],
  rows: readonly number[],
  columns: readonly Column[],
): ReadingTable => {
  const ln = new Float64Array(rows.length * columns.length).fill(NaN);
  rows.forEach((row, r) => {
    const { cells } = at(tests, row);
    columns.forEach(({ cylinder, from, to }, c) => {
      const cell = at(cells, cylinder);
      if (row >= from && row < to && cell.kind === "read") ln[r * columns.length + c] = cell.ln;
    });
  });
  return { rows: rows.length, columns: columns.length, ln };
};

/** Mean number of readings behind a cell, over some tests; 1 where nothing was read. */
export const meanRepeats = (tests: readonly Pick<MergedTest, "cells">[]): number => {
  let cells = 0;
  let readings = 0;
  for (const test of tests)
    for (const cell of test.cells)
      if (cell.kind === "read") {
        cells += 1;
        readings += cell.repeats;
      }
  return cells === 0 ? 1 : readings / cells;
};
