// The table of a finding laid out for the sum: a row a class, so that classes out of reach cost nothing.

import type { Finding } from "../faults/faults.ts";

export interface ClassRows {
  /** P(class | cause), a row a class, aligned with the causes. */
  readonly rows: readonly Float64Array[];
  /** What the classes of each cause add up to: 1 but for rounding. */
  readonly whole: Float64Array;
}

/** Laid out once for each table, when first asked for. */
const laidOut = new WeakMap<Finding, ClassRows>();

export const classRowsOf = (finding: Finding): ClassRows => {
  const known = laidOut.get(finding);
  if (known !== undefined) return known;
  const { classes, columns } = finding;
  const rows = classes.map((_, k) => Float64Array.from(columns, ({ chances }) => chances[k] ?? 0));
  const whole = Float64Array.from(columns, ({ chances }) => chances.reduce((sum, chance) => sum + chance, 0));
  const made = { rows, whole };
  laidOut.set(finding, made);
  return made;
};

/** Writes Σ P(class | cause)·f(class) into the row that begins at a place, aligned with the causes. A reading is within reach
 *  of one class or two; what all have alike is reckoned once. */
export const mixInto = (
  values: Float64Array,
  from: number,
  { finding, densities }: { readonly finding: Finding; readonly densities: readonly number[] },
): void => {
  const { rows, whole } = classRowsOf(finding);
  const width = whole.length;
  const least = Math.min(...densities);
  for (let h = 0; h < width; h += 1) values[from + h] = least * (whole[h] ?? 0);
  for (let k = 0; k < rows.length; k += 1) {
    const more = (densities[k] ?? 0) - least;
    const ofClass = rows[k];
    if (more === 0 || ofClass === undefined) continue;
    for (let h = 0; h < width; h += 1) values[from + h] = (values[from + h] ?? 0) + more * (ofClass[h] ?? 0);
  }
};
