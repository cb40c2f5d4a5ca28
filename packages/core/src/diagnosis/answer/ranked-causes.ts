// The causes of the target by their chances, each as it is shown and with what speaks for it and against it.

import type { Diagnosis, RankedCause } from "../diagnosis.ts";
import type { Evidence } from "../evidence.ts";
import type { Faults } from "../faults/faults.ts";
import { soundCause } from "../model/known-causes.ts";
import type { Posterior } from "../model/posterior.ts";
import { cylindersOf } from "./cause-cylinders.ts";
import { reasonsOf, type Witness } from "./reasons.ts";
import { shownAs } from "./shown.ts";

/** The likeliest first, equal ones in the order of the tables. A cause is capped where only cranking readings speak; no
 *  fault where an even loss would not show. @source handbook/diagnosis.md 3, 5 */
export const rankedCauses = (
  target: number,
  witnesses: readonly Witness[],
  {
    faults,
    posterior,
    banks,
    capped,
    evenLoss,
  }: {
    readonly faults: Faults;
    readonly posterior: Posterior;
    readonly banks: Evidence["banks"];
  } & Pick<Diagnosis, "capped" | "evenLoss">,
): readonly RankedCause[] => {
  const chances = posterior.cylinders[target] ?? [];
  const cap = faults.settings.crankingCap;
  const caps = {
    sound: evenLoss === "cannot be seen" ? cap : 1,
    fault: capped ? cap : 1,
  };
  return faults.causes
    .map(({ code, group }, place): RankedCause => {
      const probability = chances[place] ?? 0;
      return {
        code,
        cylinders: cylindersOf({ place, code }, target, { posterior, banks }),
        group,
        probability,
        ...shownAs(probability, code === soundCause ? caps.sound : caps.fault, faults),
        ...reasonsOf(place, chances, witnesses),
      };
    })
    .sort((a, b) => b.probability - a.probability);
};
