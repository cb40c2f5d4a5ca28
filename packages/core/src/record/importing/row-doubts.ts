// Rows with figures that may be no test, or a test of another day or engine: they are left out and said, never taken on trust.

import { problem } from "../../problem/index.ts";
import { titleOfRow } from "./block-rows.ts";
import { dateWays } from "./cell-date.ts";
import type { ImportMap } from "./import-map.ts";
import type { Sheet, SheetRow } from "./imported.ts";
import { columnNamed } from "./columns.ts";
import { plainText } from "./sheet-words.ts";
import { undatedRows } from "./undated-rows.ts";
import type { RowDoubt } from "./row-doubt.ts";

export interface RowDoubts {
  /** Takes note of a row that holds no readings. @param day - that it states outside the dates' own column */
  passed(row: SheetRow, day: { readonly text: string; readonly column: number } | undefined): void;
  /** Takes note of a heading that comes again. */
  header(row: SheetRow): void;
  /** What keeps a row with readings out. */
  of(row: SheetRow): RowDoubt | undefined;
}

/** Doubts about the rows of a sheet, asked row by row in order. */
export const rowDoubts = (sheet: Sheet, map: ImportMap, columns: readonly number[]): RowDoubts => {
  const { date, engine, firstRow } = map;
  const dates =
    date !== undefined && "column" in date ? columnNamed(sheet, date.column, firstRow) : undefined;
  const undated = undatedRows(sheet, map, columns);
  const twice = rowsTwice(sheet, map, { columns, dates });
  const fixedDay = date !== undefined && "fixed" in date ? date.fixed : undefined;
  const own = ownNames(map);
  const isAbove = date !== undefined && "above" in date;
  let ofDay: RowDoubt | undefined;
  let ofEngine: RowDoubt | undefined;
  let before: SheetRow | undefined;
  return {
    passed: (row, day) => {
      before = row;
      if (day === undefined || isAbove) return;
      const isSame = [...dateWays(day.text).values()].some((one) => one === fixedDay);
      const facts = { text: row.cells[day.column]?.text ?? day.text, of: "day" } as const;
      ofDay = isSame ? undefined : { at: row, column: day.column, problem: problem("import-block", facts) };
    },
    header: () => {
      const title = before === undefined ? undefined : titleOfRow(before);
      if (before === undefined || title === undefined || engine === undefined || !("fixed" in engine)) return;
      const column = before.cells.findIndex(({ text }) => text !== "");
      const facts = { text: title, of: "engine" } as const;
      const isOwn = own.has(plainText(title)) || dateWays(title).size > 0;
      ofEngine = isOwn ? undefined : { at: before, column, problem: problem("import-block", facts) };
    },
    of: (row) => {
      before = undefined;
      if (dates !== undefined && (row.cells[dates]?.text ?? "") !== "") ofDay = undefined;
      return ofEngine ?? ofDay ?? undated(row) ?? twice(row);
    },
  };
};

/** All names in the map of the engine that it fixes. */
const ownNames = ({ engine, engines }: ImportMap): ReadonlySet<string> => {
  if (engine === undefined || !("fixed" in engine)) return new Set();
  const fixed = plainText(engine.fixed);
  const id = engines.find(({ sheet }) => plainText(sheet) === fixed)?.engine;
  const named = engines.filter((one) => one.engine === id).flatMap((one) => [one.sheet, one.engine]);
  return new Set([engine.fixed, ...named].map(plainText));
};

/** Rows of a whole test that stand there to the letter already, with their day: pasted twice, as a rule. */
const rowsTwice = (
  sheet: Sheet,
  { cylinder }: ImportMap,
  { columns, dates }: { readonly columns: readonly number[]; readonly dates: number | undefined },
): ((row: SheetRow) => RowDoubt | undefined) => {
  if (dates === undefined || cylinder === undefined || !("headerRow" in cylinder)) return () => undefined;
  const seen = new Map<string, number>();
  return (row) => {
    const text = (column: number): string => row.cells[column]?.text ?? "";
    if (text(dates) === "" || columns.filter((column) => text(column) !== "").length < 2) return undefined;
    const known = seen.get(row.raw);
    if (known === undefined) seen.set(row.raw, row.row);
    return known === undefined
      ? undefined
      : { at: row, column: dates, problem: problem("import-row-twice", { row: known }) };
  };
};
