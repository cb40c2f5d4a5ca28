// How far healthy cylinders lie apart in one test, believed before looking. All figures here are choices: no published
// study of the repeatability of cranking compression was found. Ln units (.03 is about 3 %).

import type { PriorDegrees } from "./critical-values.ts";

export interface Prior {
  /** Standard deviation of ln readings among healthy cylinders. */
  readonly sigma: number;
  /** Degrees of freedom it counts as. */
  readonly df: PriorDegrees;
}

/** What the owner's own repeats say: standard deviation of one reading [ln units] and its degrees of freedom. */
export interface OwnRepeatability {
  readonly s: number;
  readonly df: number;
}

/** From as many degrees of freedom on the owner's own repeats are believed, and count as so many. */
const ownDegrees = 20;

/** Whether a prior rests on the owner's own repeats. */
export const isOwn = ({ df }: Prior): boolean => df === ownDegrees;

/** Cranking compression: sigma^2 = .03^2 - .015^2 (1 - 1/m) with 8 degrees of freedom; with an own repeatability of at
 *  least 20 degrees of freedom sigma^2 = .025^2 + s^2/m with 20.
 *  .03 fits the custom "within 10 %": read as the 95 % point of the range of 4 cylinders that is .029.
 *  @param meanRepeats - m, the mean number of repeats over the cylinders read, 1 or more */
export const crankingPrior = (meanRepeats: number, own?: OwnRepeatability): Prior =>
  own !== undefined && own.df >= ownDegrees
    ? { sigma: Math.sqrt(0.025 ** 2 + own.s ** 2 / meanRepeats), df: ownDegrees }
    : { sigma: Math.sqrt(0.03 ** 2 - 0.015 ** 2 * (1 - 1 / meanRepeats)), df: 8 };

/** Leak-down, for y = ln(1 - fraction lost): the custom "within 5 psi of 80" read the same way gives .017 to .018. */
export const leakDownPrior: Prior = { sigma: 0.02, df: 8 };
