// Each cylinder against the others of the same test. What all share (gauge, battery, weather) drops out.

import type { ReadingTable } from "./reading-table.ts";

/** r_ti = y_ti - median_{j != i}(y_tj - c_j) for every cell that was read beside at least one other; NaN elsewhere.
 *  Leaving i out keeps a falling cylinder from pulling its own reference.
 *  @param levels - c of every column, NaN to keep a column out; all 0 gives ln of the ratio to the median of the others
 *  @source handbook/statistics.md B */
export const looContrasts = ({ rows, columns, ln }: ReadingTable, levels: Float64Array): Float64Array => {
  const contrasts = new Float64Array(rows * columns).fill(NaN);
  const rest = new Float64Array(columns);
  const cells = new Int32Array(columns);
  // every cell of every test comes by here, several times a history: places are known to exist, so none is checked
  for (let t = 0; t < rows; t += 1) {
    let count = 0;
    for (let i = 0; i < columns; i += 1) {
      const cell = t * columns + i;
      const value = (ln[cell] ?? NaN) - (levels[i] ?? NaN);
      if (Number.isNaN(value)) continue;
      let place = count;
      for (; place > 0 && (rest[place - 1] ?? NaN) > value; place -= 1) {
        rest[place] = rest[place - 1] ?? NaN;
        cells[place] = cells[place - 1] ?? NaN;
      }
      rest[place] = value;
      cells[place] = cell;
      count += 1;
    }
    if (count < 2) continue;
    for (let place = 0; place < count; place += 1) {
      const cell = cells[place] ?? NaN;
      contrasts[cell] = (ln[cell] ?? NaN) - medianWithout(rest, count, place);
    }
  }
  return contrasts;
};

/** Median of the first `count` sorted values but the one at `skipped`, by rank: a row is sorted once for all its cells. */
const medianWithout = (sorted: Float64Array, count: number, skipped: number): number => {
  const upper = (count - 1) >> 1;
  const high = sorted[upper < skipped ? upper : upper + 1] ?? NaN;
  if (count % 2 === 0) return high;
  return ((sorted[upper - 1 < skipped ? upper - 1 : upper] ?? NaN) + high) / 2;
};

/** Rounded so that two right programs see the same equal values (L.3). */
export const roundForTies = (contrast: number): number => Math.round(contrast * 1e9) / 1e9;
