// Table, polish and contrasts of some tests and columns, and the series of each column.

import { at } from "./at.ts";
import { looContrasts } from "./contrasts.ts";
import { medianPolish, type Polish } from "./median-polish.ts";
import type { MergedTest } from "./merge-tests.ts";
import { readingTable, type Column, type ReadingTable } from "./reading-table.ts";
import { placesOf, type Series } from "./series.ts";

export interface RelativeChannel {
  /** Places of the rows in the list of merged tests. */
  readonly rows: readonly number[];
  readonly columns: readonly Column[];
  readonly table: ReadingTable;
  readonly polish: Polish;
  readonly contrasts: Float64Array;
}

export const relativeChannel = (
  tests: readonly MergedTest[],
  rows: readonly number[],
  columns: readonly Column[],
): RelativeChannel => {
  const table = readingTable(tests, rows, columns);
  const polish = medianPolish(table);
  return { rows, columns, table, polish, contrasts: looContrasts(table, polish.levels) };
};

/** ln of each reading's ratio to the median of the others, for limits of that form: nothing is subtracted first. */
export const plainContrasts = (table: ReadingTable): Float64Array =>
  looContrasts(table, new Float64Array(table.columns));

/** The contrasts that one column has, in order of the tests.
 *  @param x - place on the axis of every merged test */
export const seriesOf = (
  channel: RelativeChannel,
  contrasts: Float64Array,
  { column, x }: { readonly column: number; readonly x: readonly number[] },
): Series => eachSeries(channel, contrasts, x)(column);

/** The same for any column by place: what the columns share is counted once. */
export const eachSeries = (
  { rows, columns }: RelativeChannel,
  contrasts: Float64Array,
  x: readonly number[],
): ((column: number) => Series) => {
  const width = columns.length;
  const present = rows.map((_, r) => countOf(contrasts.subarray(r * width, (r + 1) * width)));
  return (column) => {
    const read = placesOf(rows, (_, r) => !Number.isNaN(at(contrasts, r * width + column)));
    const tests = read.map((r) => at(rows, r));
    return {
      tests,
      x: tests.map((row) => at(x, row)),
      contrasts: read.map((r) => at(contrasts, r * width + column)),
      others: read.map((r) => at(present, r) - 1),
    };
  };
};

const countOf = (row: Float64Array): number => {
  let count = 0;
  for (const contrast of row) if (!Number.isNaN(contrast)) count += 1;
  return count;
};
