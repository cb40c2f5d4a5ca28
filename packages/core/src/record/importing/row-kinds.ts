// What a row of the sheet is: readings, a heading that a new page brought again, an average, the day of a block, or something
// without a reading.

import { dayOfRow } from "./block-rows.ts";
import type { ImportMap } from "./import-map.ts";
import type { LeftWhy, Sheet, SheetRow } from "./imported.ts";
import { columnNamed } from "./columns.ts";
import { sourcesOf } from "./fit-map.ts";
import type { RowDoubt } from "./row-doubt.ts";
import { rowDoubts } from "./row-doubts.ts";
import { isSummary, plainText } from "./sheet-words.ts";

export type RowKind =
  | { readonly kind: "readings" | "nothing" | "day" }
  | ({ readonly kind: "doubtful"; readonly readings: number } & RowDoubt)
  | {
      readonly kind: "summary" | "empty";
      readonly text: string;
      readonly why: LeftWhy;
      readonly readings: number;
      readonly column: number;
    }
  | {
      readonly kind: "header";
      /** The row that it repeats. */
      readonly of: number;
      readonly why: LeftWhy;
      readonly readings: number;
      readonly column: number;
    };

/** Headings above the readings that a row is held against: the last few. */
const mostHeadings = 8;

/** Tells the kind of each row, asked in order: what came before counts. @param isBlank - whether a text is no reading */
export const rowKinds = (
  sheet: Sheet,
  map: ImportMap,
  { columns, isBlank }: { readonly columns: readonly number[]; readonly isBlank: (text: string) => boolean },
): ((row: SheetRow) => RowKind) => {
  const isReading = new Set(columns);
  const indexOf = (path: string, fillOnly: boolean): readonly number[] =>
    sourcesOf(map).flatMap(([name, source]) =>
      (path === "" || name === path) && "column" in source && (!fillOnly || source.fill === true)
        ? [columnNamed(sheet, source.column, map.firstRow) ?? -1]
        : [],
    );
  const free = new Set(["note", "by", "set_aside"].flatMap((name) => indexOf(name, false)));
  const filling = new Set(indexOf("", true));
  const engines = new Set(map.engines.map((one) => plainText(one.sheet)));
  const headings = sheet.rows.filter(({ row }) => row < map.firstRow).slice(-mostHeadings);
  const textAt = (row: SheetRow, column: number): string => row.cells[column]?.text ?? "";
  const dates = new Set(indexOf("date", false));
  const isAbove = map.date !== undefined && "above" in map.date;
  const doubts = rowDoubts(sheet, map, columns);
  return (row) => {
    const written = columns.filter((column) => textAt(row, column) !== "");
    const readings = written.filter((column) => !isBlank(textAt(row, column))).length;
    const first = row.cells.findIndex(({ text }) => text !== "");
    const heading = headings.find((one) => isSame(one, row, written));
    if (heading !== undefined) doubts.header(row);
    if (heading !== undefined)
      return { kind: "header", of: heading.row, why: "header", readings: 0, column: first };
    const summary = row.cells.findIndex(
      ({ text }, i) => !isReading.has(i) && !free.has(i) && isSummary(text) && !engines.has(plainText(text)),
    );
    if (summary !== -1)
      return { kind: "summary", text: textAt(row, summary), why: "summary", readings, column: summary };
    const day = dayOfRow(row, columns);
    const isDay = day !== undefined && !dates.has(day.column);
    if (isDay && isAbove) return { kind: "day" };
    if (written.length > 0 && !(isDay && isReading.has(day.column))) {
      const doubt = readings === 0 ? undefined : doubts.of(row);
      return doubt === undefined ? { kind: "readings" } : { kind: "doubtful", readings, ...doubt };
    }
    doubts.passed(row, isDay ? day : undefined);
    const rest = row.cells.flatMap(({ text }, i) => (text !== "" && !filling.has(i) ? [i] : []));
    const [other] = rest;
    return other === undefined
      ? { kind: "nothing" }
      : { kind: "empty", text: textAt(row, first), why: "empty", readings, column: first };
  };
};

const isSame = (heading: SheetRow, row: SheetRow, written: readonly number[]): boolean =>
  written.length > 0 &&
  written.every((column) => heading.cells[column]?.text === row.cells[column]?.text) &&
  row.cells.every(({ text }, i) => text === "" || text === heading.cells[i]?.text);
