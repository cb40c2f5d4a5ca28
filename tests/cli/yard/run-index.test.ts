import fc from "fast-check";
import { expect, test } from "vitest";
import { jobsOf } from "../../../packages/cli/src/yard/jobs.ts";
import { runIndex } from "../../../packages/cli/src/yard/run-index.ts";
import { isOfShard, nameHash } from "../../../packages/cli/src/yard/shard.ts";

/** Rows of ten bytes and one line each. */
const indexOf = (names: readonly string[]) => {
  const index = runIndex();
  names.forEach((name, i) => {
    const row = { offset: 100 + 10 * i, length: 10, line: 2 + i };
    if (name === "") index.addBlank(row);
    else index.add(name, row);
  });
  return index;
};

test("rows that stand together are one run; engines keep the order in which they come first", () => {
  const index = indexOf(["b", "b", "a", "", "b", "a", "a"]);
  expect([index.engines(), index.runs()]).toEqual([2, 4]);
  expect(index.runsOf(0)).toEqual([
    { offset: 100, length: 20, line: 2 },
    { offset: 140, length: 10, line: 6 },
  ]);
  expect(index.runsOf(1)).toEqual([
    { offset: 120, length: 20, line: 4 },
    { offset: 150, length: 20, line: 7 },
  ]);
});

test("whatever the order of the rows, each engine gets its own, all of them, in their order", () => {
  const names = fc.array(
    fc.integer({ min: 0, max: 40 }).map((n) => `e${String(n)}`),
    { maxLength: 3_000 },
  );
  fc.assert(
    fc.property(names, (rows) => {
      const index = indexOf(rows);
      const first = [...new Set(rows)];
      expect(index.engines()).toBe(first.length);
      first.forEach((name, engine) => {
        const own = rows.flatMap((one, i) => (one === name ? [100 + 10 * i] : []));
        const found = index
          .runsOf(engine)
          .flatMap(({ offset, length }) => Array.from({ length: length / 10 }, (_, k) => offset + 10 * k));
        expect(found).toEqual(own);
      });
    }),
    { numRuns: 60 },
  );
});

test("ten thousand engines keep their numbers", () => {
  const names = Array.from({ length: 10_000 }, (_, i) => `engine ${String(i)}`);
  const index = indexOf([...names, ...names.toReversed()]);
  expect([index.engines(), index.runsOf(9_999)]).toMatchObject([10_000, [{ length: 20 }]]);
  expect(index.runsOf(17).map(({ line }) => line)).toEqual([19, 2 + 20_000 - 18]);
});

test("jobs hold whole engines, and the last row of the file closes its job", () => {
  const names = Array.from({ length: 60_000 }, (_, i) => `e${String(i % 3_000)}`);
  const jobs = [...jobsOf(indexOf([...names, "e17"]), 100 + 10 * 60_001)];
  expect(jobs.length).toBeGreaterThan(2);
  expect(jobs.flatMap(({ runs }) => runs)).toHaveLength(60_001);
  const ends = jobs.map(({ runs }) => runs.some(({ line }) => line === 2 + 60_000));
  const closing = jobs[ends.indexOf(true)];
  expect(closing?.runs.at(-1)?.line).toBe(2 + 60_000);
  expect(jobs.at(-1)).not.toBe(closing);
});

test("every engine is of one shard and no other; the shard is FNV-1a of its name", () => {
  // test vectors of the algorithm's authors (Fowler, Noll, Vo: fnv-1a, 32 bits): "", "a", "foobar"; from memory
  expect(["", "a", "foobar"].map((name) => nameHash(name).toString(16))).toEqual([
    "811c9dc5",
    "e40c292c",
    "bf9cf968",
  ]);
  fc.assert(
    fc.property(fc.string(), fc.integer({ min: 1, max: 50 }), (name, of) => {
      const shards = Array.from({ length: of }, (_, i) => isOfShard(name, { number: i + 1, of }));
      expect(shards.filter(Boolean)).toHaveLength(1);
    }),
  );
});
