// Inside, outside, or too close to tell: the chance that the true value conforms, given what the instrument can do.

import { type Length, length } from "../../quantity/index.ts";
import type { LimitPair } from "../../record/index.ts";
import { normalCdf, normalDensity } from "../../statistics/index.ts";
import type { ClearanceVerdictCode } from "../teardown.ts";

/** The leaf that goes and the one that does not. */
export interface Leaves {
  readonly low: Length;
  readonly high: Length;
}

/** A figure and how well it is known. */
export interface Figure {
  readonly value: Length;
  /** Standard, above 0. [m] */
  readonly uncertainty: Length;
  /** By feeler: the leaf `low` goes and the leaf `high` does not. It is judged by the interval then. */
  readonly between?: Leaves;
}

/** Leaf and feel of a feeler together: 6 µm, judgement (leaf tolerance of DIN 2275, a few µm, from memory). */
export const feelerBlur: Length = length(6e-6);

/** From these chances on a verdict is given; one limit and a normal error make it a guard band of 1.645 u on each side.
 *  @source ISO 14253-1:2017, conformance limit 95 % (the 95 % read in summaries, 1.65 u from memory) */
const sureInside = 0.95;
const sureOutside = 0.05;

/** 1.645: the distance from a limit, in u, at which the chance is 0.95. */
export const guardFactor = 1.645;

/** Limits of a signed difference (taper, out-of-round) that may be T at most: −T … +T, never its size alone. */
export const bothSides = (most: Length): LimitPair => ({ low: length(-1 * most), high: most });

/** Chance that the true value lies within the limits: flat prior, normal error.
 *  p = Φ((T_U − y)/u) − Φ((T_L − y)/u), one of the terms missing with its limit. By feeler: insideByFeeler.
 *  @param limits - one of them at least @throws RangeError without a limit, or for an uncertainty not above 0
 *  @source JCGM 106:2012 clause 7 @checked data/reference/teardown-cases.json (computed) */
export const probabilityOf = (figure: Figure, limits: LimitPair): number => {
  const { value, uncertainty, between } = figure;
  const { low, high } = limits;
  if (low === undefined && high === undefined) throw new RangeError("probabilityOf: needs a limit");
  if (between !== undefined) return insideByFeeler(between, limits, blurOf(uncertainty, between));
  if (!(uncertainty > 0))
    throw new RangeError(`probabilityOf: uncertainty must be above 0 m, got ${String(uncertainty)}`);
  const above = low === undefined ? 0 : normalCdf((low - value) / uncertainty);
  const beyond = high === undefined ? 0 : normalCdf((value - high) / uncertainty);
  return within01(1 - above - beyond);
};

/** What is left of the uncertainty of a gap beside the interval itself: leaf and feel, and the straightedge. */
export const blurOf = (uncertainty: Length, { low, high }: Leaves): Length =>
  length(Math.sqrt(Math.max(feelerBlur ** 2, uncertainty ** 2 - (high - low) ** 2 / 12)));

/** Chance that a gap between two leaves lies within the limits: uniform between the leaves, blurred by leaf and feel.
 *  P(gap ≤ T) = s/(2H)·[G((T − M + H)/s) − G((T − M − H)/s)], M = (a + b)/2, H = (b − a)/2, G(z) = z·Φ(z) + φ(z)
 *  @param blur - s [m]; 0 is the uniform share itself @throws RangeError for leaves out of order
 *  @source derived by this project @checked data/reference/teardown-cases.json (computed) */
export const insideByFeeler = (
  leaves: Leaves,
  { low, high }: LimitPair,
  blur: Length = feelerBlur,
): number => {
  if (!(leaves.low <= leaves.high))
    throw new RangeError("insideByFeeler: the leaf that goes must not be thicker than the one that does not");
  const below = (limit: Length): number => notAbove(leaves, limit, blur);
  return within01((high === undefined ? 1 : below(high)) - (low === undefined ? 0 : below(low)));
};

const notAbove = ({ low, high }: Leaves, limit: Length, blur: Length): number => {
  const width = high - low;
  // leaves so near each other that the interval is nothing beside the feel, and feel that is nothing beside it
  if (blur > 0 && width < 1e-6 * blur) return normalCdf((limit - (low + high) / 2) / blur);
  if (blur <= 0) return width > 0 ? within01((limit - low) / width) : Number(limit >= low);
  return within01((blur / width) * (rise((limit - low) / blur) - rise((limit - high) / blur)));
};

/** G(z) = z·Φ(z) + φ(z), the integral of Φ. */
const rise = (z: number): number => z * normalCdf(z) + normalDensity(z);

const within01 = (p: number): number => Math.min(1, Math.max(0, p));

/** The word of a chance. Rounding of binary sums decides nothing. */
export const verdictOf = (probability: number): ClearanceVerdictCode => {
  if (probability >= sureInside - 1e-12) return "inside";
  return probability <= sureOutside + 1e-12 ? "outside" : "too-close-to-tell";
};

/** Whether the limits lie so near each other that this uncertainty can never show `inside`: T_U − T_L < 3.92·u.
 *  @source the normal distribution: Φ(1.96) − Φ(−1.96) = 0.95 */
export const isNeverInside = (uncertainty: Length, { low, high }: LimitPair): boolean =>
  low !== undefined && high !== undefined && high - low < 3.92 * uncertainty;

/** Chance that all of many readings conform, whether or not they depend on each other.
 *  1 − Σ(1 − p_i) ≤ p_all ≤ min p_i. `outside` where one is, `inside` where the least is, else the reading that decides is
 *  to be named.
 *  @param chances - one at least @throws RangeError for none
 *  @source Boole's inequality @checked data/reference/teardown-cases.json (computed) */
export const allConform = (
  chances: readonly number[],
): {
  readonly atLeast: number;
  readonly atMost: number;
  readonly verdict: ClearanceVerdictCode;
  /** Place in the list of the lowest chance. */
  readonly decidedBy: number;
} => {
  if (chances.length === 0) throw new RangeError("allConform: needs a reading");
  const atMost = Math.min(...chances);
  const atLeast = within01(1 - chances.reduce((sum, p) => sum + (1 - p), 0));
  const worst = verdictOf(atMost);
  return {
    atLeast: Math.min(atLeast, atMost),
    atMost,
    verdict:
      worst === "outside" ? "outside" : verdictOf(atLeast) === "inside" ? "inside" : "too-close-to-tell",
    decidedBy: chances.indexOf(atMost),
  };
};
