// The level of one cylinder, where a state of the engine meets all alike: then it speaks of the cylinder only so far as it
// differs from its fellows.

import type { Evidence } from "../evidence.ts";
import type { Faults } from "../faults/faults.ts";
import { type Day, dryMeans, evenDensity, levelDoubt } from "../model/day.ts";
import type { Observed } from "../model/observed.ts";
import type { Posterior } from "../model/posterior.ts";

/** Likelihood of the level with each cause: as far as a cause of the target comes with a state of all cylinders, that of a
 *  reading as even as such a state leaves it; for the rest as the tables have it. @returns others unchanged
 *  @source handbook/diagnosis.md 3, "density of the reading" */
export const withEvenLevels = (
  observed: readonly Observed[],
  evidence: Evidence,
  {
    faults,
    day,
    posterior,
  }: {
    readonly faults: Faults;
    readonly day: Pick<Day, "unit">;
    readonly posterior: Posterior;
  },
): readonly Observed[] =>
  observed.map((one) => {
    const { finding, cylinder, likelihood } = one;
    const reading = dryMeans(evidence)[cylinder];
    const { level } = posterior;
    if (finding !== "level" || reading === undefined || level === undefined) return one;
    const ratio = reading / level;
    const doubt = levelDoubt(ratio, evidence.cylinders[cylinder]?.dry?.length ?? 1, faults);
    const likelihoods = likelihood.map((alone, h) => {
      const state = stateOfAll(faults.causes[h]?.code ?? "", { faults, posterior });
      if (state === undefined) return alone;
      const chance = posterior.cylinders[cylinder]?.[h] ?? 0;
      const part = chance > 0 ? Math.min(1, state.probability / chance) : 0;
      const even = (evenDensity(ratio, state.scatter, doubt) * day.unit) / level;
      return part * even + (1 - part) * alone;
    });
    return { ...one, likelihood: likelihoods };
  });

const stateOfAll = (
  code: string,
  { faults, posterior }: { readonly faults: Faults; readonly posterior: Posterior },
): { readonly probability: number; readonly scatter: number } | undefined => {
  const probability = posterior.states.find(({ id }) => id === `all ${code}`)?.probability;
  const state = faults.states.find(({ reach, cause }) => reach === "all" && cause === code);
  return probability === undefined || state?.reach !== "all"
    ? undefined
    : { probability, scatter: state.scatter };
};
