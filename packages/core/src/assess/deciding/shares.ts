// Where the need would arise: by the diagnosis where there is something to explain, else as is usual for the pattern.

import type { DecisionInput } from "../../decision/index.ts";
import type { TestAssessment } from "../assessment.ts";
import { isWorthExplaining } from "../causes/worth-explaining.ts";

export interface SharesFound {
  readonly shares: DecisionInput["shares"];
  readonly from: "diagnosis" | "usual-one-low" | "usual-evenly-low" | "usual-healthy";
}

/** The group `bottom` of the diagnosis is rings and bores: a worn bore is told by measuring alone.
 *  @source handbook/decision.md 3, w_c */
export const sharesOf = (main: TestAssessment | undefined): SharesFound => {
  const groups = main?.diagnosis?.groups;
  if (main !== undefined && groups !== undefined && isWorthExplaining(main))
    return { shares: { top: groups.top, rings: groups.bottom, bottom: 0 }, from: "diagnosis" };
  const low =
    main?.cylinders.filter(({ standing }) => standing === "lagging" || standing === "suspect") ?? [];
  if (low.length > 0) return { shares: "one-low", from: "usual-one-low" };
  if (main?.levelSince !== undefined) return { shares: "evenly-low", from: "usual-evenly-low" };
  return { shares: "healthy", from: "usual-healthy" };
};
