// A cylinder among its fellows, in words.

import type { CylinderVerdict } from "./forward-test.ts";

/** A cylinder among its fellows: not low, perhaps low, or surely low. */
export type Standing = "even" | "suspect" | "lagging";

export interface StandingEvidence {
  readonly verdict: CylinderVerdict;
  /** How often this cylinder was read in this test. */
  readonly repeats: number;
  /** It was flagged in the test before this one. */
  readonly flaggedBefore: boolean;
  /** It reads below a published limit: the maker's, else three quarters of the highest. */
  readonly belowLimit: boolean;
  /** Its repeats lie further apart than repeats do, and not each of them would be flagged by itself. */
  readonly contradicted?: boolean;
}

/** Flagged in the test before as well, or beyond 1 % on two repeats that do not contradict each other: no slip of one reading. */
export const isConfirmed = ({
  verdict,
  repeats,
  flaggedBefore,
  contradicted = false,
}: Omit<StandingEvidence, "belowLimit">): boolean =>
  verdict.kind !== "not-read" &&
  verdict.flagged &&
  !contradicted &&
  (flaggedBefore || (verdict.flaggedAt1 && repeats >= 2));

/** Where repeats contradict each other their mean is no reading: it is `suspect`, whatever else speaks against it.
 *  One flag is only `suspect`: healthy engines show one in 3 to 6 of 100 tests (simulated), so repeat it. `lagging`
 *  needs more: flagged at 1 % on two repeats, flagged in two tests running, below a published limit, or no compression.
 *  @returns undefined for a cylinder that was not read */
export const standing = (evidence: StandingEvidence): Standing | undefined => {
  const { verdict, belowLimit, contradicted = false } = evidence;
  if (verdict.kind === "not-read") return undefined;
  if (verdict.kind === "no-compression" || belowLimit) return contradicted ? "suspect" : "lagging";
  if (!verdict.flagged) return "even";
  return isConfirmed(evidence) ? "lagging" : "suspect";
};

const order: readonly Standing[] = ["even", "suspect", "lagging"];

/** The worse of several standings, as of dry and leak-down readings; undefined when there is none. */
export const worse = (standings: readonly (Standing | undefined)[]): Standing | undefined =>
  order.findLast((word) => standings.includes(word));
