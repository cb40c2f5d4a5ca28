// Oil in the chamber takes up room and raises the reading of any cylinder, a sound one too.

import { type Volume, volume } from "../../quantity/index.ts";

/** n of P ∝ V^−n. @source usual range 1.2 to 1.3; the handbook's choice */
const usualExponent = 1.25;

/** What oil adds to a reading by its room alone, as a share of it; an upper bound, for oil that runs down past the rings
 *  takes up none. rise = (CR_wetⁿ − 1)/(CRⁿ − 1) − 1,  CR_wet = (CR − v)/(1 − v)
 *  @param compressionRatio - above 1 @param share - v, oil over chamber, 0 to below 1 @param exponent - n, 1.1 to 1.4
 *  @throws RangeError outside
 *  @source polytropic compression, derived in the handbook @checked tests/published/fill-and-oil.test.ts (derived) */
export const oilRise = (compressionRatio: number, share: number, exponent = usualExponent): number => {
  if (!(compressionRatio > 1 && share >= 0 && share < 1))
    throw new RangeError(
      `oilRise: ratio must be above 1 and share 0 to below 1, got ${String(compressionRatio)}, ${String(share)}`,
    );
  const wetRatio = (compressionRatio - share) / (1 - share);
  return (wetRatio ** exponent - 1) / (compressionRatio ** exponent - 1) - 1;
};

/** `much`: above a quarter of the chamber, the oil's own rise swamps what rings add. `too-much`: above a half, or enough
 *  to lock the engine. @source judgement of the handbook */
export type OilAmount = "fits" | "much" | "too-much";

/** Whether oil poured into a chamber is little enough to tell something. @param share - oil over chamber */
export const oilAmount = (share: number): OilAmount =>
  share > 0.5 ? "too-much" : share > 0.25 ? "much" : "fits";

/** Oil for a wet test: 3 to 5 % of the chamber, 4 % in the middle. @source judgement of the handbook */
export const suggestedOil = (chamber: Volume): Readonly<Record<"least" | "middle" | "most", Volume>> => ({
  least: volume(0.03 * chamber),
  middle: volume(0.04 * chamber),
  most: volume(0.05 * chamber),
});
