// What keeps an engine from being left as it is though no need is shown: a reading that is to be made again, a leak that nobody
// placed, or a low cylinder that nothing explains.

import type { DecisionInput } from "../../decision/index.ts";
import type { Engine } from "../../record/index.ts";
import type { CylinderAssessment } from "../assessment.ts";
import type { Deciding } from "./deciding.ts";
import type { LeaksFound } from "./rows-leak.ts";

export interface Unsettled {
  readonly unsettled?: NonNullable<DecisionInput["unsettled"]>;
  /** A cylinder held nothing in a test that speaks. */
  readonly dead: "some" | "none";
  /** It did, or reads far past its limit, or loses far more air than it may. */
  readonly farPast: "some" | "none";
}

/** @param found - what holds: nothing of a cylinder that was renewed since
 *  @source handbook/decision.md 2 (G2: no repair from cranking alone; G3), 5 */
export const unsettledOf = (deciding: Deciding, { rows, unplaced }: LeaksFound): Unsettled => {
  const { main, dry } = deciding;
  const low = (dry?.cylinders ?? []).filter(({ label }) =>
    rows.some(({ row, cylinder }) => row === "A2" && cylinder === label),
  );
  const dead = low.some(isDead) ? "some" : "none";
  const past = low.filter((one) => isFarPast(one, deciding.record.engine));
  const isFar = past.length > 0 || unplaced.some(({ lost }) => lost >= far.lost);
  const found = { dead, farPast: isFar ? "some" : "none" } as const;
  const isAsked = main?.nextTests.some(({ code, by }) => code === "repeat" && by === "rule") === true;
  if (isAsked) return { unsettled: "read-again", ...found };
  if (unplaced.length > 0) return { unsettled: "leak-unplaced", ...found };
  return past.length > 0 || low.some(isSurelyLow) ? { unsettled: "low-unexplained", ...found } : found;
};

/** So far past a limit that neither gauge nor scatter brings it back: two fifths below the others (a fifth past the usual three
 *  quarters), a fifth below the maker's minimum, or half the air lost in the leak-down; judgement. */
const far = { belowOthers: 0.4, ofMinimum: 0.8, lost: 0.5 } as const;

const isDead = ({ pressures }: CylinderAssessment): boolean => pressures.dry?.value === 0;

const isFarPast = (one: CylinderAssessment, { compressionLimits: { minimum } }: Engine): boolean => {
  const { dry } = one.pressures;
  const isBelow =
    dry !== undefined &&
    minimum !== undefined &&
    (dry.full?.corrected ?? dry.corrected) < far.ofMinimum * minimum;
  return isDead(one) || (one.belowOthers ?? 0) >= far.belowOthers || isBelow;
};

/** Not by a limit alone that lies within the doubt of its reading. */
const isSurelyLow = ({ dryStanding, flagged, atLimit }: CylinderAssessment): boolean =>
  dryStanding === "lagging" && (flagged || atLimit !== true);
