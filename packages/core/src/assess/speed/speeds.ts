// The cranking speed of each cylinder of a test, and the speed that an engine's readings are held against.

import type { Speed } from "../../quantity/index.ts";
import { type Test, dayOf } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import { type KindValues, isComparable } from "../values/values.ts";

/** Cylinder by test, standard deviation [ln units]: how the valves seat, warmth while testing. What a reading scatters by
 *  from one cranking to the next, beside its repeats. @source handbook/statistics.md F, a choice */
export const interaction = 0.01;

/** Cranked more slowly a test is void [rpm]. @source the contract of this project, a choice */
export const leastCranked = 100;

/** In the engine's order: a cylinder's own, else that of the day and the gauge; undefined where neither was recorded. */
export const speedsOf = (
  test: Test,
  { cells, gauge }: Pick<KindValues, "cells" | "gauge">,
): readonly (Speed | undefined)[] => {
  const day = dayOf(test, gauge).crankSpeed;
  return cells.map((_, i) => test.perCylinder.speed?.[i] ?? day);
};

/** The same for the cylinders with a reading that compares; undefined for the others. */
export const speedsRead = (test: Test, values: KindValues): readonly (Speed | undefined)[] =>
  speedsOf(test, values).map((speed, i) => {
    const cell = values.cells[i];
    return cell !== undefined && isComparable(cell) && cell.value > 0 ? speed : undefined;
  });

/** One speed for a whole test [rpm]: that of the day, else the middle of its cylinders'. */
export const speedOfTest = ({ conditions, perCylinder }: Test): number | undefined => {
  const own = (perCylinder.speed ?? []).filter((speed) => speed !== undefined);
  return conditions.crankSpeed ?? (own.length === 0 ? undefined : median(own));
};
