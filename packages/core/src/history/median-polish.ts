// Median polish: what a test did to all cylinders alike, and where each cylinder stands among them.

import { at } from "./at.ts";
import type { ReadingTable } from "./reading-table.ts";

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
  const effects = new Float64Array(rows);
  const levels = new Float64Array(columns);
  const tests = Array.from({ length: rows }, (_, t) => strand(ln.subarray(t * columns, (t + 1) * columns)));
  const cylinders = Array.from({ length: columns }, (_, i) =>
    strand(Float64Array.from({ length: rows }, (__, t) => at(ln, t * columns + i))),
  );
  const scratch = new Float64Array(Math.max(rows, columns));
  let sweeps = 0;
  for (let moved = Infinity; moved >= 1e-12 && sweeps < 200; sweeps += 1)
    moved = Math.max(
      settle(tests, { own: effects, across: levels, scratch }),
      settle(cylinders, { own: levels, across: effects, scratch }),
    );
  return { effects, levels, sweeps };
};

/** One row or column of the table. */
interface Strand {
  readonly values: Float64Array;
  /** Places that were read, in ascending order of what the last sweep left of them: late sweeps hardly reorder, so
   *  sorting anew costs next to nothing. */
  readonly order: Int32Array;
}

const strand = (values: Float64Array): Strand => ({
  values,
  order: Int32Array.from(values.keys()).filter((place) => !Number.isNaN(at(values, place))),
});

interface Sides {
  /** Set here. */
  readonly own: Float64Array;
  /** Taken off first. */
  readonly across: Float64Array;
  readonly scratch: Float64Array;
}

/** Sets the effect of every strand and tells how far the one that moved most has moved. */
const settle = (strands: readonly Strand[], { own, across, scratch }: Sides): number => {
  let most = 0;
  for (let s = 0; s < strands.length; s += 1) {
    const effect = medianOfRest(at(strands, s), across, scratch);
    const move = Math.abs(effect - at(own, s));
    if (move > most) most = move;
    own[s] = effect;
  }
  return most;
};

/** Median of value - across; NaN for a strand without a reading. An insertion sort that carries the order along. */
const medianOfRest = ({ values, order }: Strand, across: Float64Array, sorted: Float64Array): number => {
  const count = order.length;
  for (let k = 0; k < count; k += 1) {
    const place = at(order, k);
    const rest = at(values, place) - at(across, place);
    let slot = k;
    for (; slot > 0 && at(sorted, slot - 1) > rest; slot -= 1) {
      sorted[slot] = at(sorted, slot - 1);
      order[slot] = at(order, slot - 1);
    }
    sorted[slot] = rest;
    order[slot] = place;
  }
  if (count === 0) return NaN;
  const half = count >> 1;
  return count % 2 === 1 ? at(sorted, half) : (at(sorted, half - 1) + at(sorted, half)) / 2;
};
