// One value of a list by its place in ascending order, without sorting the rest.

import { at } from "./guard.ts";

/** The value at `place` of `values` in ascending order, counted from 0. Reorders the list between `from` and `to` (the one
 *  after the last), outside which nothing may belong: what comes before the place is then no larger, what comes behind no
 *  smaller. Hoare's selection; not checked, no value may be NaN. */
export const orderStatistic = (
  values: Float64Array,
  place: number,
  from = 0,
  to: number = values.length,
): number => {
  let low = from;
  let high = to - 1;
  // the places are known to exist: a check of each would cost as much again
  while (low < high) {
    const pivot = middleOfThree(values, low, high);
    let i = low;
    let j = high;
    while (i <= j) {
      while ((values[i] ?? NaN) < pivot) i += 1;
      while ((values[j] ?? NaN) > pivot) j -= 1;
      if (i > j) break;
      const swapped = values[i] ?? NaN;
      values[i] = values[j] ?? NaN;
      values[j] = swapped;
      i += 1;
      j -= 1;
    }
    if (place <= j) high = j;
    else if (place >= i) low = i;
    else break;
  }
  return at(values, place);
};

/** Median of a list, or of its first `count` values, which may be reordered; not checked. */
export const medianInPlace = (values: Float64Array, count: number = values.length): number => {
  const half = count >> 1;
  const upper = orderStatistic(values, half, 0, count);
  if (count % 2 === 1) return upper;
  return (largestBefore(values, half) + upper) / 2;
};

const largestBefore = (values: Float64Array, end: number): number => {
  let most = -Infinity;
  for (let i = 0; i < end; i += 1) most = Math.max(most, values[i] ?? NaN);
  return most;
};

/** A pivot that neither ordered nor equal values make a bad one. */
const middleOfThree = (values: Float64Array, low: number, high: number): number => {
  const a = values[low] ?? NaN;
  const b = values[(low + high) >> 1] ?? NaN;
  const c = values[high] ?? NaN;
  return a < b ? (b < c ? b : Math.max(a, c)) : a < c ? a : Math.max(b, c);
};
