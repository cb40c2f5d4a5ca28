// What keeps an engine from being left as it is though no need is shown: a reading that is to be made again, a leak that nobody
// placed, or a low cylinder that nothing explains.

import type { DecisionInput } from "../../decision/index.ts";
import type { CylinderAssessment } from "../assessment.ts";
import type { Deciding } from "./deciding.ts";
import type { LeaksFound } from "./rows-leak.ts";

export interface Unsettled {
  readonly unsettled?: NonNullable<DecisionInput["unsettled"]>;
  /** A cylinder held nothing in a test that speaks. */
  readonly dead: "some" | "none";
}

/** @param found - what holds: nothing of a cylinder that was renewed since
 *  @source handbook/decision.md 2 (G2: no repair from cranking alone; G3), 5 */
export const unsettledOf = (deciding: Deciding, { rows, unplaced }: LeaksFound): Unsettled => {
  const { main, dry } = deciding;
  const low = (dry?.cylinders ?? []).filter(({ label }) =>
    rows.some(({ row, cylinder }) => row === "A2" && cylinder === label),
  );
  const dead = low.some(({ pressures }) => pressures.dry?.value === 0) ? "some" : "none";
  const isAsked = main?.nextTests.some(({ code, by }) => code === "repeat" && by === "rule") === true;
  if (isAsked) return { unsettled: "read-again", dead };
  if (unplaced.length > 0) return { unsettled: "leak-unplaced", dead };
  return low.some(isSurelyLow) ? { unsettled: "low-unexplained", dead } : { dead };
};

/** Not by a limit alone that lies within the doubt of its reading. */
const isSurelyLow = ({ dryStanding, flagged, atLimit }: CylinderAssessment): boolean =>
  dryStanding === "lagging" && (flagged || atLimit !== true);
