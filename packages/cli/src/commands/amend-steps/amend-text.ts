// New texts for cells of a table: exactly those cells change, every other character stays as it was.

import { type TableRow, cellText } from "@sealtrend/core/parts";
import type { RawTests } from "./amend-rows.ts";

/** One cell to write. */
export interface CellEdit {
  readonly row: TableRow;
  readonly column: string;
  /** The value with a decimal point, before the dialect of the file; "" empties the cell. */
  readonly to: string;
}

/** One cell as it was and as it is, without quotes. */
export interface EditedCell extends CellEdit {
  readonly was: string;
  readonly is: string;
  /** Where it stands in its line now, from 1. */
  readonly at: number;
}

export interface Edited {
  readonly text: string;
  /** Only cells that really changed. */
  readonly cells: readonly EditedCell[];
}

/** @param edits - at most one a cell, of columns that the table has */
export const editCells = (tests: RawTests, edits: readonly CellEdit[]): Edited => {
  const rows = [...new Set(edits.map(({ row }) => row))].sort((a, b) => b.line - a.line);
  const cells: EditedCell[] = [];
  let { text } = tests;
  for (const row of rows) {
    const done = editRow(
      tests,
      row,
      edits.filter((edit) => edit.row === row),
    );
    const start = lineStart(tests.text, row.line);
    if (!tests.text.startsWith(row.raw, start))
      throw new TypeError(`editCells: line ${String(row.line)} is not where it was read`);
    text = text.slice(0, start) + done.raw + text.slice(start + row.raw.length);
    cells.unshift(...done.cells);
  }
  return { text, cells };
};

const editRow = (
  { table, dialect }: RawTests,
  row: TableRow,
  edits: readonly CellEdit[],
): { readonly raw: string; readonly cells: readonly EditedCell[] } => {
  const { cells } = row;
  const raws = cells.map(({ column }, i) => {
    const next = cells[i + 1];
    return row.raw.slice(column - 1, next === undefined ? undefined : next.column - 2);
  });
  const changed = edits.flatMap((edit) => {
    const index = table.header.findIndex(({ name }) => name === edit.column);
    if (index < 0) throw new RangeError(`editCells: the file has no column ${edit.column}`);
    while (raws.length <= index) raws.push("");
    const before = raws[index] ?? "";
    const after = recast(before, edit.to, dialect);
    const was = cells[index]?.text.trim() ?? "";
    const is = bare(after.trim());
    if (is === was) return [];
    raws[index] = after;
    return [{ edit, index, was, is }];
  });
  const at = (index: number): number =>
    raws.slice(0, index).reduce((sum, raw) => sum + raw.length + table.delimiter.length, 1);
  return {
    raw: changed.length === 0 ? row.raw : raws.join(table.delimiter),
    cells: changed.map(({ edit, index, was, is }) => ({ ...edit, was, is, at: at(index) })),
  };
};

/** A new value in the clothes of the old one: its blanks, its quotes, its decimal comma. */
const recast = (raw: string, value: string, dialect: RawTests["dialect"]): string => {
  const [, before = "", body = "", after = ""] = /^(\s*)(.*?)(\s*)$/s.exec(raw) ?? [];
  const comma = /^[>+-]?\d+,\d+\??$/.test(bare(body));
  const written = cellText(value, comma ? { ...dialect, decimalMark: "," } : dialect);
  const quoted = body.startsWith('"') && !written.startsWith('"') ? `"${written}"` : written;
  return before + quoted + after;
};

const bare = (cell: string): string =>
  cell.startsWith('"') ? cell.slice(1, -1).replaceAll('""', '"').trim() : cell;

/** Where a line begins. @param line - from 1 */
const lineStart = (text: string, line: number): number => {
  const ends = /\r\n|\r|\n/g;
  for (let n = 1; n < line; n += 1) ends.exec(text);
  return ends.lastIndex;
};
