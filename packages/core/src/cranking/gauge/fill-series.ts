// How a gauge with a check valve fills, stroke by stroke: each stroke mixes fresh air with what the gauge holds already.
// A leaking cylinder is not in it: "low first, then building" is an empirical rule that this model does not give.

import {
  type AbsolutePressure,
  type GaugePressure,
  type Volume,
  gaugePressure,
} from "../../quantity/index.ts";

/** A gauge with a check valve being filled: the volumes and the air that each stroke draws in. */
export interface Filling {
  /** Above the piston at top dead centre, with whatever hose lies ahead of the check valve; above 0. */
  readonly chamber: Volume;
  /** The same when the intake closes. */
  readonly trapped: Volume;
  /** Hose and gauge behind the check valve, which keep what they got. */
  readonly behindValve: Volume;
  /** Of the air drawn in. */
  readonly air: AbsolutePressure;
}

/** What is still missing after a stroke, as a share of what was missing before it. q = V_g/(V_c + V_g)
 *  @throws RangeError for a chamber of 0 @source isothermal mixing, derived in the handbook */
export const stillMissing = ({ chamber, behindValve }: Pick<Filling, "chamber" | "behindValve">): number => {
  if (!(chamber > 0))
    throw new RangeError(`stillMissing: chamber must be above 0 m3, got ${String(chamber)}`);
  return behindValve / (chamber + behindValve);
};

/** Where the needle stops. P_∞ = p_a (r − 1), r = V_ivc/V_c  @throws RangeError for a chamber of 0
 *  @source isothermal mixing, derived in the handbook */
export const fillLimit = ({ chamber, trapped, air }: Filling): GaugePressure => {
  if (!(chamber > 0)) throw new RangeError(`fillLimit: chamber must be above 0 m3, got ${String(chamber)}`);
  return gaugePressure(air * (trapped / chamber - 1));
};

/** The reading after each of the first strokes, from a needle at zero.
 *  p_{j+1} = (p_a V_ivc + p_j V_g)/(V_c + V_g), which is P_j = P_∞ (1 − q^j); isothermal, a check valve without resistance.
 *  @param strokes - a whole number, 0 or more @throws RangeError otherwise
 *  @source isothermal mixing, derived in the handbook @checked tests/published/fill-and-oil.test.ts (computed) */
export const fillSeries = (filling: Filling, strokes: number): readonly GaugePressure[] => {
  if (!Number.isInteger(strokes) || strokes < 0)
    throw new RangeError(`fillSeries: strokes must be a whole number, 0 or more, got ${String(strokes)}`);
  const missing = stillMissing(filling);
  const limit = fillLimit(filling);
  return Array.from({ length: strokes }, (_, j) => gaugePressure(limit * (1 - missing ** (j + 1))));
};

/** Strokes until this share of the final reading stands on the dial, not rounded. j = ln(1 − share)/ln q
 *  @param share - 0 to below 1 @param missing - q, 0 to below 1; at 0 the first stroke fills it @throws RangeError outside */
export const strokesTo = (share: number, missing: number): number => {
  if (!(share >= 0 && share < 1 && missing >= 0 && missing < 1))
    throw new RangeError(
      `strokesTo: share and missing must lie in 0 to below 1, got ${String(share)}, ${String(missing)}`,
    );
  return missing === 0 ? 1 : Math.log1p(-share) / Math.log(missing);
};

/** How far the last of some strokes got, from the share that the first had of it: 1 − qⁿ, where
 *  (1 − q)/(1 − qⁿ) = first/last.
 *  @param firstShare - first reading / last reading @param strokes - n, a whole number from 2 on
 *  @returns share of the final reading, 0 to 1; undefined where the first had no more than its even part (1/n), for then
 *  the needle was still climbing and nothing tells how far, or more than all @throws RangeError on fewer strokes than 2 */
export const reachedBy = (firstShare: number, strokes: number): number | undefined => {
  if (!Number.isInteger(strokes) || strokes < 2)
    throw new RangeError(`reachedBy: strokes must be a whole number from 2 on, got ${String(strokes)}`);
  if (!(firstShare > 1 / strokes && firstShare <= 1)) return undefined;
  let [low, high] = [0, 1];
  for (let step = 0; step < 60; step += 1) {
    const q = (low + high) / 2;
    if ((1 - q) / (1 - q ** strokes) > firstShare) low = q;
    else high = q;
  }
  return 1 - ((low + high) / 2) ** strokes;
};
