// Chances of the groups of causes: what the causes of each add up to.

import { type CauseGroup, causeGroups, type Faults } from "../faults/faults.ts";

/** @param chances - of one cylinder, aligned with the causes @source handbook/diagnosis.md 5.1 */
export const groupsOf = (
  chances: readonly number[],
  { causes }: Pick<Faults, "causes">,
): Readonly<Record<CauseGroup, number>> => {
  const sums: Record<CauseGroup, number> = { top: 0, bottom: 0, test: 0, nothing: 0, unlisted: 0 };
  let h = 0;
  for (const { group } of causes) {
    sums[group] += chances[h] ?? 0;
    h += 1;
  }
  return sums;
};

/** How undecided it is which group holds [bits]: H = −Σ p·log2 p. @source handbook/diagnosis.md 6 */
export const groupEntropy = (groups: Readonly<Record<CauseGroup, number>>): number =>
  causeGroups.reduce((sum, group) => sum + surprise(groups[group]), 0);

const surprise = (p: number): number => (p > 0 ? -p * Math.log2(p) : 0);
