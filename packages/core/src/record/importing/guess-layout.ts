// Which columns hold readings, and where engine, date and cylinder stand. Where two layouts are possible, both are told.

import { columnLetters, columnRanges } from "./columns.ts";
import { dateWays } from "./cell-date.ts";
import { unitIn } from "./heading-text.ts";
import { cylinderPart } from "./guess-cylinder.ts";
import { type Guess, asked, joined, settled, silent } from "./guess-parts.ts";
import type { Source } from "./import-map.ts";
import type { ImportHints, Sheet, SheetRow } from "./imported.ts";
import { type SheetColumn, type SheetShape, cylinderHeadings } from "./sheet-shape.ts";
import { isOrdinal, isSummary, kindNamed, plainText } from "./sheet-words.ts";

export interface Layout {
  readonly columns: readonly number[];
  readonly guess: Guess;
}

/** The layout of a sheet: readings, engine, date, cylinder, take. */
export const guessLayout = (sheet: Sheet, shape: SheetShape, hints: ImportHints): Layout => {
  const heads = cylinderHeadings(shape);
  const cylinder = withRole(shape, "cylinder");
  const engine = withRole(shape, "engine");
  const isNamed = engine !== undefined || hints.engine !== undefined;
  const isRow = heads !== undefined && cylinder === undefined;
  const figures = shape.columns.filter(isFigures);
  const sure = figures.filter(({ heads: above, role }) => role === "reading" || above.some(saysReading));
  const loose = figures.filter((column) => !sure.includes(column));
  const inHeads = heads?.columns.filter((i) => !isEmptyColumn(shape.columns[i])) ?? [];
  const columns =
    heads !== undefined && (isRow || isNamed) && inHeads.length > 0
      ? inHeads
      : (sure.length > 0 && isNamed ? sure : figures).map(({ index }) => index);
  const above = shape.block.filter((row) => (row !== heads?.row || !isRow) && !isCounting(row, columns));
  const ordinals = shape.block.find((row) => isCounting(row, columns));
  const spare = isRow ? [] : loose.filter(({ index }) => !columns.includes(index));
  const parts = [
    settled(
      { firstRow: shape.firstRow, readings: { columns: columnRanges(columns) } },
      "readings",
      `readings stand in ${columnRanges(columns).join(", ")} from row ${String(shape.firstRow)} on`,
    ),
    cylinderPart(sheet, shape, { heads: isRow ? heads.row : undefined, column: cylinder, columns, isNamed }),
    ...(ordinals !== undefined && !isRow
      ? [
          settled(
            { take: { headerRow: ordinals.row } },
            "take",
            `row ${String(ordinals.row)} numbers the takes: ${textsAbove(ordinals, columns).slice(0, 2).join(", ")}`,
          ),
        ]
      : []),
    ...(heads !== undefined && !isRow && isNamed
      ? [
          settled(
            { take: { headerRow: heads.row.row } },
            "take",
            `row ${String(heads.row.row)} numbers the takes: the cylinders have column ${columnLetters(cylinder?.index ?? 0)}`,
          ),
        ]
      : []),
    ...(heads !== undefined && !isRow && !isNamed
      ? [
          asked(
            "layout",
            `row ${String(heads.row.row)} counts 1, 2, 3, and column ${columnLetters(cylinder?.index ?? 0)} has the cylinders`,
            {
              entry: "take",
              ways: [
                ["repeats of one engine", `"take": { "headerRow": ${String(heads.row.row)} }`],
                ["engines by number", `"engine": { "headerRow": ${String(heads.row.row)} }`],
              ],
              place: sheet.place(heads.row, columns[0] ?? 0),
            },
          ),
        ]
      : []),
    datePart(shape, above, columns),
    enginePart(sheet, shape, { above, columns, hints, engine }),
    ...spare.map(({ index, heads: [head = ""] }) =>
      settled(
        {},
        "readings",
        `column ${columnLetters(index)} ${JSON.stringify(head)} is left: nothing says that it holds readings`,
      ),
    ),
  ];
  return { columns, guess: joined(parts) };
};

/** Whether each column of readings has a repeat above it: `1st`, `2nd`. */
const isCounting = (row: SheetRow, columns: readonly number[]): boolean =>
  columns.length > 0 && columns.every((i) => isOrdinal(row.cells[i]?.text ?? ""));

const withRole = (shape: SheetShape, role: SheetColumn["role"]): SheetColumn | undefined =>
  shape.columns.find((column) => column.role === role);

const isEmptyColumn = (column: SheetColumn | undefined): boolean =>
  column === undefined || column.numbers + column.dates + column.texts === 0;

/** A column of figures that no heading calls something else. */
const isFigures = ({ role, numbers, dates, texts }: SheetColumn): boolean =>
  (role === undefined || role === "reading") && numbers > 0 && numbers >= dates + texts;

const saysReading = (head: string): boolean => kindNamed(head) !== undefined || unitIn(head) !== undefined;

