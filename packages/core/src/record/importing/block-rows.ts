// Rows of their own that say something of the readings below them: the day of a block, the engine of a table.

import { dateWays, dateWithin } from "./cell-date.ts";
import type { SheetRow } from "./imported.ts";
import { looksRead } from "./sheet-shape.ts";

export interface DayOfRow {
  readonly text: string;
  readonly column: number;
}

/** The day that a row without a reading states, such as `Date: 12 June 2009`; undefined where it states none, or several.
 *  @param columns - with readings */
export const dayOfRow = (row: SheetRow, columns: readonly number[]): DayOfRow | undefined => {
  let only: DayOfRow | undefined;
  for (const [column, { text }] of row.cells.entries()) {
    const day = text === "" ? undefined : dateWays(text).size > 0 ? text : dateWithin(text);
    if (day === undefined) continue;
    if (only !== undefined) return undefined;
    only = { text: day, column };
  }
  if (only === undefined) return undefined;
  const { column: own } = only;
  return columns.some((column) => column !== own && looksRead(row.cells[column]?.text ?? ""))
    ? undefined
    : only;
};

/** The only text of a row, as a title of a table is written; undefined for any other row. */
export const titleOfRow = (row: SheetRow): string | undefined => {
  const held = row.cells.filter(({ text }) => text !== "");
  const [only] = held;
  return only !== undefined && held.length === 1 && /\p{L}/u.test(only.text) && !isPage.test(only.text)
    ? only.text
    : undefined;
};

const isPage = /^(?:page|seite|sheet|blatt|continued|cont|fortsetzung|p|s)\b/i;
