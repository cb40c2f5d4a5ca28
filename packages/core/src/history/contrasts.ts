// Each cylinder against the others of the same test. What all share (gauge, battery, weather) drops out.

import { at } from "./at.ts";
import type { ReadingTable } from "./reading-table.ts";

/** r_ti = y_ti - median_{j != i}(y_tj - c_j) for every cell that was read beside at least one other; NaN elsewhere.
 *  Leaving i out keeps a falling cylinder from pulling its own reference.
 *  @param levels - c of every column, NaN to keep a column out; all 0 gives ln of the ratio to the median of the others
 *  @source handbook/statistics.md B */
export const looContrasts = ({ rows, columns, ln }: ReadingTable, levels: Float64Array): Float64Array => {
  const contrasts = new Float64Array(rows * columns).fill(NaN);
  const rest = new Float64Array(columns);
  const column = new Int32Array(columns);
  for (let t = 0; t < rows; t += 1) {
    let count = 0;
    for (let i = 0; i < columns; i += 1) {
      const value = at(ln, t * columns + i) - at(levels, i);
      if (value !== value) continue;
      let place = count;
      for (; place > 0 && at(rest, place - 1) > value; place -= 1) {
        rest[place] = at(rest, place - 1);
        column[place] = at(column, place - 1);
      }
      rest[place] = value;
      column[place] = i;
      count += 1;
    }
    if (count < 2) continue;
    for (let place = 0; place < count; place += 1) {
      const cell = t * columns + at(column, place);
      contrasts[cell] = at(ln, cell) - medianWithout(rest, count, place);
    }
  }
  return contrasts;
};

/** Median of the first `count` sorted values but the one at `skipped`. */
const medianWithout = (sorted: Float64Array, count: number, skipped: number): number => {
  const value = (place: number): number => at(sorted, place < skipped ? place : place + 1);
  const half = (count - 1) >> 1;
  return (count - 1) % 2 === 1 ? value(half) : (value(half - 1) + value(half)) / 2;
};

/** Rounded so that two right programs see the same equal values (L.3). */
export const roundForTies = (contrast: number): number => Math.round(contrast * 1e9) / 1e9;
