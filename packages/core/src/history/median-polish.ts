// Median polish: what a test did to all cylinders alike, and where each cylinder stands among them.

import type { ReadingTable } from "./reading-table.ts";
import { sortRest, type Strand, strandOf } from "./strand.ts";

export interface Polish {
  /** a_t, one a row; NaN for a row without a reading. */
  readonly effects: Float64Array;
  /** c_i, one a column, not centred; NaN for a column without a reading. */
  readonly levels: Float64Array;
  readonly sweeps: number;
}

/** y_ti = a_t + c_i + rest. From a = 0, c = 0 a sweep sets every a_t = median_i(y_ti - c_i), then every
 *  c_i = median_t(y_ti - a_t); it ends when nothing moved by 1e-12, or after 200 sweeps (no error).
 *  @source handbook/statistics.md L.3 (Tukey 1977, from memory); the order of rows and columns is part of the contract */
export const medianPolish = ({ rows, columns, ln }: ReadingTable): Polish => {
  const effects = sideOf(
    Array.from({ length: rows }, (_, t) => strandOf(ln, { from: t * columns, every: 1, count: columns })),
  );
  const levels = sideOf(
    Array.from({ length: columns }, (_, i) => strandOf(ln, { from: i, every: columns, count: rows })),
  );
  const scratch = new Float64Array(Math.max(rows, columns));
  let sweeps = 0;
  for (let moved = Infinity; moved >= 1e-12 && sweeps < 200; sweeps += 1)
    moved = Math.max(settle(effects, levels, scratch), settle(levels, effects, scratch));
  return { effects: effects.values, levels: levels.values, sweeps };
};

/** The rows, or the columns, and what the polish has made of each. */
interface Side {
  readonly strands: readonly Strand[];
  readonly values: Float64Array;
  /** How far the value that moved most has moved, summed over the sweeps. */
  moved: number;
}

const sideOf = (strands: readonly Strand[]): Side => ({
  strands,
  values: new Float64Array(strands.length),
  moved: 0,
});

/** Sets the effect of every strand, the median of what is left of it, and tells how far the one that moved most has moved. */
const settle = (own: Side, { values: across, moved }: Side, sorted: Float64Array): number => {
  const { strands, values } = own;
  const now = { moved, sorted };
  let most = 0;
  for (let s = 0; s < strands.length; s += 1) {
    const strand = strands[s];
    if (strand === undefined) continue;
    if (!(moved < strand.trusted)) sortRest(strand, across, now);
    const { values: read, low, high } = strand;
    const lower = (read[low] ?? NaN) - (across[low] ?? NaN);
    const effect = low === high ? lower : (lower + ((read[high] ?? NaN) - (across[high] ?? NaN))) / 2;
    const move = Math.abs(effect - (values[s] ?? NaN));
    if (move > most) most = move;
    values[s] = effect;
  }
  own.moved += most;
  return most;
};
