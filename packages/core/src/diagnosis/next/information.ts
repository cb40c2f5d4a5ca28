// How much a test is expected to tell about the group of causes.

import { groupEntropy, groupsOf } from "../answer/groups.ts";
import type { Faults, FindingName } from "../faults/faults.ts";
import { weightAmong } from "../model/weights.ts";

/** P(outcome | cause) of one finding, a row a cause: the columns of the tables raised to the weight it would have among the
 *  findings of its kind that are there already, and brought back to 1. @source handbook/diagnosis.md 6 */
export const outcomesOf = (
  finding: FindingName,
  told: readonly FindingName[],
  { findings, settings }: Faults,
): readonly (readonly number[])[] => {
  const { columns, dependence } = findings[finding];
  const ofKind =
    dependence === undefined ? [] : told.filter((other) => findings[other].dependence === dependence);
  const weight = weightAmong(ofKind.length + 1, settings.sharedWeight);
  return columns.map(({ chances }) => {
    const raised = weight === 1 ? chances : chances.map((chance) => chance ** weight);
    const sum = raised.reduce((total, one) => total + one, 0);
    return raised.map((one) => one / sum);
  });
};

/** Outcomes of two findings of one test together: every one with every other, independent given the cause. */
export const together = (
  first: readonly (readonly number[])[],
  second: readonly (readonly number[])[],
): readonly (readonly number[])[] =>
  first.map((row, h) => {
    const both: number[] = [];
    for (const a of row) for (const b of second[h] ?? []) both.push(a * b);
    return both;
  });

/** I = H(Q) − Σ P(o)·H(Q | o) bits, Q the group of causes, P(o) = Σ q(z)·P(o | z).
 *  @param chances - q, of the target, aligned with the causes @param outcomes - P(o | z), a row a cause
 *  @returns 0 … log2 of the number of groups @source handbook/diagnosis.md 6 */
export const expectedInformation = (
  chances: readonly number[],
  outcomes: readonly (readonly number[])[],
  faults: Pick<Faults, "causes">,
): number => {
  const count = outcomes[0]?.length ?? 0;
  const joint = new Array<number>(chances.length).fill(0);
  let left = 0;
  for (let o = 0; o < count; o += 1) {
    let chance = 0;
    for (let h = 0; h < joint.length; h += 1) {
      const one = (chances[h] ?? 0) * (outcomes[h]?.[o] ?? 0);
      joint[h] = one;
      chance += one;
    }
    if (chance === 0) continue;
    for (let h = 0; h < joint.length; h += 1) joint[h] = (joint[h] ?? 0) / chance;
    left += chance * groupEntropy(groupsOf(joint, faults));
  }
  return Math.max(0, groupEntropy(groupsOf(chances, faults)) - left);
};
