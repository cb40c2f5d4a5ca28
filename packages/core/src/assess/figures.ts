// An engine's own figures, worked out once from all its tests and handed on to whatever judges one of them.

import type { EngineRecord, Test } from "../record/index.ts";
import { type PooledRepeatability, median, pooledRepeatability } from "../statistics/index.ts";
import { leastCranked, speedOfTest } from "./speed/speeds.ts";
import { valuesOf } from "./values/values.ts";

/** An engine's own figures, worked out once from all its tests and handed on to whatever judges one of them. */
export interface EngineFigures {
  /** Of all repeats of dry readings that are not set aside, blended with the usual 1.5 % [ln units]. */
  readonly repeatability: PooledRepeatability;
  /** ln of the repeats of each cylinder; tests without repeats are absent. */
  readonly repeats: ReadonlyMap<Test, readonly (readonly number[])[]>;
  /** Cranking speed that readings are held against: the maker's, else the median of the tests that are neither set
   *  aside nor void for it [rpm]; absent when neither is known. */
  readonly referenceSpeed?: number;
}

export const figuresOf = (record: EngineRecord): EngineFigures => {
  const tests = record.tests.filter(({ setAside }) => setAside === undefined);
  const repeats = new Map(
    tests.map((test) => [test, repeatedCells(test)] as const).filter(([, cells]) => cells.length > 0),
  );
  const speeds = tests
    .flatMap((test) => speedOfTest(test) ?? [])
    // a test that is void for its speed is no measure of others
    .filter((speed) => speed >= leastCranked);
  const speed = record.engine.compressionLimits.speed ?? (speeds.length === 0 ? undefined : median(speeds));
  return {
    repeatability: pooledRepeatability([...repeats.values()].flat()),
    repeats,
    ...(speed === undefined ? {} : { referenceSpeed: speed }),
  };
};

/** Standard deviation of one reading [ln units] as all other tests show it: repeats that lie far apart must not widen
 *  the measure they are held against. */
export const scatterBeside = (test: Test, { repeats }: EngineFigures): number =>
  pooledRepeatability([...repeats].flatMap(([other, cells]) => (other === test ? [] : cells))).blended;

/** One row holds no repeat. */
const repeatedCells = (test: Test): number[][] =>
  (test.rows.length < 2 ? [] : (valuesOf(test, "dry")?.cells ?? [])).flatMap((cell) =>
    cell !== undefined &&
    !cell.pegged &&
    cell.readings.length > 1 &&
    cell.readings.every((value) => value > 0)
      ? [cell.readings.map(Math.log)]
      : [],
  );
