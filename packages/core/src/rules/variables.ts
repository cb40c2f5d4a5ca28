// What a formula's names stand for, from the readings of one test.

import { mean as meanOf, median, sampleStandardDeviation } from "../statistics/index.ts";
import type { Variables } from "./evaluate-formula.ts";

/** The variables of a test. @param pressures - one a cylinder, at least one [Pa]  @param own - the cylinder judged [Pa] */
export const variablesFrom = (pressures: readonly number[], own: number | undefined): Variables => {
  const n = pressures.length;
  const min = Math.min(...pressures);
  const max = Math.max(...pressures);
  const mean = meanOf(pressures);
  const of = { min, max, mean, median: median(pressures), range: max - min, ratio: min / max, n };
  const spread = n > 1 ? { cv: sampleStandardDeviation(pressures) / mean } : {};
  return { ...of, ...spread, ...(own === undefined ? {} : { p: own }) };
};

/** The same for a leak-down. @param held - fraction of the supply, one a cylinder, at least one  @param own - the cylinder judged */
export const leakVariablesFrom = (held: readonly number[], own: number | undefined): Variables => ({
  n: held.length,
  leastLost: 1 - Math.max(...held),
  mostLost: 1 - Math.min(...held),
  ...(own === undefined ? {} : { lost: 1 - own }),
});
