// What was found on one cylinder, seen at the middle of what is known of the day: for giving reasons.

import type { Evidence } from "../evidence.ts";
import type { Faults, FindingName } from "../faults/faults.ts";
import type { Day } from "./day.ts";
import { findingsOn, likelihoodsOf } from "./findings.ts";
import type { Posterior } from "./posterior.ts";

export interface Observed {
  readonly finding: FindingName;
  readonly cylinder: number;
  /** The likeliest class. */
  readonly word: string;
  /** Aligned with the classes: density of the finding within each; of a word, 1 and 0 (path: shares of those heard). */
  readonly classes: readonly number[];
  /** Aligned with the causes. */
  readonly likelihood: readonly number[];
  /** Its power among the findings of its kind. */
  readonly weight: number;
}

export const observedOn = (
  cylinder: number,
  evidence: Evidence,
  { faults, day, posterior }: { readonly faults: Faults; readonly day: Day; readonly posterior: Posterior },
): readonly Observed[] => {
  const at = {
    level: posterior.level ?? 1,
    oilFactor: posterior.oilFactor ?? 1,
    testerShift: posterior.testerShift,
  };
  return findingsOn(cylinder, { evidence, faults, day }).map((one) => {
    const classes = one.classesAt(at);
    const best = classes.indexOf(Math.max(...classes));
    return {
      finding: one.finding,
      cylinder,
      word: faults.findings[one.finding].classes[best] ?? "",
      classes,
      likelihood: likelihoodsOf(one, at, faults),
      weight: one.weight,
    };
  });
};
