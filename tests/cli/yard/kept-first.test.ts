import { type YardRow, type YardWorst, yardCompare, yardOrders } from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";
import { keptFirst } from "../../../packages/cli/src/yard/kept-first.ts";

const day = fc.integer({ min: 0, max: 4 }).map((n) => `2026-0${String(n + 1)}-15`);
const usual = {
  label: "3",
  limitsMissed: [],
  held: "something",
  flaggedBefore: false,
  confirmed: false,
} as const;
const worst = fc
  .record({
    standing: fc.constantFrom("lagging", "suspect", "even"),
    belowOthers: fc.constantFrom(0, 0.05, 0.2),
  })
  .map((own): YardWorst => ({ ...own, ...usual }));
const row = fc
  .record({
    engine: fc.integer({ min: 0, max: 500 }).map(String),
    worst: fc.option(worst, { nil: undefined }),
    course: fc.option(fc.constantFrom("falling", "stepped-down", "steady"), { nil: undefined }),
    date: fc.option(day, { nil: undefined }),
    due: day,
    since: fc.option(day, { nil: undefined }),
  })
  .map(({ engine, worst: low, course, date, due, since }): YardRow => ({
    engine,
    name: engine,
    cylinders: 4,
    tests: 2,
    licensed: false,
    byLuck: 0,
    byLuckIs: "about",
    due: { date: due, ...(since === undefined ? {} : { since }) },
    ...(low === undefined ? {} : { worst: low, low: [low] }),
    ...(course === undefined ? {} : { course: { code: course, label: "3" } }),
    ...(date === undefined ? {} : { test: { id: `${date}a`, date, trust: "trusted" } }),
  }));
const yard = fc.uniqueArray(row, { selector: ({ engine }) => engine, maxLength: 400 });

test("what is kept is what a sort of all rows has first, in its order, whatever the order", () => {
  fc.assert(
    fc.property(
      yard,
      fc.constantFrom(...yardOrders),
      fc.constantFrom(1, 40, Infinity),
      (rows, order, most) => {
        const kept = keptFirst<string>(order, most);
        for (const one of rows) kept.add(one, () => `row of ${one.engine}`);
        const sorted = rows.toSorted(yardCompare(order)).slice(0, most);
        expect(kept.all()).toEqual(sorted.map(({ engine }) => `row of ${engine}`));
      },
    ),
    { numRuns: 60 },
  );
});
