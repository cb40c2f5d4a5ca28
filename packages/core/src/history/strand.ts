// One row or column of a table under polish, and the middle of what is left of it. The polish asks for that in every sweep, so
// a strand keeps its order from one sweep to the next, and sorts only where the middle may have changed.

export interface Strand {
  readonly values: Float64Array;
  /** First the places that were read, in ascending order of what was left of them when last sorted. */
  readonly order: Int32Array;
  /** How many were read. */
  readonly read: number;
  /** The places of the two in the middle, or twice of the one; -1 in a strand without a reading. */
  low: number;
  high: number;
  /** How far the other side may move in all until the middle of the order can be another. */
  trusted: number;
}

/** @param every - distance between its values in the table  @param from - of the first of them */
export const strandOf = (
  table: Float64Array,
  { from, every, count }: { readonly from: number; readonly every: number; readonly count: number },
): Strand => {
  const values = new Float64Array(count);
  const order = new Int32Array(count);
  let read = 0;
  for (let place = 0; place < count; place += 1) {
    const value = table[from + place * every] ?? NaN;
    values[place] = value;
    if (!Number.isNaN(value)) order[read++] = place;
  }
  return { values, order, read, low: -1, high: -1, trusted: read === 0 ? Infinity : -Infinity };
};

/** More than rounding makes of the differences of two logarithms, and of the moves of 200 sweeps added up. */
const rounding = 1e-12;

/** Sorts a strand that has a reading by value - across, and finds its middle.
 *  @param moved - how far the largest of `across` has moved in all  @param sorted - scratch, as long as the strand */
export const sortRest = (
  strand: Strand,
  across: Float64Array,
  { moved, sorted }: { readonly moved: number; readonly sorted: Float64Array },
): void => {
  const { values, order, read: count } = strand;
  // an insertion sort that carries the order along: late sweeps hardly reorder, so it costs one walk
  for (let k = 0; k < count; k += 1) {
    const place = order[k] ?? NaN;
    const rest = (values[place] ?? NaN) - (across[place] ?? NaN);
    let slot = k;
    for (; slot > 0 && (sorted[slot - 1] ?? NaN) > rest; slot -= 1) {
      sorted[slot] = sorted[slot - 1] ?? NaN;
      order[slot] = order[slot - 1] ?? NaN;
    }
    sorted[slot] = rest;
    order[slot] = place;
  }
  const upper = count >> 1;
  const lower = (count - 1) >> 1;
  strand.low = order[lower] ?? NaN;
  strand.high = order[upper] ?? NaN;
  const below = lower === 0 ? Infinity : (sorted[lower] ?? NaN) - (sorted[lower - 1] ?? NaN);
  const above = upper === count - 1 ? Infinity : (sorted[upper + 1] ?? NaN) - (sorted[upper] ?? NaN);
  // two neighbours can come no nearer than by twice what the other side moves
  strand.trusted = moved + (Math.min(below, above) - rounding) / 2;
};
