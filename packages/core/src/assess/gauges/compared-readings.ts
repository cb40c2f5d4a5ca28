// What two gauges read in one test, side by side.

import type { EngineRecord, Test } from "../../record/index.ts";
import { comparisonsOf, fractionLost, supplyOf, valuesOf, type KindValues } from "../values/values.ts";
import type { GaugePair } from "./compare-gauges.ts";

export interface ComparedReadings {
  readonly name: string;
  /** As read: gauge pressures [Pa], of a leak-down the fraction lost; in the engine's order. */
  readonly values: readonly (number | undefined)[];
  /** What the gauge is known to read too high [Pa]: taken out before they are compared. */
  readonly readsHigh?: number;
}

/** What the two gauges of a pair read, that which counts first. */
export const comparedReadings = (
  { engine }: EngineRecord,
  test: Test,
  { what, gauge, to }: GaugePair,
): readonly ComparedReadings[] => {
  const counts = valuesOf(test, what);
  const other = comparisonsOf(test, what).find((values) => values.gauge === gauge);
  const readings = (values: KindValues, name = "no name"): ComparedReadings => ({
    name,
    ...(values.readsHigh === undefined ? {} : { readsHigh: values.readsHigh }),
    values: engine.cylinders.map((_, i) => {
      const read = values.cells[i]?.read;
      if (read === undefined || what !== "leak-down") return read;
      return fractionLost(values.holds, read, supplyOf(test, i, values.gauge));
    }),
  });
  return counts === undefined || other === undefined ? [] : [readings(counts, to), readings(other, gauge)];
};
