// What was found on one cylinder, as likelihoods: one row a finding, aligned with the causes of the tables.

import type { Evidence } from "../evidence.ts";
import { type Faults, type FindingName, findingNames } from "../faults/faults.ts";
import { mixed } from "./classes.ts";
import type { AtDay, Day } from "./day.ts";
import { type DayPart, readers } from "./readers.ts";
import { weightAmong } from "./weights.ts";

/** One finding as a mixture: density of the finding in each class, and what of it mixes in besides. */
export interface Weighed {
  readonly finding: FindingName;
  /** Its power among the findings of its kind on this cylinder. */
  readonly weight: number;
  /** Density in each class of the table at a place of the day. */
  readonly classesAt: (at: AtDay) => readonly number[];
  /** How far the column of the cause counts against that of no fault, 1 for all but the path of the air. */
  readonly trustAt: (at: AtDay) => number;
  readonly dependsOn: DayPart;
}

/** Findings present on a cylinder, in the order of the tables. */
export const findingsOn = (
  cylinder: number,
  { evidence, faults, day }: { readonly evidence: Evidence; readonly faults: Faults; readonly day: Day },
): readonly Weighed[] => {
  const own = evidence.cylinders[cylinder] ?? {};
  const present = findingNames.flatMap((finding): Omit<Weighed, "weight">[] => {
    const classes = readers[finding](own, { finding, evidence, faults, day, cylinder });
    return classes === undefined ? [] : [{ finding, trustAt: () => 1, ...classes }];
  });
  return present.map((one) => {
    const kind = faults.findings[one.finding].dependence;
    const ofKind =
      kind === undefined
        ? 1
        : present.filter(({ finding }) => faults.findings[finding].dependence === kind).length;
    return { ...one, weight: weightAmong(ofKind, faults.settings.sharedWeight) };
  });
};

/** Likelihood of a finding under each cause at a place of the day, without its weight. */
export const likelihoodsOf = (one: Weighed, at: AtDay, faults: Faults): readonly number[] =>
  Array.from(
    multiplyIn(new Float64Array(faults.causes.length).fill(1), { ...one, weight: 1 }, { at, faults }),
  );

/** Multiplies a row, aligned with the causes, by the likelihood of a finding to its weight.
 *  P = trust·Σ P(class | cause)·f(class) + (1 − trust)·Σ P(class | no fault)·f(class) @returns the row */
export const multiplyIn = (
  row: Float64Array,
  one: Weighed,
  { at, faults }: { readonly at: AtDay; readonly faults: Faults },
): Float64Array => {
  const { columns } = faults.findings[one.finding];
  const classes = one.classesAt(at);
  const trust = one.trustAt(at);
  const { weight } = one;
  const rest = trust === 1 ? 0 : (1 - trust) * mixed(columns[0]?.chances ?? [], classes);
  for (let h = 0; h < columns.length; h += 1) {
    const likelihood = trust * mixed(columns[h]?.chances ?? [], classes) + rest;
    row[h] = (row[h] ?? 0) * (weight === 1 ? likelihood : likelihood ** weight);
  }
  return row;
};
