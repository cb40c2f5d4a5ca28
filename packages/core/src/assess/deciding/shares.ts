// Where the need would arise if it does: by the diagnosis where it finds a fault, else as is usual for the pattern.

import type { DecisionInput } from "../../decision/index.ts";
import type { TestAssessment } from "../assessment.ts";
import { isWorthExplaining } from "../causes/worth-explaining.ts";

export interface SharesFound {
  readonly shares: DecisionInput["shares"];
  readonly from: "diagnosis" | "usual-one-low" | "usual-evenly-low" | "usual-healthy";
}

/** From here on the diagnosis leads with no fault, and where one would arise it cannot say. */
const noFault = 0.5;

/** Shares are of the need, so what the diagnosis gives to no fault at all is taken out first. Its group `bottom` is rings and
 *  bores: a worn bore is told by measuring alone.
 *  @source handbook/decision.md 3, w_c */
export const sharesOf = (main: TestAssessment | undefined): SharesFound => {
  const groups = main?.diagnosis?.groups;
  if (main !== undefined && groups !== undefined && groups.nothing < noFault && isWorthExplaining(main)) {
    const fault = 1 - groups.nothing;
    return {
      shares: { top: groups.top / fault, rings: groups.bottom / fault, bottom: 0 },
      from: "diagnosis",
    };
  }
  const low =
    main?.cylinders.filter(({ standing }) => standing === "lagging" || standing === "suspect") ?? [];
  if (low.length > 0) return { shares: "one-low", from: "usual-one-low" };
  if (main?.levelSince !== undefined) return { shares: "evenly-low", from: "usual-evenly-low" };
  return { shares: "healthy", from: "usual-healthy" };
};
