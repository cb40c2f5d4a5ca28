// The shape of a sheet before anybody said what it means: where its headings end, and what each column holds.

import { conditionNamed, isEngineState, isSupply } from "./condition-headings.ts";
import { dateWays } from "./cell-date.ts";
import type { Sheet, SheetRow } from "./imported.ts";
import { unitIn, withoutUnitAndKind } from "./heading-text.ts";
import { looksTogether } from "./together.ts";
import { usualNotTaken } from "./usual-not-taken.ts";
import {
  type HeadWord,
  cylinderNamed,
  headWords,
  isOrdinal,
  isSummary,
  kindNamed,
  plainText,
  saysCylinder,
} from "./sheet-words.ts";

export interface SheetColumn {
  readonly index: number;
  /** What stands above it, top down, blank ones left out. */
  readonly heads: readonly string[];
  /** What a heading says that it is; a column of tests.csv by its own name. */
  readonly role?: HeadWord | "condition" | "summary";
  /** The column of tests.csv that a condition is. */
  readonly condition?: string;
  readonly numbers: number;
  readonly dates: number;
  readonly texts: number;
}

export interface SheetShape {
  /** Rows above the readings: titles and the block of headings. */
  readonly headings: readonly SheetRow[];
  /** Of these the block right above the readings. */
  readonly block: readonly SheetRow[];
  readonly firstRow: number;
  readonly data: readonly SheetRow[];
  readonly columns: readonly SheetColumn[];
}

const looked = 5_000;
const mostHeadings = 40;
const figure =
  /^>?\s*\+?\d{1,5}(?:[.,]\d{1,4})?(?:\s*\/\s*\d+(?:[.,]\d+)?)?\s*(?:psig?|kpa|bar|mpa|kgf?\/cm[2²]|%)?\s*\??$/i;
const noReading = new Set(usualNotTaken.map(plainText));

/** Whether a cell looks like a reading. */
export const looksRead = (text: string): boolean => figure.test(text);

