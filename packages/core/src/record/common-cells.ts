// Cells that several tables share: the meter, and free text that a spreadsheet might run.

import type { RowView } from "./row-view.ts";

/** The meter reading of a row; undefined where none stands. */
export const meterIn = (row: RowView): number | undefined =>
  row.number("meter", { of: "a meter reading", least: 0, most: 9_999_999 });

/** Who and what else of a row, where stated. */
export const byAndNote = (row: RowView): { readonly by?: string; readonly note?: string } => {
  flagFormulas(row, ["by", "note"]);
  const by = row.text("by");
  const note = row.text("note");
  return { ...(by === "" ? {} : { by }), ...(note === "" ? {} : { note }) };
};

/** Notes a caution for each text cell that begins like a spreadsheet formula; the text is kept. */
export const flagFormulas = (row: RowView, columns: readonly string[]): void => {
  for (const column of columns)
    if (isFormula(row.text(column))) row.fault(column, "text-formula", { column }, "caution");
};

/** Whether a spreadsheet might run a text; a plain number is none. */
export const isFormula = (text: string): boolean =>
  text !== "" && /^[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/.test(text) && !/^-?\d+([.,]\d+)?$/.test(text);
