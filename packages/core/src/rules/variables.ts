// What a formula's names stand for, from the readings of one test.

import { mean as meanOf, median, sampleStandardDeviation } from "../statistics/index.ts";
import type { Variables } from "./evaluate-formula.ts";

/** The variables of a test, each worked out when a formula asks for it; what has no value is NaN.
 *  @param pressures - one a cylinder, at least one [Pa]  @param own - the cylinder judged [Pa] */
export const variablesFrom = (pressures: readonly number[], own: number | undefined): Variables => {
  const n = pressures.length;
  const least = (): number => Math.min(...pressures);
  const most = (): number => Math.max(...pressures);
  return {
    n,
    p: own ?? NaN,
    get min() {
      return least();
    },
    get max() {
      return most();
    },
    get range() {
      return most() - least();
    },
    get ratio() {
      return least() / most();
    },
    get mean() {
      return meanOf(pressures);
    },
    get median() {
      return median(pressures);
    },
    get cv() {
      return n > 1 ? sampleStandardDeviation(pressures) / meanOf(pressures) : NaN;
    },
  };
};

/** The same for a leak-down. @param held - fraction of the supply, one a cylinder, at least one  @param own - the cylinder judged */
export const leakVariablesFrom = (held: readonly number[], own: number | undefined): Variables => ({
  n: held.length,
  leastLost: 1 - Math.max(...held),
  mostLost: 1 - Math.min(...held),
  ...(own === undefined ? {} : { lost: 1 - own }),
});
