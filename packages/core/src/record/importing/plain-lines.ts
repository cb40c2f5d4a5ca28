// The lines of a sheet in which nothing is quoted, cut into cells only when somebody looks at them: a sheet of 200,000
// rows may have a million cells, and each is looked at a few times, one row after the other.

import { trimmedCells } from "./trimmed-cells.ts";
import type { TableCell } from "../csv.ts";
import { afterLineEnd, isLineEnd, plainCells } from "../located-rows.ts";
import type { SheetRow } from "./imported.ts";

/** A longer line, or one row more, may be what only the whole parser tells: a cell, a row, a number of columns too large. */
const mostCharacters = 2_000;
const mostRows = 200_000;

/** Rows whose cells are kept: the one at hand, and the headings that it is compared with. */
const remembered = 16;

export interface PlainLine {
  readonly line: number;
  readonly raw: string;
  readonly offset: number;
}

/** The lines that hold a character; undefined where the text needs the whole parser: for quotes, marks at its beginning,
 *  half characters, and what is too large, which it tells. */
export const plainLines = (text: string): readonly PlainLine[] | undefined => {
  if (text.includes('"') || /^\uFEFF|^sep=.[\r\n]/i.test(text) || /\p{Surrogate}/u.test(text))
    return undefined;
  const lines: PlainLine[] = [];
  let line = 1;
  for (let offset = 0; offset < text.length; line += 1) {
    const end = endOfLine(text, offset);
    if (end > offset) {
      const raw = text.slice(offset, end);
      if (raw.length > mostCharacters || lines.length >= mostRows) return undefined;
      lines.push({ line, raw, offset });
    }
    offset = afterLineEnd(text, end);
  }
  return lines;
};

const endOfLine = (text: string, from: number): number => {
  let at = from;
  while (at < text.length && !isLineEnd(text, at)) at += 1;
  return at;
};

/** A row that keeps its text and not its cells. */
class PlainRow implements SheetRow {
  readonly row: number;
  readonly line: number;
  readonly raw: string;
  readonly offset: number;
  readonly #cut: (row: SheetRow) => readonly TableCell[];

  constructor(row: number, { line, raw, offset }: PlainLine, cut: (row: SheetRow) => readonly TableCell[]) {
    this.row = row;
    this.line = line;
    this.raw = raw;
    this.offset = offset;
    this.#cut = cut;
  }

  get cells(): readonly TableCell[] {
    return this.#cut(this);
  }
}

/** Makes rows of lines; the last ones that were looked at keep their cells. */
export const plainRowMaker = (delimiter: string): ((row: number, line: PlainLine) => SheetRow) => {
  const kept = new Map<SheetRow, readonly TableCell[]>();
  const cut = (row: SheetRow): readonly TableCell[] => {
    const known = kept.get(row);
    if (known !== undefined) return known;
    const [oldest] = kept.size < remembered ? [] : kept.keys();
    if (oldest !== undefined) kept.delete(oldest);
    const cells = trimmedCells(plainCells(row.raw, delimiter));
    kept.set(row, cells);
    return cells;
  };
  return (row, line) => new PlainRow(row, line, cut);
};
