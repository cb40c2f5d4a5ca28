// Two tests that contradict each other in one pair of cylinders only: most likely typed in swapped order in one of them.

import type { EngineRecord, Test } from "../record/index.ts";
import { isComparable, valuesOf } from "./values/values.ts";

export interface SwappedOrder {
  /** Labels, in the engine's order. */
  readonly pair: readonly [string, string];
  /** Id and date of the test before. */
  readonly before: string;
  readonly date: string;
  /** How far the cylinder that is low now was above the other one then, a fraction. */
  readonly by: number;
}

/** ln: tests that agree lie no further apart than this from cylinder to cylinder, those that contradict each other further
 *  than that; judgement. */
const apart = { agree: 0.1, contradict: 0.25 } as const;

/** Against the test before, with no work between: swapped, the pair agrees; as it stands it does not. */
export const swappedOrder = (record: EngineRecord, test: Test): SwappedOrder | undefined => {
  const before = record.tests.findLast(
    (other) => other !== test && other.date <= test.date && other.setAside === undefined && readAll(other),
  );
  const now = readAll(test);
  const then = before === undefined ? undefined : readAll(before);
  if (now === undefined || then === undefined || before === undefined) return undefined;
  if (record.services.some(({ date }) => date > before.date && date <= test.date)) return undefined;
  if (spread(now, then) < apart.contradict) return undefined;
  const pairs = now.flatMap((_, a) => now.slice(a + 1).map((__, i) => [a, a + 1 + i] as const));
  const pair = pairs.find(([a, b]) => spread(now, swap(then, a, b)) < apart.agree);
  if (pair === undefined) return undefined;
  const [a, b] = pair;
  const [one, other] = [record.engine.cylinders[a] ?? "", record.engine.cylinders[b] ?? ""];
  const step = Math.abs((then[a] ?? 0) - (then[b] ?? 0));
  return { pair: [one, other], before: before.id, date: before.date, by: -Math.expm1(-step) };
};

/** ln of each; undefined unless every cylinder was read. */
const readAll = (test: Test): readonly number[] | undefined => {
  const cells = valuesOf(test, "dry")?.cells ?? [];
  const read = cells.flatMap((cell) =>
    cell !== undefined && isComparable(cell) && cell.value > 0 ? [Math.log(cell.value)] : [],
  );
  return read.length === cells.length && read.length > 1 ? read : undefined;
};

const spread = (now: readonly number[], then: readonly number[]): number => {
  const steps = now.map((value, i) => value - (then[i] ?? 0));
  return Math.max(...steps) - Math.min(...steps);
};

const swap = (values: readonly number[], a: number, b: number): readonly number[] =>
  values.map((value, i) => (i === a ? (values[b] ?? value) : i === b ? (values[a] ?? value) : value));
