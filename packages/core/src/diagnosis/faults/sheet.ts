// One sheet of the tables, opened: its rows by column name.

import { type Place, type Problem, problem } from "../../problem/index.ts";
import { type RowView, type Table, parseTable, viewTable, withoutTopComments } from "../../record/index.ts";
import { checkColumns } from "./sheet-columns.ts";

/** The sheets as text, by file name. */
export type SheetTexts = Readonly<Record<string, string>>;

export interface Sheet {
  readonly rows: readonly RowView[];
  readonly table: Table;
  /** The line of the column names. */
  readonly header: Place & { readonly file: string };
  readonly problems: Problem[];
}

/** Opens a sheet; undefined, with what is wrong noted, where it is missing or lacks a column. */
export const openSheet = (
  texts: SheetTexts,
  file: string,
  columns: readonly string[],
  problems: Problem[],
): Sheet | undefined => {
  const text = texts[file];
  if (text === undefined) {
    problems.push(problem("sheet-missing", { name: file }, { file }));
    return undefined;
  }
  const bare = withoutTopComments(text);
  const { table, problems: ofShape } = parseTable(bare, file, columns.join(","));
  const isWhole = checkColumns({ table, text: bare, columns }, ofShape, problems);
  if (!isWhole) return undefined;
  const { rows } = viewTable(table, problems);
  return { rows, table, header: { file, line: table.headerLine, column: 1 }, problems };
};
