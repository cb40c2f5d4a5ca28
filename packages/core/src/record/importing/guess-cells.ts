// What the cells themselves settle: which part of a date is the day, which mark is the decimal mark.

import { dateWays } from "./cell-date.ts";
import { type Guess, type SheetText, asked, placeIn, quotedCell, settled, silent } from "./guess-parts.ts";
import type { DateOrder } from "./import-map.ts";
import type { ImportHints, Sheet } from "./imported.ts";
import { dateOrders, decimalMarks } from "./map-words.ts";
import type { SheetShape } from "./sheet-shape.ts";

const orderWords: Readonly<Record<DateOrder, string>> = {
  ymd: "year, month, day",
  dmy: "day, month, year",
  mdy: "month, day, year",
};

/** The order of the parts of a date, if any date of the sheet settles it. */
export const guessDates = (sheet: Sheet, cells: readonly SheetText[], { dates }: ImportHints): Guess => {
  const told = dateOrders.find((order) => order === dates);
  if (told !== undefined)
    return settled({ dates: told }, "dates", `dates are ${orderWords[told]}, as you said`);
  const read = cells.map((cell) => ({ cell, ways: dateWays(cell.text) })).filter(({ ways }) => ways.size > 0);
  const varied = read.filter(({ ways }) => new Set(ways.values()).size > 1 || ways.size < dateOrders.length);
  const [first] = varied;
  if (first === undefined) return silent;
  const fitting = dateOrders.filter((order) => varied.every(({ ways }) => ways.has(order)));
  // Two digits of a year in front are believed only where nothing else fits, or behind hyphens as in 24-05-03.
  const dashed = varied.some(({ cell }) => cell.text.includes("-"));
  const likely = fitting.filter((order) => order !== "ymd" || dashed || fitting.length === 1);
  const [order] = likely;
  if (order !== undefined && likely.length === 1) {
    const settling =
      varied.find(({ ways }) => ways.size === 1) ??
      varied.find(({ ways }) => dateOrders.some((one) => one !== "ymd" && one !== order && !ways.has(one)));
    return settled(
      { dates: order },
      "dates",
      `dates are ${orderWords[order]}: ${quotedCell((settling ?? first).cell)} is no day otherwise`,
    );
  }
  if (likely.includes("dmy") && varied.every(({ cell }) => cell.text.includes(".")))
    return settled(
      { dates: "dmy" },
      "dates",
      `dates are day, month, year: they are written with points, ${quotedCell(first.cell)}`,
    );
  const orders = likely.length > 1 ? likely : (["dmy", "mdy"] as const);
  const open = varied.find(({ ways }) => new Set(orders.map((one) => ways.get(one))).size > 1) ?? first;
  const ways = orders.map(
    (one) =>
      [
        `${open.ways.get(one) ?? "no day"} (${orderWords[one]})`,
        `"dates": "${one}"`,
        `--dates ${one}`,
      ] as const,
  );
  return asked("dates", `${quotedCell(open.cell)} can be read two ways`, {
    entry: "dates",
    option: "--dates",
    ways,
    place: placeIn(sheet, open.cell),
  });
};

const both = /^\d{1,3}([.,])\d{3}(?!\1)[.,]\d+$/;

/** Figures of any column that have a mark between the thousands and another before the decimals: they say which is which. */
export const markedTwice = (shape: SheetShape): readonly SheetText[] =>
  shape.data.flatMap((row) =>
    row.cells.flatMap(({ text }, column) => (both.test(text) ? [{ text, row, column }] : [])),
  );

const marked = /^>?\s*\+?(\d+)([.,])(\d+)(?!\d*[.,])/;

/** The decimal mark of the readings, if any of them settles it. */
export const guessDecimal = (sheet: Sheet, cells: readonly SheetText[], { decimal }: ImportHints): Guess => {
  const told = decimalMarks.find((mark) => mark === decimal);
  const word = (mark: string): string => (mark === "," ? "comma" : "point");
  if (told !== undefined) return settled({ decimal: told }, "decimal", `decimal ${word(told)}, as you said`);
  const found = cells.flatMap((cell) => {
    const last = both.test(cell.text) ? cell.text.replace(/^\d{1,3}[.,]/, "") : cell.text;
    const [, whole = "", typed, rest = ""] = marked.exec(last) ?? [];
    const isOpen = last === cell.text && rest.length === 3 && /^[1-9]\d{0,2}$/.test(whole);
    const mark = decimalMarks.find((one) => one === typed);
    return mark === undefined ? [] : [{ cell, mark, isOpen }];
  });
  const [first] = found;
  if (first === undefined)
    return { map: { decimal: sheet.delimiter === "," ? "." : "," }, open: [], why: [] };
  const other = found.find(({ mark }) => mark !== first.mark);
  const certain = found.find(({ isOpen }) => !isOpen);
  if (other === undefined && certain !== undefined)
    return settled(
      { decimal: first.mark },
      "decimal",
      `decimal ${word(first.mark)}: ${quotedCell(certain.cell)}`,
    );
  const text =
    other === undefined
      ? `${quotedCell(first.cell)} can be read two ways`
      : `${quotedCell(first.cell)} and ${quotedCell(other.cell)} have two different marks`;
  const bare = first.cell.text.replace(/[.,]/, "");
  return asked("decimal", text, {
    entry: "decimal",
    option: "--decimal",
    ways:
      other === undefined
        ? [
            [
              `decimal ${word(first.mark)}: ${first.cell.text.replace(",", ".")}`,
              `"decimal": "${first.mark}"`,
              `--decimal ${word(first.mark)}`,
            ],
            [`thousands: ${bare}`, `write ${bare} in the sheet`],
          ]
        : [
            ["decimal comma", '"decimal": ","', "--decimal comma"],
            ["decimal point", '"decimal": "."', "--decimal point"],
          ],
    place: placeIn(sheet, (other ?? first).cell),
  });
};
