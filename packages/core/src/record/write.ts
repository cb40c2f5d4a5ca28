// Rows as text, in the dialect of the file they go into.

import { parseTable } from "./csv.ts";

export interface Dialect {
  readonly delimiter: string;
  readonly decimalMark: "." | ",";
  readonly columns: readonly string[];
}

/** The dialect of an existing table: its separator, its columns, and a decimal comma where its numbers have one. */
export const dialectOf = (text: string, file: string): Dialect => {
  const { table } = parseTable(text, file);
  const numbers = table.rows.flatMap((row) => row.cells.map((cell) => cell.text));
  const comma = table.delimiter !== "," && numbers.some((cell) => /^[>+-]?\d+,\d+\??$/.test(cell));
  return { delimiter: table.delimiter, decimalMark: comma ? "," : ".", columns: table.header.map(({ name }) => name) };
};

/** One row in a dialect; a value whose column the file lacks is an error of the caller.
 *  @throws RangeError when a value has no column */
export const rowText = (values: Readonly<Record<string, string>>, dialect: Dialect): string => {
  const lost = Object.keys(values).find((name) => values[name] !== "" && !dialect.columns.includes(name));
  if (lost !== undefined) throw new RangeError(`rowText: the file has no column ${lost}`);
  return dialect.columns.map((name) => cellText(values[name] ?? "", dialect)).join(dialect.delimiter);
};

/** One cell in a dialect: a plain number gets the file's decimal mark; quotes only where needed. */
export const cellText = (value: string, dialect: Dialect): string => {
  const folded = value.replace(/\s*[\r\n]+\s*/g, " ").trim();
  const marked = /^[>+-]?\d+\.\d+\??$/.test(folded) ? folded.replace(".", dialect.decimalMark) : folded;
  const quote = marked.includes(dialect.delimiter) || marked.includes('"');
  return quote ? `"${marked.replaceAll('"', '""')}"` : marked;
};

/** A decimal comma typed by a person, as the logbook stores it. */
export const plainNumber = (text: string): string => text.replace(/^([>+-]?\d+),(\d+\??)$/, "$1.$2");