/** What a heading says its column is, by the word alone or before a bracket. */
const headWordOf = (text: string): HeadWord | undefined => {
  const plain = plainText(text.replace(/[([].*$/, ""));
  return headNames.find((name) => headWords[name].has(plain) || headWords[name].has(plainText(text)));
};
const headNames: readonly HeadWord[] = [
  "date",
  "engine",
  "cylinder",
  "what",
  "take",
  "unit",
  "gauge",
  "meter",
  "by",
  "note",
  "set_aside",
  "ignition",
  "reading",
];

/** The shape of a sheet with at least one row. */
export const shapeOf = (sheet: Sheet): SheetShape => {
  const { rows } = sheet;
  const top = rows.slice(0, mostHeadings);
  const strong = top.findIndex(isStrongHeading);
  const anchor = strong === -1 ? top.findIndex((row) => isPlainHeading(row) && filled(row) >= 2) : strong;
  let end = anchor + 1;
  while (anchor !== -1 && end < rows.length && end < mostHeadings && isFurtherHeading(rows[end])) end++;
  const headings = rows.slice(0, end);
  const block = anchor === -1 ? [] : rows.slice(blockStart(rows, anchor), end);
  const data = rows.slice(end, end + looked);
  return {
    headings,
    block,
    firstRow: data[0]?.row ?? (headings.at(-1)?.row ?? 0) + 1,
    data,
    columns: Array.from({ length: sheet.columns }, (_, index) => columnOf(index, block, data)),
  };
};

/** Rows right above the anchor with several cells belong to the block: merged dates over cylinder numbers. */
const blockStart = (rows: readonly SheetRow[], anchor: number): number => {
  let start = anchor;
  while (start > 0 && filled(rows[start - 1]) >= 2 && !hasFigures(rows[start - 1])) start--;
  return start;
};

const filled = (row: SheetRow | undefined): number =>
  row?.cells.filter(({ text }) => text !== "").length ?? 0;

const texts = (row: SheetRow): readonly string[] =>
  row.cells.map(({ text }) => text).filter((text) => text !== "");

const isDate = (text: string): boolean => dateWays(text).size > 0;

const hasFigures = (row: SheetRow | undefined): boolean =>
  row !== undefined && texts(row).some((text) => looksRead(text)) && !isCylinderRun(row);

/** Bare numbers that count 1, 2, 3 and begin again are cylinders, not readings. */
const isCylinderRun = (row: SheetRow): boolean => {
  const numbers = texts(row).filter((text) => looksRead(text));
  return (
    numbers.length >= 2 &&
    numbers.every((text, i) => {
      const before = Number(numbers[i - 1] ?? 0);
      return /^\d{1,2}$/.test(text) && (Number(text) === before + 1 || (Number(text) === 1 && before > 0));
    })
  );
};

const isPlainHeading = (row: SheetRow): boolean =>
  !hasFigures(row) && !texts(row).some((text) => noReading.has(plainText(text)));

const isStrongHeading = (row: SheetRow): boolean => {
  const all = texts(row);
  if (hasFigures(row)) return false;
  return (
    isCylinderRun(row) ||
    all.filter((text) => saysCylinder(withoutUnitAndKind(text))).length >= 2 ||
    all.filter((text) => headWordOf(text) !== undefined).length >= 2 ||
    (all.filter(isDate).length >= 2 && all.length >= 3)
  );
};

const isFurtherHeading = (row: SheetRow | undefined): boolean => {
  if (row === undefined || !isPlainHeading(row)) return false;
  const all = texts(row);
  return (
    isStrongHeading(row) ||
    (!all.some(isDate) &&
      all.every(
        (text) =>
          unitIn(text) !== undefined ||
          headWordOf(text) !== undefined ||
          kindNamed(text) !== undefined ||
          isOrdinal(text),
      ))
  );
};

const columnOf = (index: number, block: readonly SheetRow[], data: readonly SheetRow[]): SheetColumn => {
  const heads = block.map(({ cells }) => cells[index]?.text ?? "").filter((text) => text !== "");
  const found = data.map(({ cells }) => cells[index]?.text ?? "").filter((text) => text !== "");
  const dates = found.filter(isDate).length;
  const named = roleOf(heads, dates);
  const state = named === "engine" && isEngineState(found) ? "engine_temp" : undefined;
  const condition = state ?? heads.map(conditionNamed).find((name) => name !== undefined);
  // a supply whose unit nothing names is no condition yet, and no reading of a cylinder either
  const supply = heads.some(isSupply) ? "condition" : undefined;
  const role = condition === undefined ? (named ?? supply) : "condition";
  const isFigure = (text: string): boolean => looksRead(text) || looksTogether(text);
  return {
    index,
    heads,
    ...(role === undefined ? {} : { role }),
    ...(condition === undefined ? {} : { condition }),
    numbers: found.filter(isFigure).length,
    dates,
    texts: found.filter((text) => !isFigure(text) && !isDate(text) && !noReading.has(plainText(text))).length,
  };
};

/** The last heading counts; one that says date over no date names what stands beside it, where another heading says what is below. */
const roleOf = (heads: readonly string[], dates: number): SheetColumn["role"] => {
  if (heads.some(isSummary)) return "summary";
  const [last, ...others] = heads
    .toReversed()
    .map(headWordOf)
    .filter((role) => role !== undefined);
  return last === "date" && dates === 0 ? (others[0] ?? last) : last;
};

/** The heading row that names cylinders above columns, and the columns; undefined where there is none. */
export const cylinderHeadings = (
  shape: SheetShape,
): { readonly row: SheetRow; readonly columns: readonly number[] } | undefined => {
  for (const row of shape.block.toReversed()) {
    const named = row.cells.flatMap(({ text }, i) => {
      const bare = withoutUnitAndKind(text);
      const role = shape.columns[i]?.role;
      return cylinderNamed(bare) !== undefined && (role === undefined || role === "reading") ? [i] : [];
    });
    const says = named.some((i) => saysCylinder(withoutUnitAndKind(row.cells[i]?.text ?? "")));
    if (named.length >= 2 || (says && named.length === 1)) return { row, columns: named };
  }
  return undefined;
};
