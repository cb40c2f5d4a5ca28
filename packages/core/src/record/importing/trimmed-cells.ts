// Cells of a row without the blanks around them and without the blank ones behind the last that holds something.

import type { TableCell } from "../csv.ts";

/** How many cells stand before the blank ones at the end. */
export const cellsHeld = (cells: readonly TableCell[]): number =>
  cells.findLastIndex(({ text }) => text.trim() !== "") + 1;

export const trimmedCells = (cells: readonly TableCell[]): readonly TableCell[] =>
  cells.slice(0, cellsHeld(cells)).map((cell) => {
    const text = cell.text.trim();
    return text.length === cell.text.length
      ? cell
      : { text, column: cell.column + Math.max(0, cell.text.search(/\S/)) };
  });
