// Where the readings of a row of tests.csv stand in the sheet: kept as rows and columns, for a place of which something is told is
// one among thousands.

import type { Place } from "../../problem/index.ts";
import type { ReadFrom, Sheet, SheetRow } from "./imported.ts";

/** The cells of one row, by cylinder in the engine's order. */
export class CellPlaces implements ReadFrom {
  readonly #sheet: Sheet;
  readonly #columns: (number | undefined)[];
  #first: CellAt | undefined;
  /** Of a sheet with a row a reading; elsewhere all of them stand in the first. */
  #rows: (SheetRow | undefined)[] | undefined;

  constructor(sheet: Sheet, cylinders: number) {
    this.#sheet = sheet;
    this.#columns = Array.from({ length: cylinders });
  }

  note(at: number, cell: CellAt): void {
    this.#first ??= cell;
    if (cell.row !== this.#first.row) (this.#rows ??= [])[at] = cell.row;
    this.#columns[at] = cell.column;
  }

  /** The cell of a cylinder; the first of the row where it has none. */
  cell(at: number | undefined): CellAt | undefined {
    const column = at === undefined ? undefined : this.#columns[at];
    if (at === undefined || column === undefined || this.#first === undefined) return this.#first;
    return { row: this.#rows?.[at] ?? this.#first.row, column };
  }

  place(at?: number): Place {
    const cell = this.cell(at);
    return cell === undefined ? {} : this.#sheet.place(cell.row, cell.column);
  }
}

export interface CellAt {
  readonly row: SheetRow;
  readonly column: number;
}
