// Columns of a sheet by the letters a spreadsheet shows, by ranges of letters, and by what stands above them.

import type { ColumnName } from "./import-map.ts";
import type { Sheet } from "./imported.ts";
import { plainText } from "./sheet-words.ts";

/** The letters of a column. @param index - from 0 */
export const columnLetters = (index: number): string => {
  const rest = Math.floor(index / 26) - 1;
  return `${rest < 0 ? "" : columnLetters(rest)}${String.fromCharCode(65 + (index % 26))}`;
};

const letters = /^[A-Z]{1,3}$/;

/** The column that letters name, from 0; undefined for any other text. */
const columnIndex = (text: string): number | undefined =>
  letters.test(text)
    ? [...text].reduce((index, letter) => index * 26 + letter.charCodeAt(0) - 64, 0) - 1
    : undefined;

/** The column of a name, from 0: its letters, else the only column that has this text in a row above the readings. */
export const columnNamed = (sheet: Sheet, name: ColumnName, firstRow: number): number | undefined => {
  const index = columnIndex(name);
  if (index !== undefined) return index < sheet.columns ? index : undefined;
  const wanted = plainText(name);
  const above = sheet.rows.filter(({ row }) => row < firstRow);
  const found = new Set(
    above.flatMap(({ cells }) =>
      cells.flatMap(({ text }, i) => (text !== "" && plainText(text) === wanted ? [i] : [])),
    ),
  );
  return found.size === 1 ? [...found][0] : undefined;
};

/** The columns of a name or a range such as `C-AP`, from 0; undefined where one of them is not there. */
export const columnsNamed = (
  sheet: Sheet,
  name: ColumnName,
  firstRow: number,
): readonly number[] | undefined => {
  const [, from = "", to = ""] = /^([A-Z]{1,3})\s*-\s*([A-Z]{1,3})$/.exec(name) ?? [];
  if (from === "") {
    const one = columnNamed(sheet, name, firstRow);
    return one === undefined ? undefined : [one];
  }
  const [first = 0, last = -1] = [columnIndex(from), columnIndex(to)];
  return first > last || last >= sheet.columns
    ? undefined
    : Array.from({ length: last - first + 1 }, (_, i) => first + i);
};

/** Columns as a map names them, neighbours brought together: `C-F`, `H`. @param indices - from 0, ascending */
export const columnRanges = (indices: readonly number[]): readonly ColumnName[] => {
  const runs: [number, number][] = [];
  for (const index of indices) {
    const last = runs.at(-1);
    if (last?.[1] === index - 1) last[1] = index;
    else runs.push([index, index]);
  }
  return runs.map(([from, to]) =>
    from === to ? columnLetters(from) : `${columnLetters(from)}-${columnLetters(to)}`,
  );
};
