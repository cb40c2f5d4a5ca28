// Where the days of a sheet stand, and in which order their parts are written. A day that was typed goes before nothing that the
// sheet says itself.

import { titleOfRow, dayOfRow } from "./block-rows.ts";
import { dateWays, dateWithin } from "./cell-date.ts";
import { columnLetters, columnRanges } from "./columns.ts";
import { guessDates } from "./guess-cells.ts";
import { type Guess, type SheetText, asked, joined, placeIn, quotedCell, settled } from "./guess-parts.ts";
import type { Source } from "./import-map.ts";
import type { ImportHints, Sheet, SheetRow } from "./imported.ts";
import { isIsoDate } from "../row-view.ts";
import type { SheetShape } from "./sheet-shape.ts";

interface Known {
  /** Where the layout has them. */
  readonly date: Source | undefined;
  readonly columns: readonly number[];
  readonly hints: ImportHints;
}

/** The days of a sheet: where they stand, and the order of their parts. */
export const guessDay = (sheet: Sheet, shape: SheetShape, known: Known): Guess => {
  const { hints } = known;
  const own = ownDays(sheet, shape, known);
  const told = hints.date !== undefined && isIsoDate(hints.date) ? hints.date : undefined;
  if (told === undefined) return own ?? noDay(sheet, shape);
  const { date } = own?.map ?? known;
  const isSame = date !== undefined && "fixed" in date && date.fixed === told;
  const where = date ?? undefined;
  if (own === undefined || isSame)
    return settled({ date: { fixed: told } }, "date", `all readings are of ${told}, as you said`);
  const said =
    where === undefined
      ? []
      : [["the days of the sheet: leave --date out", `"date": ${JSON.stringify(where)}`] as const];
  return asked("date", `the sheet has days of its own, and --date says ${told} for all of them`, {
    entry: "date",
    ways: [...said, [`all on ${told}`, `"date": { "fixed": "${told}" }`]],
    isAgainstTyped: where !== undefined,
    ...placeOf(sheet, shape.data[0]),
  });
};

const placeOf = (sheet: Sheet, row: SheetRow | undefined) =>
  row === undefined ? {} : { place: sheet.place(row, 0) };

/** What the sheet says of its days; undefined where it says nothing. */
const ownDays = (sheet: Sheet, shape: SheetShape, { date, columns, hints }: Known): Guess | undefined => {
  const blocks = blockDays(shape, { date, columns });
  if (blocks.length > 0) {
    const rows = blocks.map(({ row }) => String(row.row)).join(", ");
    return joined([
      guessDates(sheet, blocks, hints),
      settled({ date: { above: true } }, "date", `rows ${rows} have the day of the readings below them`),
    ]);
  }
  if (date !== undefined)
    return joined([
      { map: { date }, open: [], why: [] },
      guessDates(sheet, dateCells(sheet, shape, { date, columns }), hints),
    ]);
  const titles = shape.headings.flatMap((row) =>
    row.cells.flatMap(({ text: title }, column) => {
      const text = dateWithin(title);
      return text === undefined ? [] : [{ text, row, column }];
    }),
  );
  const [title] = titles;
  if (title !== undefined && titles.length === 1) {
    const order = guessDates(sheet, titles, hints);
    const ways = dateWays(title.text);
    const day =
      new Set(ways.values()).size === 1 ? [...ways.values()][0] : ways.get(order.map.dates ?? "ymd");
    if (order.open.length > 0 || day === undefined) return order;
    return settled({ date: { fixed: day } }, "date", `all readings are of ${day}: ${quotedCell(title)}`);
  }
  return unreadDays(sheet, shape, columns);
};

/** The days that stand in rows of their own above blocks of readings; none where no block follows the first. */
const blockDays = (
  shape: SheetShape,
  { date, columns }: Pick<Known, "date" | "columns">,
): readonly SheetText[] => {
  if (date !== undefined && !("headerRow" in date)) return [];
  const daysOf = (rows: readonly SheetRow[]): readonly SheetText[] =>
    rows.flatMap((row) => {
      const day = dayOfRow(row, columns);
      return day === undefined ? [] : [{ ...day, row }];
    });
  const below = daysOf(shape.data);
  const all = [...daysOf(shape.headings), ...below];
  const isFirst = all[0] !== undefined && (below[0] !== all[0] || below[0].row === shape.data[0]);
  const isPlain = all.every(({ row, text }) => isOfBlock(row, text));
  return below.length > 0 && isFirst && isPlain ? all : [];
};

