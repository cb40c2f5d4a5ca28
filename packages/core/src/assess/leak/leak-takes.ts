// The takes of one leak-down reading, and whether they lie further apart than takes do.

import type { Test } from "../../record/index.ts";
import { rangeUpperTail } from "../../statistics/index.ts";
import { type KindValues, fractionLost, supplyOf, trueReading } from "../values/values.ts";

/** Standard deviation of one reading by one operator within the hour, as a fraction of the supply: 1 psi of 80.
 *  @source handbook/leakdown.md E, judgement there */
const sameHour = 1 / 80;

/** Fractions lost, a take each; empty where the supply is not known. */
export const takesLost = (
  test: Test,
  { values, cylinder }: { readonly values: KindValues; readonly cylinder: number },
): readonly number[] => {
  const supply = supplyOf(test, cylinder, values.gauge);
  const readings = values.cells[cylinder]?.readings ?? [];
  return readings.flatMap(
    (reading) => fractionLost(values.holds, trueReading(reading, values.readsHigh ?? 0), supply) ?? [],
  );
};

/** Further apart than chance brings once in 20 times. The noise of a take is one of pressure, alike at every leak: for two
 *  takes the limit is 1.96 sqrt(2) times `sameHour`. @source handbook/leakdown.md E, statistics.md F, L.10 */
export const areTakesApart = (takes: readonly number[]): boolean => {
  if (takes.length < 2) return false;
  const range = Math.max(...takes) - Math.min(...takes);
  return rangeUpperTail(range / sameHour, takes.length) < 0.05;
};
