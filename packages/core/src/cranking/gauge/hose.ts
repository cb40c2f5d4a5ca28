// A gauge whose check valve sits at its own end: the hose before the valve belongs to the chamber in every stroke, and
// the reading comes out low, most on a small chamber. With the valve at the plug the final reading is not touched.

import type { Volume } from "../../quantity/index.ts";

/** A cylinder as the hose sees it. */
export interface HosedCylinder {
  /** At top dead centre; above 0. */
  readonly chamber: Volume;
  /** Volume at intake closing over that at top dead centre, without the hose; above 1. */
  readonly trappedRatio: number;
  /** n of P ∝ V^−n, 1.1 to 1.4: about 1.25 for spark engines, 1.2 for diesels. */
  readonly exponent: number;
}

/** What such a hose leaves of the reading, above 0 to 1.
 *  r' = (V_ivc + V_h)/(V_c + V_h),  share = (r'ⁿ − 1)/(rⁿ − 1)
 *  @param hose - ahead of the check valve @throws RangeError for a chamber of 0 or a ratio of 1 or less
 *  @source polytropic compression, derived in the handbook; printed beside it: a 16-inch hose of 3 to 4 cm3 read 20 to
 *  35 psi low (an engine builder, second hand) @checked tests/published/fill-and-oil.test.ts (computed) */
export const hoseShare = ({ chamber, trappedRatio, exponent }: HosedCylinder, hose: Volume): number => {
  if (!(chamber > 0 && trappedRatio > 1))
    throw new RangeError(
      `hoseShare: chamber must be above 0 and ratio above 1, got ${String(chamber)} m3 and ${String(trappedRatio)}`,
    );
  const withHose = (trappedRatio * chamber + hose) / (chamber + hose);
  return (withHose ** exponent - 1) / (trappedRatio ** exponent - 1);
};
