// Rows of a sheet that keep where their text stands, and are cut into cells only when somebody looks at them: a sheet of 200,000
// rows may have a million cells, and each is looked at a few times, one row after the other.

import type { TableCell } from "../csv.ts";
import { cellColumns, plainCells } from "../located-rows.ts";
import type { SheetRow } from "./imported.ts";
import { trimmedCells } from "./trimmed-cells.ts";

/** Rows whose cells are kept: the one at hand, and the headings that it is compared with. */
const remembered = 16;

/** What the rows of a sheet share. */
export class CutText {
  readonly text: string;
  readonly #delimiter: string;
  readonly #kept = new Map<SheetRow, readonly TableCell[]>();

  /** @param text - in which quote marks are sound, if there are any */
  constructor(text: string, delimiter: string) {
    this.text = text;
    this.#delimiter = delimiter;
  }

  cells(row: SheetRow): readonly TableCell[] {
    const known = this.#kept.get(row);
    if (known !== undefined) return known;
    const [oldest] = this.#kept.size < remembered ? [] : this.#kept.keys();
    if (oldest !== undefined) this.#kept.delete(oldest);
    const cells = trimmedCells(this.all(row.raw));
    this.#kept.set(row, cells);
    return cells;
  }

  /** The cells of a row as they stand. */
  all(raw: string): readonly TableCell[] {
    return raw.includes('"') ? quotedCells(raw, this.#delimiter) : plainCells(raw, this.#delimiter);
  }
}

/** The cells of a row whose quote marks are sound: a cell that begins with one ends with one. */
const quotedCells = (raw: string, delimiter: string): readonly TableCell[] => {
  const columns = cellColumns(raw, delimiter);
  return columns.map((column, i) => {
    const typed = raw.slice(column - 1, (columns[i + 1] ?? raw.length + 2) - 2);
    const text = typed.startsWith('"') ? typed.slice(1, -1).replaceAll('""', '"') : typed;
    return { text, column };
  });
};

interface Where {
  /** As a spreadsheet counts. */
  readonly row: number;
  readonly line: number;
  readonly offset: number;
  readonly end: number;
}

/** One of them. */
export class CutRow implements SheetRow {
  readonly row: number;
  readonly line: number;
  readonly offset: number;
  readonly #end: number;
  readonly #of: CutText;

  constructor(of: CutText, { row, line, offset, end }: Where) {
    this.#of = of;
    this.row = row;
    this.line = line;
    this.offset = offset;
    this.#end = end;
  }

  get raw(): string {
    return this.#of.text.slice(this.offset, this.#end);
  }

  get cells(): readonly TableCell[] {
    return this.#of.cells(this);
  }
}