/** `3 July 2011`, `Date: 3 July 2011` and `Date` beside it; not a sentence with a day in it. */
const isOfBlock = (row: SheetRow, day: string): boolean => {
  const title = titleOfRow(row) ?? row.cells.map(({ text }) => text).join(" ");
  return /^\s*(?:\p{L}+\s*:?\s*){0,2}$/u.test(title.replace(day, ""));
};

const lookslikeDay = /(?:^|\D)(?:19|20)\d{2}(?:\D|$)/;

/** Cells that look like days, where too few of them can be read: the column or row is offered, and what is wrong in it named. */
const unreadDays = (sheet: Sheet, shape: SheetShape, columns: readonly number[]): Guess | undefined => {
  const looks = (text: string): boolean => dateWays(text).size > 0 || lookslikeDay.test(text);
  const found = (row: SheetRow, indices: readonly number[]): readonly SheetText[] =>
    indices.flatMap((column) => {
      const text = row.cells[column]?.text ?? "";
      return text === "" ? [] : [{ text, row, column }];
    });
  const offered = (where: string, source: Source, cells: readonly SheetText[]): Guess | undefined => {
    const [bad, ...more] = cells.filter(({ text }) => dateWays(text).size === 0);
    if (bad === undefined) return undefined;
    const others = more.length === 0 ? "" : ` and ${String(more.length)} more`;
    return asked("date", `${where} looks like days, but ${quotedCell(bad)}${others} is none`, {
      entry: "date",
      ways: [
        [`the days stand in ${where}; what is none is left out`, `"date": ${JSON.stringify(source)}`],
        ["it is a slip", "write that day in the sheet as 2019-05-14"],
      ],
      place: placeIn(sheet, bad),
    });
  };
  for (const { index, role } of shape.columns) {
    if (columns.includes(index) || role === "meter" || role === "note" || role === "engine") continue;
    const cells = shape.data.flatMap((row) => found(row, [index]));
    if (cells.filter(({ text }) => looks(text)).length * 2 <= cells.length) continue;
    const guess = offered(`column ${columnLetters(index)}`, { column: columnLetters(index) }, cells);
    if (guess !== undefined) return guess;
  }
  for (const row of shape.block) {
    const cells = found(row, columns);
    if (cells.filter(({ text }) => looks(text)).length * 2 <= cells.length) continue;
    const isMerged = cells.length < columns.length;
    const source = { headerRow: row.row, ...(isMerged ? { fill: true } : {}) };
    const guess = offered(`row ${String(row.row)}`, source, cells);
    if (guess !== undefined) return guess;
  }
  return undefined;
};

const noDay = (sheet: Sheet, shape: SheetShape): Guess =>
  asked("date", "nothing in the sheet says on which day a reading was taken", {
    entry: "date",
    option: "--date",
    ways: [["all on one day", '"date": { "fixed": "2026-05-03" }', "--date 2026-05-03"]],
    ...placeOf(sheet, shape.data[0]),
  });

const dateCells = (
  sheet: Sheet,
  shape: SheetShape,
  { date, columns }: { readonly date: Source; readonly columns: readonly number[] },
): readonly SheetText[] => {
  const texts = (row: SheetText["row"], indices: readonly number[]): readonly SheetText[] =>
    indices.flatMap((column) => {
      const text = row.cells[column]?.text ?? "";
      return text === "" ? [] : [{ text, row, column }];
    });
  if ("headerRow" in date)
    return sheet.rows.filter(({ row }) => row === date.headerRow).flatMap((row) => texts(row, columns));
  if (!("column" in date)) return [];
  const index = shape.columns.find(({ index: at }) => columnRanges([at])[0] === date.column)?.index ?? -1;
  // Days come again and again: the first cell of each says what all of them do.
  const firsts = new Map<string, SheetText>();
  for (const row of sheet.rows) {
    const text = row.row < shape.firstRow ? "" : (row.cells[index]?.text ?? "");
    if (text !== "" && !firsts.has(text)) firsts.set(text, { text, row, column: index });
  }
  return [...firsts.values()];
};
