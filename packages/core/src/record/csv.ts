// CSV text to located cells. csv-parse splits the records; this file finds the separator, says where each
// cell stands, and takes out the lines whose quote marks would swallow the rest of the file.

import { CsvError, parse } from "csv-parse/browser/esm/sync";
import { type Place, type Problem, problem } from "../problem/index.ts";
import { faultyLines } from "./quote-faults.ts";

export interface TableCell {
  readonly text: string;
  /** Where the cell begins in its row, from 1. */
  readonly column: number;
}

export interface TableRow {
  /** The line on which the row begins, from 1. */
  readonly line: number;
  readonly cells: readonly TableCell[];
  /** The row as it stands in the file, without its line end. */
  readonly raw: string;
  /** Offset of raw in the text. */
  readonly offset: number;
}

export interface Table {
  readonly file: string;
  readonly delimiter: string;
  readonly header: readonly { readonly name: string; readonly column: number }[];
  readonly headerLine: number;
  readonly rows: readonly TableRow[];
}

const lineEnd = /\r\n|\r|\n/;
const mostCharactersOfARow = 65_536;
const mostColumns = 4_096;
const mostRows = 200_000;

/** Parses CSV text with `,`, `;` or tab. Every fault of shape is reported; rows without one are all there.
 *  @param columns - the column names to suggest when the file is empty */
export const parseTable = (
  source: string,
  file: string,
  columns = "",
): { readonly table: Table; readonly problems: readonly Problem[] } => {
  const text = withoutPreamble(source);
  const delimiter = delimiterOf(text);
  const { faults, clean } = faultyLines(text, delimiter, file);
  const records = recordsOf(clean, delimiter, file);
  const located = locate(records.records, clean, delimiter);
  const [first, ...further] = located;
  const rows = further.filter(holdsSomething);
  const empty: Table = { file, delimiter, header: [], headerLine: 1, rows: [] };
  if (first === undefined) {
    const none =
      faults.length + records.problems.length > 0
        ? []
        : [problem("file-empty", { columns }, { file, line: 1, column: 1 })];
    return { table: empty, problems: [...faults, ...records.problems, ...none] };
  }
  if (faults.some(({ line = 1 }) => line < first.line)) return { table: empty, problems: faults };
  const header = first.cells.map(({ text: name, column }) => ({ name: name.trim(), column }));
  const table: Table = { file, delimiter, header, headerLine: first.line, rows };
  const problems = [
    ...faults,
    ...records.problems,
    ...headerFaults(table, first.raw),
    ...widthFaults(table, clean),
  ];
  return { table, problems };
};

/** Where a cell stands, with the line as it is, for a problem; behind the row's end where there is no cell. */
export const placeOf = (table: Table, row: TableRow, cell: TableCell | undefined): Place => {
  const offset = cell === undefined ? row.raw.length : cell.column - 1;
  const before = row.raw.slice(0, offset).split(lineEnd);
  const column = (before.at(-1) ?? "").length + 1;
  const text = row.raw.split(lineEnd)[before.length - 1] ?? "";
  const to = column + Math.max(1, cell?.text.split(lineEnd)[0]?.length ?? 1) - 1;
  return {
    file: table.file,
    line: row.line + before.length - 1,
    column,
    excerpt: { text, from: column, to },
  };
};

/** A row of separators only, as spreadsheets leave them behind the last entry, is no row. */
const holdsSomething = (row: TableRow): boolean => row.cells.some(({ text }) => text.trim() !== "");

const withoutPreamble = (text: string): string =>
  text.replace(/^\uFEFF/, "").replace(/^sep=.(?=\r?\n|\r)/i, "");

/** The separator that stands most often outside quotes in the first line that holds anything. */
const delimiterOf = (text: string): string => {
  const line = /[^\r\n]*[^\s][^\r\n]*/.exec(text)?.[0] ?? "";
  const bare = line.replace(/"(?:[^"]|"")*"/g, "");
  const count = (mark: string): number => bare.split(mark).length - 1;
  return [",", ";", "\t"].reduce((best, mark) => (count(mark) > count(best) ? mark : best), ",");
};

