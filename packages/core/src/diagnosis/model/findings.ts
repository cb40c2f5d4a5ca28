// What was found on one cylinder, as likelihoods: one row a finding, aligned with the causes of the tables.

import type { Evidence } from "../evidence.ts";
import { type Faults, type FindingName, findingNames } from "../faults/faults.ts";
import { mixInto } from "./class-rows.ts";
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
export const likelihoodsOf = (one: Weighed, at: AtDay, faults: Faults): readonly number[] => {
  const row = new Float64Array(faults.causes.length);
  likelihoodInto(row, 0, { one: { ...one, weight: 1 }, at, faults });
  return Array.from(row);
};

/** Writes the likelihood of a finding to its weight into the row that begins at a place, aligned with the causes.
 *  P = trust·Σ P(class | cause)·f(class) + (1 − trust)·Σ P(class | no fault)·f(class) */
export const likelihoodInto = (
  values: Float64Array,
  from: number,
  { one, at, faults }: { readonly one: Weighed; readonly at: AtDay; readonly faults: Faults },
): void => {
  const finding = faults.findings[one.finding];
  const to = from + finding.columns.length;
  const densities = one.classesAt(at);
  const trust = one.trustAt(at);
  const { weight } = one;
  mixInto(values, from, { finding, densities });
  if (trust !== 1) {
    const rest = (1 - trust) * mixed(finding.columns[0]?.chances ?? [], densities);
    for (let i = from; i < to; i += 1) values[i] = trust * (values[i] ?? 0) + rest;
  }
  if (weight !== 1) for (let i = from; i < to; i += 1) values[i] = (values[i] ?? 0) ** weight;
};
