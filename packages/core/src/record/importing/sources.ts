// Where the map says that something of a reading stands, as a look at the sheet.

import { dayOfRow } from "./block-rows.ts";
import { columnNamed } from "./columns.ts";
import type { Source } from "./import-map.ts";
import type { Sheet, SheetRow } from "./imported.ts";

/** A text of the sheet and its cell; of the map itself where it is fixed. */
export interface Spot {
  readonly text: string;
  readonly at?: { readonly row: SheetRow; readonly column: number };
}

export interface Look {
  /** Goes on to a row; fills look back to those before it. */
  enter(row: SheetRow): void;
  /** What stands there for the reading in a column of the row. */
  spot(column: number): Spot;
  /** Whether all readings of a row share what stands there. */
  readonly isOfRow: boolean;
}

/** Makes the look at one source. @param columns - with readings, from 0, ascending */
export const lookAt = (
  sheet: Sheet,
  source: Source,
  { columns, firstRow }: { readonly columns: readonly number[]; readonly firstRow: number },
): Look => {
  if ("fixed" in source) return fixedLook({ text: source.fixed.trim() });
  if ("headerRow" in source) return headerLook(sheet, source, columns);
  if ("above" in source) return aboveLook(sheet, columns, firstRow);
  return columnLook(columnNamed(sheet, source.column, firstRow) ?? -1, source.fill === true);
};

const nowhere = (): void => undefined;

const fixedLook = (spot: Spot): Look => ({ enter: nowhere, spot: () => spot, isOfRow: true });

const headerLook = (
  sheet: Sheet,
  { headerRow, fill = false }: { readonly headerRow: number; readonly fill?: boolean },
  columns: readonly number[],
): Look => {
  const row = sheet.rows.find((one) => one.row === headerRow);
  const spots = new Map<number, Spot>();
  let last: Spot = { text: "" };
  for (const column of columns) {
    const text = row?.cells[column]?.text ?? "";
    if (row !== undefined && (text !== "" || !fill || last.text === "")) last = spotOf(row, column, text);
    spots.set(column, last);
  }
  return { enter: nowhere, spot: (column) => spots.get(column) ?? last, isOfRow: false };
};

const columnLook = (column: number, fill: boolean): Look => {
  let last: Spot = { text: "" };
  return {
    enter: (row) => {
      const text = row.cells[column]?.text ?? "";
      if (text !== "" || !fill || last.text === "") last = spotOf(row, column, text);
    },
    spot: () => last,
    isOfRow: true,
  };
};

/** The last day that stood in a row of its own. */
const aboveLook = (sheet: Sheet, columns: readonly number[], firstRow: number): Look => {
  let last: Spot = { text: "" };
  const enter = (row: SheetRow): void => {
    const day = dayOfRow(row, columns);
    if (day !== undefined) last = spotOf(row, day.column, day.text);
  };
  for (const row of sheet.rows) if (row.row < firstRow) enter(row);
  return { enter, spot: () => last, isOfRow: true };
};

const spotOf = (row: SheetRow, column: number, text: string): Spot => ({ text, at: { row, column } });