const recordsOf = (
  text: string,
  delimiter: string,
  file: string,
): { records: { record: string[]; raw: string }[]; problems: Problem[] } => {
  try {
    const records = parse(text, {
      delimiter,
      bom: true,
      record_delimiter: ["\r\n", "\n", "\r"],
      relax_column_count: true,
      info: true,
      raw: true,
      skip_empty_lines: true,
      max_record_size: mostCharactersOfARow,
    });
    const most = (what: string, limit: number): Problem[] => [
      problem("file-huge", { what, most: limit }, { file, line: 1, column: 1 }),
    ];
    if (records.length > mostRows) return { records: [], problems: most("rows", mostRows) };
    if (records.some(({ record }) => record.length > mostColumns))
      return { records: [], problems: most("columns", mostColumns) };
    return { records, problems: [] };
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const place = { file, line: Math.max(1, error.lines ?? 1), column: 1 };
    return { records: [], problems: [problem("row-huge", { most: mostCharactersOfARow }, place)] };
  }
};

const locate = (
  records: readonly { record: string[]; raw: string }[],
  text: string,
  delimiter: string,
): TableRow[] => {
  let offset = 0;
  let line = 1;
  return records.map(({ record, raw: untrimmed }) => {
    const raw = untrimmed.replace(/^[\r\n]+/, "").replace(/[\r\n]+$/, "");
    const start = text.indexOf(raw, offset);
    line += lineEnds(text.slice(offset, start));
    const columns = cellColumns(raw, delimiter);
    const row = {
      line,
      raw,
      offset: start,
      cells: record.map((cell, i) => ({ text: cell, column: columns[i] ?? raw.length + 1 })),
    };
    line += lineEnds(raw);
    offset = start + raw.length;
    return row;
  });
};

const lineEnds = (text: string): number => text.split(lineEnd).length - 1;

/** Where each cell of a record begins, from 1; a quoted cell may hold the separator. */
const cellColumns = (raw: string, delimiter: string): number[] => {
  const columns = [1];
  let quoted = false;
  for (let i = 0; i < raw.length; i++) {
    if (raw[i] === '"') quoted = !quoted;
    else if (raw[i] === delimiter && !quoted) columns.push(i + 2);
  }
  return columns;
};

const headerFaults = (table: Table, raw: string): Problem[] => {
  const at = (column: number, text: string): Place => ({
    file: table.file,
    line: table.headerLine,
    column,
    excerpt: { text: raw, from: column, to: column + Math.max(1, text.length) - 1 },
  });
  return table.header.flatMap(({ name, column }, i) => {
    if (name === "") {
      const used = table.rows.some((row) => (row.cells[i]?.text.trim() ?? "") !== "");
      return used ? [problem("header-blank", { position: i + 1 }, at(column, name))] : [];
    }
    const earlier = table.header.findIndex((other) => other.name === name);
    return earlier < i ? [problem("header-twice", { name }, at(column, name))] : [];
  });
};

const widthFaults = (table: Table, text: string): Problem[] => {
  const columns = table.header.length;
  const last = table.rows.at(-1);
  return table.rows.flatMap((row) => {
    const extra = row.cells.slice(columns).filter((cell) => cell.text.trim() !== "");
    if (extra.length > 0)
      return [problem("row-long", { extra: extra.length, columns }, placeOf(table, row, extra[0]))];
    const missing = columns - row.cells.length;
    if (missing <= 0) return [];
    const unended = row === last && row.offset + row.raw.length === text.length;
    return unended
      ? [problem("row-cut", { missing }, placeOf(table, row, undefined))]
      : [problem("row-short", { missing }, placeOf(table, row, undefined), "caution")];
  });
};
