// A hole less what runs in it: bore and piston, bearing and journal, guide and stem.

import { type Length, length } from "../../quantity/index.ts";

/** c = D_hole − D_shaft. Not above 0: one of the two was misread.
 *  @source geometry; printed with limits for guide and stem in Lexus LS400 1997 @checked data/reference/teardown-published.csv */
export const clearance = (hole: Length, shaft: Length): Length => length(hole - shaft);

export interface ClearanceRange {
  /** Of a piston: where it seizes. Of a bearing: the fit, which goes by the largest diameter of a journal that is not round. */
  readonly smallest: Length;
  /** Of a piston: where it slaps and drinks oil. Of a bearing: what the oil pressure goes by. */
  readonly largest: Length;
}

/** Smallest and largest clearance between the diameters of a hole and those of its shaft at one place; undefined where one
 *  of the two is missing. A piston has one diameter and its bore is taken whole; bearings go position by position.
 *  @source Doosan G643E p. 94 for the fit to the largest diameter */
export const clearanceRange = (
  holes: readonly Length[],
  shafts: readonly Length[],
): ClearanceRange | undefined =>
  holes.length === 0 || shafts.length === 0
    ? undefined
    : {
        smallest: length(Math.min(...holes) - Math.max(...shafts)),
        largest: length(Math.max(...holes) - Math.min(...shafts)),
      };

/** Clearance after shells of an undersize u: c − u.
 *  @source a rod-bearing text of a maker (0.001 in shells make 0.002 in of 0.003 in) @checked data/reference/teardown-published.csv */
export const clearanceWithShells = (before: Length, undersize: Length): Length => length(before - undersize);

/** The smallest step of fine-step shells that brings the clearance down to `high` and not below `low`, on a journal that is
 *  not ground. Undefined: none does.
 *  @source TM 5-3805-262-34 (0.002 in shells on a journal worn up to 0.002 in, else grind) */
export const fineStepShells = (
  before: Length,
  limits: { readonly low?: Length; readonly high: Length },
  steps: readonly Length[],
): Length | undefined =>
  [...steps]
    .sort((a, b) => a - b)
    .find((step) => {
      const after = clearanceWithShells(before, step);
      return after <= limits.high && (limits.low === undefined || after >= limits.low);
    });
