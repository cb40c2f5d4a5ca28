// Rows as text, in the dialect of the file they go into.

import { byName } from "../problem/index.ts";
import { parseTable } from "./csv.ts";

/** How a file writes its rows: its delimiter, its decimal mark, its columns. */
export interface Dialect {
  readonly delimiter: string;
  readonly decimalMark: "." | ",";
  readonly columns: readonly string[];
}

/** The dialect of an existing table: its separator, its columns, and a decimal comma where its numbers have one. */
export const dialectOf = (text: string, file: string): Dialect => {
  const { table } = parseTable(text, file);
  const numbers = table.rows.flatMap(({ texts }) => texts);
  const comma = table.delimiter !== "," && numbers.some((cell) => /^[>+-]?\d+,\d+\??$/.test(cell));
  return {
    delimiter: table.delimiter,
    decimalMark: comma ? "," : ".",
    columns: table.header.map(({ name }) => name),
  };
};

/** Columns that hold names and words: `2.5` is a gauge there, not a number. */
const textColumns: ReadonlySet<string> = new Set(
  "test,date,what,gauge,unit,kind,cylinders,new_baseline,by,set_aside,note,because,file,column,part,label,at,quantity,instrument,state".split(
    ",",
  ),
);

/** One row in a dialect; a value whose column the file lacks is an error of the caller.
 *  @throws RangeError when a value has no column */
export const rowText = (values: Readonly<Record<string, string>>, dialect: Dialect): string => {
  const lost = Object.keys(values).find((name) => values[name] !== "" && !dialect.columns.includes(name));
  if (lost !== undefined) throw new RangeError(`rowText: the file has no column ${lost}`);
  const named = byName(values);
  return dialect.columns
    .map((name) => {
      const value = named[name] ?? "";
      return textColumns.has(name) ? quotedText(value, dialect) : cellText(value, dialect);
    })
    .join(dialect.delimiter);
};

/** One cell in a dialect; a plain number gets the file's decimal mark, a zero before it where none was typed, and a zero
 *  behind three decimals where they could be read as a thousands group. */
export const cellText = (value: string, dialect: Dialect): string => {
  const [, sign = "", whole = "", decimals = "", doubt = ""] = plainDecimal.exec(value.trim()) ?? [];
  if (decimals === "") return quotedText(value, dialect);
  const isOpen = dialect.delimiter !== "," && decimals.length === 3 && /^[1-9]\d{0,2}$/.test(whole);
  const written = `${sign}${whole || "0"}${dialect.decimalMark}${decimals}${isOpen ? "0" : ""}${doubt}`;
  return quotedText(written, dialect);
};

const plainDecimal = /^([>+-]?)(\d*)\.(\d+)(\??)$/;

/** Text on one line, in quotes only where it needs them. */
const quotedText = (value: string, { delimiter }: Dialect): string => {
  const folded = value.replace(/\s*[\r\n]+\s*/g, " ").trim();
  return folded.includes(delimiter) || folded.includes('"') ? `"${folded.replaceAll('"', '""')}"` : folded;
};

/** A decimal comma typed by a person, as the logbook stores it; one that could be a thousands mark (`1,234`) stays, for the
 *  reader of the row to refuse. */
export const plainNumber = (text: string): string =>
  /^[>+-]?[1-9]\d{0,2},\d{3}\??$/.test(text) ? text : text.replace(/^([>+-]?\d+),(\d+\??)$/, "$1.$2");
