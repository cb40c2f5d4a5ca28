// Findings that the leading cause does not fit, though another would.

import type { Reason } from "../diagnosis.ts";
import type { Faults } from "../faults/faults.ts";
import { placeOfCause } from "../model/known-causes.ts";
import type { Posterior } from "../model/posterior.ts";
import { reason, type Witness } from "./reasons.ts";

/** Below this share of what the best-fitting cause gives, a finding does not fit; above that chance a state that meets all
 *  alike takes the level of one cylinder with it. @source handbook/diagnosis.md 5.5, judgement */
const limits = { share: 0.15, state: 0.2 } as const;

/** @param leading - code of the leading cause @param witnesses - findings of the target
 *  @returns those with likelihood(leading)/largest likelihood below .15, which is their ratio; the worst first. No fault
 *  may lead: then two tests contradict each other */
export const misfitsOf = (
  leading: string,
  witnesses: readonly Witness[],
  { faults, posterior }: { readonly faults: Faults; readonly posterior: Pick<Posterior, "states"> },
): readonly Reason[] => {
  const place = placeOfCause(faults, leading);
  const common = posterior.states.some(
    ({ id, probability }) => id === `all ${leading}` && probability > limits.state,
  );
  return witnesses
    .filter(({ finding }) => !(common && finding === "level"))
    .flatMap((witness) => reason(witness, place, shareOfBest(witness, place)))
    .filter(({ ratio }) => ratio < limits.share)
    .sort((a, b) => a.ratio - b.ratio);
};

const shareOfBest = ({ likelihood }: Witness, place: number): number =>
  (likelihood[place] ?? 0) / Math.max(...likelihood);
