// The way every small table is read: split, checked for its columns, then a row at a time; rows with a fault are left out.

import type { Problem } from "../problem/index.ts";
import { parseTable } from "./csv.ts";
import { type RowView, hasErrorSince, requireColumns, viewTable } from "./row-view.ts";

export interface TableKind<T> {
  readonly columns: readonly string[];
  /** Columns without which no row can be read. */
  readonly needed: readonly string[];
  /** One row; undefined where it cannot serve, after a fault was noted. @param delimiter - what stands between the cells */
  readonly read: (row: RowView, delimiter: string) => T | undefined;
}

/** The rows of a table that have no fault, in the order of the file, and all problems found. */
export const readRows = <T>(
  text: string,
  file: string,
  { columns, needed, read }: TableKind<T>,
): { readonly rows: T[]; readonly problems: readonly Problem[] } => {
  const { table, problems: shape } = parseTable(text, file, columns.join(","));
  const problems: Problem[] = [...shape];
  const view = viewTable(table, problems);
  if (!requireColumns(view, needed, problems)) return { rows: [], problems };
  const rows = view.rows.flatMap((row): T[] => {
    const before = problems.length;
    const one = read(row, table.delimiter);
    return hasErrorSince(problems, before) || one === undefined ? [] : [one];
  });
  return { rows, problems };
};