/** A heading row as a source: filled where cells above the readings are blank, as merged cells are. */
const headerSource = (row: SheetRow, columns: readonly number[]): Source => {
  const isBlank = columns.some((i) => (row.cells[i]?.text ?? "") === "");
  return { headerRow: row.row, ...(isBlank ? { fill: true } : {}) };
};

/** A column as a source: filled where it begins with something and has blanks beside readings further down. */
const columnSource = (shape: SheetShape, index: number, columns: readonly number[]): Source => {
  const text = (row: SheetRow, i: number): string => row.cells[i]?.text ?? "";
  const read = shape.data.filter(
    (row) => columns.some((i) => text(row, i) !== "") && !row.cells.some((cell) => isSummary(cell.text)),
  );
  const isMerged =
    read.some((row) => text(row, index) === "") && shape.data.some((row) => text(row, index) !== "");
  return { column: columnLetters(index), ...(isMerged ? { fill: true } : {}) };
};

const fillText = (source: Source): string =>
  "fill" in source
    ? "column" in source
      ? "; a blank takes what stands above it"
      : "; a blank takes what stands left of it"
    : "";

const textsAbove = (row: SheetRow, columns: readonly number[]): readonly string[] =>
  columns.map((i) => row.cells[i]?.text ?? "").filter((text) => text !== "");

const datePart = (shape: SheetShape, above: readonly SheetRow[], columns: readonly number[]): Guess => {
  const byHead = shape.columns.filter(({ role, index }) => role === "date" && !columns.includes(index));
  const byCells = shape.columns.filter(
    ({ role, index, dates, texts, numbers }) =>
      role === undefined && dates > texts && dates >= numbers && dates > 0 && !columns.includes(index),
  );
  const [column] = byHead.length > 0 ? byHead : byCells;
  if (column !== undefined) {
    const source = columnSource(shape, column.index, columns);
    return settled(
      { date: source },
      "date",
      `column ${columnLetters(column.index)} has the dates${fillText(source)}`,
    );
  }
  const row = above.find((one) => {
    const texts = textsAbove(one, columns);
    return texts.length > 0 && texts.every((text) => dateWays(text).size > 0);
  });
  if (row === undefined) return silent;
  const source = headerSource(row, columns);
  return settled({ date: source }, "date", `row ${String(row.row)} has the dates${fillText(source)}`);
};

/** A column of words that no heading explains: it may name the engines. */
export const engineCandidate = (shape: SheetShape, columns: readonly number[]): number | undefined =>
  shape.columns.find(
    ({ role, texts, numbers, dates, index }) =>
      role === undefined && texts > numbers + dates && !columns.includes(index),
  )?.index;

const enginePart = (
  sheet: Sheet,
  shape: SheetShape,
  {
    above,
    columns,
    hints,
    engine,
  }: {
    readonly above: readonly SheetRow[];
    readonly columns: readonly number[];
    readonly hints: ImportHints;
    readonly engine: SheetColumn | undefined;
  },
): Guess => {
  if (hints.engine !== undefined)
    return settled(
      { engine: { fixed: hints.engine } },
      "engine",
      `all readings are of ${hints.engine}, as you said`,
    );
  if (engine !== undefined) {
    const source = columnSource(shape, engine.index, columns);
    return settled(
      { engine: source },
      "engine",
      `column ${columnLetters(engine.index)} names the engines${fillText(source)}`,
    );
  }
  const row = above.find((one) => {
    const texts = textsAbove(one, columns);
    const isOther = texts.some((text) => dateWays(text).size > 0 || saysReading(text));
    return new Set(texts.map(plainText)).size >= 2 && !isOther;
  });
  if (row !== undefined) {
    const source = headerSource(row, columns);
    return settled(
      { engine: source },
      "engine",
      `row ${String(row.row)} names the engines${fillText(source)}`,
    );
  }
  const titled = (hints.known ?? []).filter(({ id, name = id }) =>
    shape.headings.some(({ cells }) =>
      cells.some(({ text }) => [id, name].map(plainText).includes(plainText(text))),
    ),
  );
  const [only] = titled;
  if (only !== undefined && titled.length === 1)
    return settled({ engine: { fixed: only.id } }, "engine", `the heading names ${only.id}`);
  const candidate = engineCandidate(shape, columns);
  const [first] = shape.data;
  const letters = candidate === undefined ? undefined : columnLetters(candidate);
  return asked("engine", "nothing in the sheet says which engine a reading is of", {
    entry: "engine",
    option: "--engine",
    ways: [
      ["all of one engine", '"engine": { "fixed": "pump" }', "--engine ID"],
      ...(letters === undefined
        ? []
        : [[`column ${letters} names them`, `"engine": { "column": "${letters}" }`] as const]),
    ],
    ...(first === undefined ? {} : { place: sheet.place(first, candidate ?? 0) }),
  });
};
