// CSV text to a table of located cells. csv-parse splits the records; this file finds the separator, takes out the lines
// whose quote marks would swallow the rest of the file, and tells every fault of shape.

import { type Place, type Problem, problem } from "../problem/index.ts";
import { type SplitRow, type TableCell, type TableRow, lineEnd, locatedRows } from "./located-rows.ts";
import { faultyLines } from "./quote-faults.ts";

export type { SplitRow, TableCell, TableRow } from "./located-rows.ts";

/** CSV text as located cells. Lines and columns from 1. */
export interface Table {
  readonly file: string;
  readonly delimiter: string;
  readonly header: readonly { readonly name: string; readonly column: number }[];
  readonly headerLine: number;
  /** The header as it stands. */
  readonly headerText: string;
  readonly rows: readonly SplitRow[];
}

/** A table, and every fault of its shape. */
export interface ParsedTable {
  readonly table: Table;
  readonly problems: readonly Problem[];
}

/** Parses CSV text with `,`, `;` or tab. Every fault of shape is reported; rows without one are all there.
 *  @param columns - the column names to suggest when the file is empty */
export const parseTable = (source: string, file: string, columns = ""): ParsedTable => {
  const { delimiter, clean, faults, problems: split, located } = parseRows(source, file);
  const [first, ...further] = located;
  const rows = further.filter(holdsSomething);
  const empty: Table = { file, delimiter, header: [], headerLine: 1, headerText: "", rows: [] };
  if (first === undefined) {
    const none =
      faults.length + split.length > 0
        ? []
        : [problem("file-empty", { columns }, { file, line: 1, column: 1 })];
    return { table: empty, problems: [...faults, ...split, ...none] };
  }
  if (faults.some(({ line = 1 }) => line < first.line)) return { table: empty, problems: faults };
  const header = first.cells.map(({ text: name, column }) => ({ name: name.trim(), column }));
  const table: Table = { file, delimiter, header, headerLine: first.line, headerText: first.raw, rows };
  const problems = [...faults, ...split, ...headerFaults(table), ...widthFaults(table, clean)];
  return { table, problems };
};

/** More of a table whose header was read before: rows that begin on some line of its file, with every fault of their shape. */
export const parseMoreRows = (
  text: string,
  { file, delimiter, header }: Pick<Table, "file" | "delimiter" | "header">,
  line: number,
): { readonly rows: readonly SplitRow[]; readonly problems: readonly Problem[] } => {
  const { clean, faults, problems, located } = rowsOf(withoutHalves(text), { file, delimiter, line });
  const rows = located.filter(holdsSomething);
  return { rows, problems: [...faults, ...problems, ...widthFaults({ file, header, rows }, clean)] };
};

/** The rows of a text as they stand, with no one of them taken for a header. @param separator - where it is known */
export const parseRows = (source: string, file: string, separator?: string) => {
  const text = withoutHalves(withoutPreamble(source));
  const delimiter = separator ?? delimiterOf(text);
  return { delimiter, ...rowsOf(text, { file, delimiter, line: 1 }) };
};

/** @param line - on which the text begins */
const rowsOf = (
  text: string,
  { file, delimiter, line }: { readonly file: string; readonly delimiter: string; readonly line: number },
) => {
  const { faults: quotes, clean } = faultyLines(text, delimiter, file, line);
  const { rows, problems } = locatedRows(clean, delimiter, file, line);
  const huge = rows.filter(hasHugeCell);
  if (huge.length === 0) return { clean, faults: quotes, problems, located: rows };
  const faults = [...quotes, ...huge.map((row) => hugeCell(row, file))];
  return { clean, faults, problems, located: rows.filter((row) => !hasHugeCell(row)) };
};

/** More than a page; patterns that look through a cell may take time by the square of its length. */
const mostCharactersOfACell = 2_000;

const hasHugeCell = ({ raw, texts }: SplitRow): boolean =>
  raw.length > mostCharactersOfACell && texts.some(isHuge);

const isHuge = (text: string): boolean => text.length > mostCharactersOfACell;

const hugeCell = (row: SplitRow, file: string): Problem => {
  const cell = row.cells[row.texts.findIndex(isHuge)];
  return problem("cell-huge", { most: mostCharactersOfACell }, placeOf({ file }, row, cell));
};

/** Where a cell stands, with the line as it is, for a problem; behind the row's end where there is no cell. */
export const placeOf = (table: Pick<Table, "file">, row: TableRow, cell: TableCell | undefined): Place => {
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
const holdsSomething = ({ texts }: SplitRow): boolean => texts.some((text) => text.trim() !== "");

const withoutPreamble = (text: string): string =>
  text.replace(/^\uFEFF/, "").replace(/^sep=.(?=\r?\n|\r)/i, "");

/** Half characters become U+FFFD, as csv-parse makes them: a row must be found again in the text, at its line. */
const withoutHalves = (text: string): string => text.toWellFormed();

/** The separator that stands most often outside quotes in the first line that holds anything. */
const delimiterOf = (text: string): string => {
  const bare = firstLine(text).replace(/"[^"]*"/g, "");
  const count = (mark: string): number => bare.split(mark).length - 1;
  return [",", ";", "\t"].reduce((best, mark) => (count(mark) > count(best) ? mark : best), ",");
};

/** The first line that is not blank; "" where none is. */
const firstLine = (text: string): string => {
  const at = text.search(/\S/);
  if (at === -1) return "";
  const from = Math.max(text.lastIndexOf("\n", at), text.lastIndexOf("\r", at)) + 1;
  const length = text.slice(from).search(/[\r\n]/);
  return length === -1 ? text.slice(from) : text.slice(from, from + length);
};

/** Names that stand twice, and columns with cells and without a name. */
export const headerFaults = (table: Table): Problem[] => {
  const at = (column: number, text: string): Place => ({
    file: table.file,
    line: table.headerLine,
    column,
    excerpt: { text: table.headerText, from: column, to: column + Math.max(1, text.length) - 1 },
  });
  return table.header.flatMap(({ name, column }, i) => {
    if (name === "") {
      const used = table.rows.some((row) => (row.texts[i]?.trim() ?? "") !== "");
      return used ? [problem("header-blank", { position: i + 1 }, at(column, name))] : [];
    }
    const earlier = table.header.findIndex((other) => other.name === name);
    return earlier < i ? [problem("header-twice", { name }, at(column, name))] : [];
  });
};

const widthFaults = (table: Pick<Table, "file" | "header" | "rows">, text: string): Problem[] => {
  const columns = table.header.length;
  const last = table.rows.at(-1);
  const faults: Problem[] = [];
  for (const row of table.rows) {
    if (row.texts.length === columns) continue;
    const extra = row.cells.slice(columns).filter((cell) => cell.text.trim() !== "");
    if (extra.length > 0) {
      faults.push(problem("row-long", { extra: extra.length, columns }, placeOf(table, row, extra[0])));
      continue;
    }
    const missing = columns - row.texts.length;
    if (missing <= 0) continue;
    const unended = row === last && row.offset + row.raw.length === text.length;
    faults.push(
      unended
        ? problem("row-cut", { missing }, placeOf(table, row, undefined))
        : problem("row-short", { missing }, placeOf(table, row, undefined), "caution"),
    );
  }
  return faults;
};
