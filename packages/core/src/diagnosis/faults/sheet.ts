// One sheet of the tables, opened: its rows by column name, and the checks that every sheet shares.

import { type Place, type Problem, problem } from "../../problem/index.ts";
import {
  type Bounds,
  type RowView,
  parseTable,
  requireColumns,
  viewTable,
  withoutTopComments,
} from "../../record/index.ts";
import { type FaultStatus, faultStatuses } from "./faults.ts";

/** The sheets as text, by file name. */
export type SheetTexts = Readonly<Record<string, string>>;

export interface Sheet {
  readonly rows: readonly RowView[];
  /** The line of the column names. */
  readonly header: Place;
  readonly problems: Problem[];
}

/** May stand in every sheet and is not read. */
const free = "note";

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
  const { table, problems: ofShape } = parseTable(withoutTopComments(text), file, columns.join(","));
  problems.push(...ofShape);
  const view = viewTable(table, problems);
  const spare = table.header.filter(({ name }) => ![...columns, free, ""].includes(name));
  const line = table.headerLine;
  for (const { name, column } of spare)
    problems.push(problem("sheet-column", { name, names: columns }, { file, line, column }, "caution"));
  if (!requireColumns(view, columns, problems)) return undefined;
  return { rows: view.rows, header: { file, line, column: 1 }, problems };
};

/** The rows that have no fault, by what names them; a second row of one name is a fault.
 *  @param nameOf - undefined where the row has none, with the fault noted */
export const rowsByName = <K extends string, T>(
  sheet: Sheet,
  column: string,
  nameOf: (row: RowView) => K | undefined,
  read: (row: RowView, name: K) => T | undefined,
): { readonly rows: ReadonlyMap<K, T>; readonly names: readonly K[] } => {
  const lines = new Map<K, number>();
  const rows = new Map<K, T>();
  for (const row of sheet.rows) {
    const name = nameOf(row);
    if (name === undefined) continue;
    const line = lines.get(name);
    if (line !== undefined) {
      row.fault(column, "sheet-row-twice", { name, line });
      continue;
    }
    lines.set(name, row.line);
    const one = read(row, name);
    if (one !== undefined) rows.set(name, one);
  }
  return { rows, names: [...lines.keys()] };
};

/** A row for each of the words, in any order; undefined where one is missing or faulty, with the fault noted. */
export const rowForEach = <K extends string, T>(
  sheet: Sheet,
  column: string,
  words: readonly K[],
  read: (row: RowView, name: K) => T | undefined,
): ReadonlyMap<K, T> | undefined => {
  const { rows, names } = rowsByName(sheet, column, (row) => row.neededWord(column, words), read);
  needNames(sheet, column, words, names);
  return words.every((word) => rows.has(word)) ? rows : undefined;
};

/** Notes the names that have no row, all in one problem. */
export const needNames = (
  { header, problems }: Sheet,
  column: string,
  wanted: readonly string[],
  names: readonly string[],
): void => {
  const missing = wanted.filter((name) => !names.includes(name));
  if (missing.length > 0) problems.push(problem("sheet-row-missing", { column, names: missing }, header));
};

/** The text of a cell; an empty one is a fault. @param example - what could stand there */
export const neededText = (row: RowView, column: string, example: string): string | undefined => {
  const text = row.text(column);
  return text === ""
    ? row.fault(column, "sheet-cell-empty", { column, wanted: `text such as ${example}` })
    : text;
};

/** The number of a cell; an empty one is a fault. */
export const neededNumber = (row: RowView, column: string, bounds: Bounds): number | undefined =>
  ["", "x"].includes(row.text(column).toLowerCase())
    ? row.fault(column, "sheet-cell-empty", { column, wanted: fromTo(bounds) })
    : row.number(column, bounds);

export interface Origin {
  readonly status: FaultStatus;
  readonly source: string;
}

/** How a row is known and where from; both are needed. */
export const readOrigin = (row: RowView): Origin | undefined => {
  const status = row.neededWord("status", faultStatuses);
  const source = neededText(row, "source", "own count of 12 engines");
  return status === undefined || source === undefined ? undefined : { status, source };
};

/** Whether the cell is empty; one that is not is a fault. @param where - `in a row for some` */
export const isEmpty = (row: RowView, column: string, where: string): boolean => {
  const text = row.text(column);
  if (text !== "") row.fault(column, "sheet-cell-spare", { column, text, where });
  return text === "";
};

/** Bounds of a chance or another part of one. */
export const partOf = (of: string, least = 0, most = 1): Bounds => ({
  least,
  most,
  of,
  mend: `write ${fromTo({ least, most })}`,
});

const fromTo = ({ least, most }: Pick<Bounds, "least" | "most">): string =>
  `a number from ${String(least)} to ${String(most)}`;

/** A value for each of the words; undefined where one has none. */
export const valueForEach = <K extends string, T>(
  words: readonly K[],
  valueOf: (word: K) => T | undefined,
): Readonly<Record<K, T>> | undefined => {
  const values: Partial<Record<K, T>> = {};
  for (const word of words) values[word] = valueOf(word);
  return isWhole(words, values) ? values : undefined;
};

const isWhole = <K extends string, T>(
  words: readonly K[],
  values: Partial<Record<K, T>>,
): values is Record<K, T> => words.every((word) => values[word] !== undefined);
