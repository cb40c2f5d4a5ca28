// Two testers on the same cylinders on one day: the factor that takes the place of their bores and coefficients.

import { median, sampleStandardDeviation } from "../statistics/index.ts";

/** How two testers stand to each other by cylinders read on both in one day. */
export interface TesterFactor {
  /** Median of alpha by the second over alpha by the first. */
  readonly factor: number;
  /** Standard uncertainty of ln factor. */
  readonly uncertainty: number;
  readonly cylinders: number;
}

const fewest = 3;
/** A median of normal values scatters this much more than their mean. */
const medianPenalty = Math.sqrt(Math.PI / 2);

/** q = median(α_B/α_A). @param pairs - alpha by A and by B of each cylinder, above 0
 *  @returns undefined with fewer than three cylinders: then a new history begins */
export const testerFactor = (pairs: readonly (readonly [number, number])[]): TesterFactor | undefined => {
  const logs = pairs.filter(([a, b]) => a > 0 && b > 0).map(([a, b]) => Math.log(b / a));
  if (logs.length < fewest) return undefined;
  return {
    factor: Math.exp(median(logs)),
    uncertainty: (medianPenalty * sampleStandardDeviation(logs)) / Math.sqrt(logs.length),
    cylinders: logs.length,
  };
};
