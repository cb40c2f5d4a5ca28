// Rows with figures that take their date from above: repeats of a test, or averages and book figures under the table.

import { problem } from "../../problem/index.ts";
import { columnNamed } from "./columns.ts";
import type { ImportMap } from "./import-map.ts";
import type { Sheet, SheetRow } from "./imported.ts";
import type { RowDoubt } from "./row-doubt.ts";
import { looksRead } from "./sheet-shape.ts";
import { isSummary, plainText } from "./sheet-words.ts";

/** What keeps a row without a date of its own out; asked row by row in order. */
export const undatedRows = (
  sheet: Sheet,
  map: ImportMap,
  columns: readonly number[],
): ((row: SheetRow) => RowDoubt | undefined) => {
  const { date, engine, firstRow } = map;
  if (date === undefined || !("column" in date) || date.fill !== true) return () => undefined;
  const dates = columnNamed(sheet, date.column, firstRow) ?? -1;
  const engines =
    engine !== undefined && "column" in engine ? columnNamed(sheet, engine.column, firstRow) : undefined;
  const layout = datedRows(sheet, { ...map, dates, engines, columns });
  let figures = noFigures();
  let name = "";
  return (row) => {
    const text = (column: number | undefined): string =>
      column === undefined ? "" : (row.cells[column]?.text ?? "");
    const own = plainText(text(engines));
    const isNew = own !== "" && own !== name;
    const isDated = text(dates) !== "";
    const doubt = (column: number, facts: { readonly text: string; readonly like?: string }): RowDoubt => ({
      at: row,
      column,
      problem: problem("import-undated", facts),
    });
    if (!isDated && isNew && !layout.isEngine(own)) return doubt(engines ?? dates, { text: text(engines) });
    if (isNew) [figures, name] = [noFigures(), own];
    const read = columns.flatMap((column) =>
      looksRead(text(column)) ? [[column, text(column)] as const] : [],
    );
    const like = isDated || layout.goesOn.has(row.row) ? undefined : likeAbove(figures, read);
    if (like !== undefined) return doubt(dates, { text: read[0]?.[1] ?? "", like });
    if (!isDated && layout.isOneARow && !layout.goesOn.has(row.row))
      return doubt(dates, { text: read[0]?.[1] ?? text(columns[0]) });
    for (const [column, figure] of read) figures.set(column, added(figures.get(column), numberIn(figure)));
    return undefined;
  };
};

interface Layout {
  /** Whether a name of an engine stands where its date can be taken from above. @param name - as plain text */
  isEngine(name: string): boolean;
  /** Rows without a date that have one with a date below them in their section: the column is written once a day. */
  readonly goesOn: ReadonlySet<number>;
  /** Whether the days of the sheet have a row each, so that one without a day belongs to none. */
  readonly isOneARow: boolean;
}

interface Where extends Pick<ImportMap, "firstRow" | "cylinder"> {
  readonly dates: number;
  readonly engines: number | undefined;
  readonly columns: readonly number[];
}

const datedRows = (sheet: Sheet, { dates, engines, columns, firstRow, cylinder }: Where): Layout => {
  const goesOn = new Set<number>();
  const dated = new Set<string>();
  const groups = new Map<string, Set<number>>();
  let [group, days, name] = [0, 0, ""];
  const rows = sheet.rows.filter(
    (row) => row.row >= firstRow && columns.some((column) => (row.cells[column]?.text ?? "") !== ""),
  );
  let waiting: number[] = [];
  for (const { row, cells } of rows) {
    const own = engines === undefined ? "" : plainText(cells[engines]?.text ?? "");
    const isDated = (cells[dates]?.text ?? "") !== "";
    if (own !== "" && own !== name) [waiting, name] = [[], own];
    if (isDated) {
      for (const before of waiting) goesOn.add(before);
      waiting = [];
      [group, days] = [group + 1, days + 1];
      dated.add(own);
    } else if (!cells.some(({ text }) => isSummary(text))) waiting.push(row);
    if (own !== "") groups.set(own, (groups.get(own) ?? new Set()).add(group));
  }
  const isOuter = engines !== undefined && dates < engines;
  const isEngine = (one: string): boolean =>
    isOuter && (dated.has(one) || days < 2 || (groups.get(one)?.size ?? 0) > 1);
  const isAcross = cylinder !== undefined && "headerRow" in cylinder;
  return { isEngine, goesOn, isOneARow: isAcross && days > 1 && goesOn.size === 0 };
};

/** What a column held so far. */
interface Figures {
  readonly count: number;
  readonly sum: number;
  readonly least: number;
  readonly most: number;
}

const noFigures = (): Map<number, Figures> => new Map();

const added = (
  { count, sum, least, most }: Figures = { count: 0, sum: 0, least: Infinity, most: -Infinity },
  value: number,
): Figures => ({
  count: count + 1,
  sum: sum + value,
  least: Math.min(least, value),
  most: Math.max(most, value),
});

const numberIn = (text: string): number => Number(/\d+(?:[.,]\d+)?/.exec(text)?.[0].replace(",", "."));

/** What a row is of those above it, column by column: never of one reading alone. */
const likeAbove = (
  above: ReadonlyMap<number, Figures>,
  read: readonly (readonly [column: number, text: string])[],
): string | undefined => {
  const pairs = read.flatMap(([column, text]) => {
    const figures = above.get(column);
    return figures === undefined || figures.count < 2 ? [] : [{ text, figures }];
  });
  if (pairs.length < 2 || pairs.length < read.length) return undefined;
  return kinds.find(([, of]) =>
    pairs.every(({ text, figures }) => {
      const decimals = /[.,](\d+)/.exec(text)?.[1]?.length ?? 0;
      return Math.abs(of(figures) - numberIn(text)) <= 0.51 / 10 ** decimals;
    }),
  )?.[0];
};

const kinds: readonly (readonly [string, (figures: Figures) => number])[] = [
  ["the average", ({ sum, count }) => sum / count],
  ["the sum", ({ sum }) => sum],
  ["the lowest", ({ least, count }) => (count < 3 ? Number.NaN : least)],
  ["the highest", ({ most, count }) => (count < 3 ? Number.NaN : most)],
];
