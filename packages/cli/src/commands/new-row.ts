// One new row for a table of the logbook, in the dialect of the file it goes into, read back before it is written.

import { type Dialect, type Problem, dialectOf, rowText } from "@sealtrend/core/parts";
import { type Fault, Stop } from "../command.ts";
import { usage } from "./usage.ts";

export interface NewRow {
  /** The file's name as messages print it. */
  readonly file: string;
  /** The first line of a file that does not exist yet. */
  readonly header: string;
  readonly values: Readonly<Record<string, string>>;
  /** The core's own reader of this file. */
  readonly read: (text: string, file: string) => readonly Problem[];
}

/** The lines to append to a file with this text: the row, and the header first where the file holds only blanks.
 *  @throws Stop 2 with the faults of the row as faults of the command line, 1 where the file lacks a column */
export const newRow = (text: string, { file, header, values, read }: NewRow): readonly string[] => {
  const blank = text.trim() === "";
  const before = blank ? `${header}\n` : /[\r\n]$/.test(text) ? text : `${text}\n`;
  const row = rowIn(dialectOf(before, file), file, values);
  const first = before.split(/\r\n|\r|\n/).length;
  const faults = read(`${before}${row}\n`, file).filter(
    ({ severity, code, line = 0 }) => line >= first && (severity === "error" || code === "text-formula"),
  );
  if (faults.length > 0) throw new Stop(2, faults.map(asTyped));
  return blank && text !== "" ? [header, row] : [row];
};

/** The columns that a new row fills. @throws Stop 1 where the file lacks one that no row can do without: a header with
 *  another name for it is not mended by a second column */
export const columnsNeeded = (
  text: string,
  { file, values, read }: Omit<NewRow, "header">,
): readonly string[] => {
  stopOnMissing(read(text, file));
  return filled(values);
};

/** @throws Stop 1 with the columns that a table lacks and cannot be read without */
export const stopOnMissing = (problems: readonly Problem[]): void => {
  const missing = problems.filter(({ code }) => code === "column-missing");
  if (missing.length > 0) throw new Stop(1, missing);
};

/** The columns that hold something. */
export const filled = (values: Readonly<Record<string, string>>): readonly string[] =>
  Object.keys(values).filter((name) => values[name] !== "");

/** The row as text. @throws Stop 1 for a value whose column the file lacks */
export const rowIn = (dialect: Dialect, file: string, values: Readonly<Record<string, string>>): string => {
  const lost = filled(values).find((name) => !dialect.columns.includes(name));
  if (lost !== undefined) throw columnMissing(dialect, file, lost);
  return rowText(values, dialect);
};

export const columnMissing = ({ delimiter }: Dialect, file: string, name: string): Stop =>
  usage(
    "column-missing",
    `${file} has no column ${name}`,
    `"${name}" in its first line`,
    `add ${delimiter}${name} to the end of the first line`,
    1,
  );

/** As a fault of what was typed, not of a line that is not there yet. */
export const asTyped = ({ code, found, expected, mend }: Problem): Fault => ({
  code,
  severity: "error",
  found,
  expected,
  mend,
});
