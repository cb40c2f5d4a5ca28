// A spreadsheet's CSV as rows and cells. No row is taken for a header; what holds nothing is counted and left.

import { type Problem, problem } from "../../problem/index.ts";
import { parseRows, placeOf } from "../csv.ts";
import { CutRow, CutText } from "./cut-rows.ts";
import type { Sheet, SheetRow } from "./imported.ts";
import { separators } from "./map-words.ts";
import { type PlainLine, plainLines } from "./plain-lines.ts";
import { cellsHeld } from "./trimmed-cells.ts";

/** Lines that are looked at for the separator. */
const sample = 60;

/** Splits a sheet into cells; faults of shape are reported, and their lines are not there.
 *  @param options - the separator where it is known: `,` `;` or tab */
export const parseSheet = (
  text: string,
  file: string,
  options: { readonly delimiter?: string } = {},
): { readonly sheet: Sheet; readonly problems: readonly Problem[] } => {
  const delimiter = options.delimiter ?? separatorOf(text);
  const plain = plainLines(text);
  const { rows, columns, trailing, faults } =
    plain === undefined
      ? wholeParsed(text, file, delimiter)
      : { ...heldRows(plain, new CutText(text, delimiter), 0), faults: [] };
  const sheet: Sheet = {
    file,
    delimiter,
    rows,
    columns,
    blankRows: Math.max(0, (rows.at(-1)?.row ?? 0) - rows.length),
    trailing,
    place: (one, column) => placeOf({ file }, one, one.cells[column]),
  };
  const isEmpty = faults.length === 0 && rows.length === 0;
  const empty = problem("import-sheet-empty", {}, { file, line: 1, column: 1 });
  return { sheet, problems: isEmpty ? [empty] : faults };
};

type Held = Pick<Sheet, "rows" | "columns" | "trailing">;

const wholeParsed = (
  text: string,
  file: string,
  delimiter: string,
): Held & { readonly faults: readonly Problem[] } => {
  const { clean, faults, problems, located } = parseRows(text, file, delimiter);
  const lines = located.map(({ line, offset, raw }) => ({ line, offset, end: offset + raw.length }));
  const preamble = /^\uFEFF?sep=.(?=\r?\n|\r)/i.test(text) ? 1 : 0;
  return { ...heldRows(lines, new CutText(clean, delimiter), preamble), faults: [...faults, ...problems] };
};

/** The rows that hold something, and what blank cells and rows there are besides.
 *  @param preamble - lines in front that no spreadsheet shows as a row */
const heldRows = (lines: Iterable<PlainLine>, source: CutText, preamble: number): Held => {
  const rows: SheetRow[] = [];
  let row = -preamble;
  let lastLine = 0;
  let columns = 0;
  let cells = 0;
  let behind = 0;
  for (const { line, offset, end } of lines) {
    const raw = source.text.slice(offset, end);
    row += line - lastLine;
    lastLine = line + (raw.match(/\r\n|\r|\n/g)?.length ?? 0);
    const all = source.all(raw);
    const held = cellsHeld(all);
    behind = held === 0 ? behind + 1 : 0;
    if (held === 0) continue;
    cells += all.length - held;
    columns = Math.max(columns, held);
    rows.push(new CutRow(source, { row, line, offset, end }));
  }
  return { rows, columns, trailing: { cells, rows: behind } };
};

/** The separator that the `sep=` line names, else the one that most lines have, and of two the one that cuts more of them into
 *  equally many cells: a title above the table and decimal commas in it mislead a look at the first line. */
const separatorOf = (text: string): string => {
  const named = /^\uFEFF?sep=(.)(?=\r?\n|\r)/i.exec(text)?.[1];
  const stated = separators.find((one) => one === named);
  if (stated !== undefined) return stated;
  const lines = text
    .slice(0, 65_536)
    .replace(/"(?:[^"]|"")*"/g, "")
    .split(/\r\n|\r|\n/)
    .filter((line) => line !== "")
    .slice(0, sample);
  const score = (mark: string): number => {
    const counts = lines.map((line) => line.split(mark).length - 1).filter((count) => count > 0);
    const alike = counts.map((count) => counts.filter((other) => other === count).length);
    return counts.length * (sample + 1) + Math.max(0, ...alike);
  };
  return [";", "\t", ","].reduce((best, mark) => (score(mark) > score(best) ? mark : best), ";");
};
