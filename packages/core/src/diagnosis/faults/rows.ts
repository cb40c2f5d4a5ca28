// The rows of a sheet by what names them: none twice, none missing.

import { byName, problem } from "../../problem/index.ts";
import { type RowView, rowText } from "../../record/index.ts";
import type { Sheet } from "./sheet.ts";

interface NamedRows<K extends string, T> {
  /** Those without a fault. */
  readonly rows: ReadonlyMap<K, T>;
  /** Every row that has a name, faulty ones too. */
  readonly views: ReadonlyMap<K, RowView>;
  /** Rows with no name of their own: what seems to be missing is most likely one of them. */
  readonly unnamed: number;
}

/** The rows by what names them; a second row of one name is a fault.
 *  @param nameOf - undefined where the row has none, with the fault noted */
export const rowsByName = <K extends string, T>(
  sheet: Sheet,
  column: string,
  nameOf: (row: RowView) => K | undefined,
  read: (row: RowView, name: K) => T | undefined,
): NamedRows<K, T> => {
  const views = new Map<K, RowView>();
  const rows = new Map<K, T>();
  for (const row of sheet.rows) {
    const name = nameOf(row);
    if (name === undefined) continue;
    const line = views.get(name)?.line;
    if (line !== undefined) {
      row.fault(column, "sheet-row-twice", { name, line });
      continue;
    }
    views.set(name, row);
    const one = read(row, name);
    if (one !== undefined) rows.set(name, one);
  }
  return { rows, views, unnamed: sheet.rows.length - views.size };
};

/** A row for each of the words, in any order; undefined where one is missing or faulty, with the fault noted. */
export const rowForEach = <K extends string, T>(
  sheet: Sheet,
  column: string,
  words: readonly K[],
  read: (row: RowView, name: K) => T | undefined,
): ReadonlyMap<K, T> | undefined => {
  const named = rowsByName(sheet, column, (row) => row.neededWord(column, words), read);
  needNames(sheet, column, words, named);
  return words.every((word) => named.rows.has(word)) ? named.rows : undefined;
};

/** Those of the names that have no row and are none of the rows without a name. */
export const missingNames = <K extends string>(
  wanted: readonly K[],
  { views, unnamed }: Pick<NamedRows<string, unknown>, "views" | "unnamed">,
): readonly K[] => {
  const missing = wanted.filter((name) => !views.has(name));
  return missing.length > unnamed ? missing : [];
};

/** Notes the names that have no row, all in one problem. */
export const needNames = (
  { header, problems }: Sheet,
  column: string,
  wanted: readonly string[],
  named: Pick<NamedRows<string, unknown>, "views" | "unnamed">,
): void => {
  const names = missingNames(wanted, named);
  const facts = { column, names, sheet: header.file };
  if (names.length > 0) problems.push(problem("sheet-row-missing", facts, header));
};

/** Cautions that the sheet leaves out rows of the shipped one. @param without - what that does */
export const noteLeftOut = (
  { header, problems }: Sheet,
  column: string,
  { names, without }: { readonly names: readonly string[]; readonly without: string },
): void => {
  const facts = { column, names, sheet: header.file, without };
  if (names.length > 0) problems.push(problem("sheet-row-missing", facts, header, "caution"));
};

/** A row to type into the sheet. @param row - one of it to begin with  @param values - in place of its cells */
export const modelRow = (
  { table }: Sheet,
  row: RowView | undefined,
  values: Readonly<Record<string, string>>,
): string => {
  const columns = table.header.map(({ name }) => name);
  const given = byName(values);
  const cells = Object.fromEntries(columns.map((name) => [name, given[name] ?? row?.text(name) ?? ""]));
  return rowText(cells, { delimiter: table.delimiter, decimalMark: ".", columns });
};
