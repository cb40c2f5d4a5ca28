// A first map for a stranger's sheet. What a word or a cell of the sheet settles is taken, with the reason; where two
// readings are possible it is asked, never guessed.

import { columnLetters, columnRanges } from "./columns.ts";
import { guessDecimal, markedTwice } from "./guess-cells.ts";
import { guessDay } from "./guess-date.ts";
import { guessExtras } from "./guess-extras.ts";
import { guessKind } from "./guess-kind.ts";
import { guessEngines } from "./guess-engines.ts";
import { engineCandidate, guessLayout } from "./guess-layout.ts";
import { type Guess, type SheetText, asked, joined, placeIn, quotedCell, silent } from "./guess-parts.ts";
import { guessUnit } from "./guess-units.ts";
import type { ImportMap } from "./import-map.ts";
import type { GuessedMap, ImportHints, Sheet } from "./imported.ts";
import { oneCylinderPart } from "./guess-one-cylinder.ts";
import { separators } from "./map-words.ts";
import { type SheetShape, looksRead, shapeOf } from "./sheet-shape.ts";
import { looksTogether } from "./together.ts";
import { usualNotTaken } from "./usual-not-taken.ts";

/** Looked at for what the cells settle. */
const mostCells = 20_000;

/** A map for a sheet, what it leaves open, and why it says what it says. */
export const guessImportMap = (sheet: Sheet, hints: ImportHints = {}): GuessedMap => {
  const start: ImportMap = {
    schema: "sealtrend/import-map@1",
    ...(hints.encoding === undefined ? {} : { encoding: hints.encoding }),
    firstRow: 1,
    readings: { columns: [] },
    notTaken: usualNotTaken,
    sameDay: "takes",
    engines: [],
  };
  if (sheet.rows.length === 0) return { map: start, open: [], why: [] };
  const shape = shapeOf(sheet);
  const { columns, guess: layout } = guessLayout(sheet, shape, hints);
  const together = togetherGuess(sheet, shape);
  if (together !== undefined) return { map: start, open: together.open, why: [] };
  const cells = readingCells(shape, columns);
  const seen = { sheet, shape, columns, cells };
  const unit = guessUnit(seen, hints);
  const days = guessDay(sheet, shape, { date: layout.map.date, columns, hints });
  const parts = joined([
    separatorPart(sheet, shape),
    guessDecimal(sheet, [...cells, ...markedTwice(shape)], hints),
    layout,
    unit,
    guessKind(seen, unit, hints),
    guessExtras(seen, hints),
    days,
  ]);
  const map = { ...start, ...parts.map };
  const candidate = engineCandidate(shape, columns);
  const isOffered = map.engine === undefined && candidate !== undefined;
  const named = isOffered ? { ...map, engine: { column: columnLetters(candidate) } } : map;
  const engines = columns.length === 0 ? silent : guessEngines(sheet, named, columns, hints);
  const isKindOpen = parts.open.some(({ code }) => code === "what");
  const doubt = isKindOpen ? silent : oneCylinderPart(sheet, { ...named, ...engines.map }, columns);
  const whole = joined([columns.length === 0 ? noReadings(sheet, shape) : silent, parts, engines, doubt]);
  // a map that is laid down has no entry that is still asked for
  const { cylinder, ...rest } = map;
  const isSure = cylinder !== undefined && doubt.open.length === 0;
  return {
    map: { ...rest, ...(isSure ? { cylinder } : {}), ...engines.map },
    open: whole.open,
    why: whole.why,
  };
};

const noReadings = (sheet: Sheet, shape: SheetShape): Guess => {
  const [row] = shape.data.length > 0 ? shape.data : sheet.rows;
  return asked("layout", "no column of the sheet looks like readings", {
    entry: "readings",
    ways: [["name the columns", `"readings": { "columns": ["${columnRanges([1, 2, 3, 4]).join("")}"] }`]],
    ...(row === undefined ? {} : { place: sheet.place(row, 0) }),
  });
};

/** Several cylinders in each cell have no names of their own: nothing else is asked before they are parted. */
const togetherGuess = (sheet: Sheet, shape: SheetShape): Guess | undefined => {
  for (const { index: column, role } of shape.columns) {
    if (role === "note" || role === "date") continue;
    const cells = shape.data.flatMap((row) => {
      const text = row.cells[column]?.text ?? "";
      return text === "" ? [] : [{ text, row, column }];
    });
    const found = cells.filter(({ text }) => looksTogether(text));
    const [first] = found;
    if (first === undefined || found.length * 2 < cells.length) continue;
    return asked("layout", `${quotedCell(first)} holds several readings`, {
      entry: "readings",
      ways: [
        [
          "a cell a cylinder",
          `split column ${columnLetters(column)} (text to columns in the spreadsheet), with 1, 2, 3 above`,
        ],
      ],
      place: placeIn(sheet, first),
    });
  }
  return undefined;
};

const readingCells = (shape: SheetShape, columns: readonly number[]): readonly SheetText[] =>
  shape.data
    .flatMap((row) =>
      columns.flatMap((column) => {
        const text = row.cells[column]?.text ?? "";
        return looksRead(text) ? [{ text, row, column }] : [];
      }),
    )
    .slice(0, mostCells);

const blanksAtEnd = (raw: string, delimiter: string): number => {
  const text = raw.trimEnd();
  let from = text.length;
  while (text[from - 1] === delimiter) from--;
  return text.length - from;
};

/** Commas between cells and as decimal marks make rows that are wider than their headings. */
const separatorPart = (sheet: Sheet, shape: SheetShape): Guess => {
  const delimiter = separators.find((one) => one === sheet.delimiter);
  const known: Guess = delimiter === undefined ? silent : { map: { delimiter }, open: [], why: [] };
  // merged headings have blank cells behind them, which are no part of the row's cells
  const heads = Math.max(
    0,
    ...shape.block.map(({ cells, raw }) => cells.length + blanksAtEnd(raw, sheet.delimiter)),
  );
  const wide = shape.data.filter(({ cells }) => cells.length > heads);
  const [first] = wide;
  if (sheet.delimiter !== "," || heads < 2 || first === undefined || wide.length * 2 < shape.data.length)
    return known;
  const text = first.raw.slice(0, 60);
  return joined([
    known,
    asked("delimiter", `row ${String(first.row)} has more cells than its headings: ${JSON.stringify(text)}`, {
      entry: "delimiter",
      ways: [
        ["its commas are decimal marks too", "save the CSV again with ; between the cells"],
        ["it holds something without a heading", "write a heading above it in the sheet"],
      ],
      place: sheet.place(first, heads),
    }),
  ]);
};
