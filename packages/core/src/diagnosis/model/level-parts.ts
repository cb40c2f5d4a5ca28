// How likely the level of one cylinder is over the grid of levels, as parts that the causes share. A table has six classes
// and many more causes, and each class is within reach of a stretch of the grid: what is summed over the grid is summed by
// class where there is something to sum, and given to the causes once.

import type { Faults } from "../faults/faults.ts";
import { classRowsOf } from "./class-rows.ts";
import type { AtDay } from "./day.ts";
import type { Weighed } from "./findings.ts";
import { rowsOf } from "./rows.ts";

/** Neighbouring places of the grid of levels, the last one excluded. */
export interface Levels {
  readonly from: number;
  readonly to: number;
}

/** By place; nothing outside its stretch. */
interface Part extends Levels {
  readonly values: Float64Array;
}

/** L(cause; place) = Σ over parts of share(part, cause)·value(part, place). */
export interface LevelParts {
  readonly parts: readonly Part[];
  /** A row a part, aligned with the causes; absent where each cause is a part of its own. */
  readonly shares?: readonly Float64Array[];
  /** Likelihood with a cause, by place; each made where it is first asked for. */
  readonly columns: Float64Array[];
}

/** What all classes have alike is a part of its own. A likelihood that is raised to a power is no mixture any more, nor is a
 *  product: then each cause is a part.
 *  @param found - what depends on the level */
export const levelPartsOf = (
  found: readonly Weighed[],
  places: readonly AtDay[],
  faults: Faults,
): LevelParts => {
  const [first, ...others] = found;
  const width = faults.causes.length;
  if (first === undefined)
    return { parts: [whole(ones(Math.max(1, places.length)))], shares: [ones(width)], columns: [] };
  if (first.weight !== 1 || others.length > 0) {
    const { values } = rowsOf(found, places, faults);
    const column = (h: number): Float64Array =>
      Float64Array.from(places, (_, m) => values[m * width + h] ?? 0);
    return { parts: faults.causes.map((_, h) => whole(column(h))), columns: [] };
  }
  const { rows, whole: shareOfAll } = classRowsOf(faults.findings[first.finding]);
  const least = new Float64Array(places.length);
  const more = rows.map(() => new Float64Array(places.length));
  places.forEach((at, m) => {
    const densities = first.classesAt(at);
    const low = Math.min(...densities);
    least[m] = low;
    for (let b = 0; b < more.length; b += 1) {
      const ofClass = more[b];
      if (ofClass !== undefined) ofClass[m] = (densities[b] ?? 0) - low;
    }
  });
  return { parts: [whole(least), ...more.map(stretch)], shares: [shareOfAll, ...rows], columns: [] };
};

const ones = (count: number): Float64Array => new Float64Array(count).fill(1);

const whole = (values: Float64Array): Part => ({ from: 0, to: values.length, values });

const stretch = (values: Float64Array): Part => {
  const from = values.findIndex((value) => value !== 0);
  return from === -1
    ? { from: 0, to: 0, values }
    : { from, to: values.findLastIndex((value) => value !== 0) + 1, values };
};

/** Writes Σ over causes of amount·L, by place. */
export const sumCauses = (
  { parts, shares }: LevelParts,
  amounts: Float64Array,
  { sums, levels: { from, to } }: { readonly sums: Float64Array; readonly levels: Levels },
): void => {
  sums.fill(0, from, to);
  for (let b = 0; b < parts.length; b += 1) {
    const part = parts[b];
    const amount = shares === undefined ? (amounts[b] ?? 0) : product(amounts, shares[b]);
    if (part !== undefined && amount !== 0) addPart(sums, amount, part, { from, to });
  }
};

/** Writes Σ over places of amount·L, by cause. */
export const sumPlaces = (
  { parts, shares }: LevelParts,
  amounts: Float64Array,
  { sums, levels: { from, to } }: { readonly sums: Float64Array; readonly levels: Levels },
): void => {
  sums.fill(0);
  for (let b = 0; b < parts.length; b += 1) {
    const part = parts[b];
    if (part === undefined) continue;
    let sum = 0;
    const end = Math.min(to, part.to);
    for (let m = Math.max(from, part.from); m < end; m += 1) sum += (amounts[m] ?? 0) * (part.values[m] ?? 0);
    if (sum === 0) continue;
    const share = shares?.[b];
    if (share === undefined) sums[b] = sum;
    else for (let h = 0; h < sums.length; h += 1) sums[h] = (sums[h] ?? 0) + sum * (share[h] ?? 0);
  }
};

/** L(cause; place) at every place. */
export const levelColumn = (parts: LevelParts, cause: number): Float64Array =>
  (parts.columns[cause] ??= columnOf(parts, cause));

const columnOf = ({ parts, shares }: LevelParts, cause: number): Float64Array => {
  const [first] = parts;
  if (shares === undefined) return parts[cause]?.values ?? none;
  const column = new Float64Array(first?.values.length ?? 0);
  for (let b = 0; b < parts.length; b += 1) {
    const part = parts[b];
    if (part !== undefined) addPart(column, shares[b]?.[cause] ?? 0, part, part);
  }
  return column;
};

const none = new Float64Array(0);

const addPart = (sums: Float64Array, amount: number, part: Part, { from, to }: Levels): void => {
  const { values } = part;
  const end = Math.min(to, part.to);
  for (let m = Math.max(from, part.from); m < end; m += 1)
    sums[m] = (sums[m] ?? 0) + amount * (values[m] ?? 0);
};

const product = (amounts: Float64Array, shares: Float64Array | undefined): number => {
  let sum = 0;
  for (let h = 0; h < amounts.length; h += 1) sum += (amounts[h] ?? 0) * (shares?.[h] ?? 0);
  return sum;
};
