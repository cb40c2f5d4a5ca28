// How many more tests until a loss of the engine as a whole, or of its only cylinder, shows. Expected numbers: histories
// simulated with the scatter of handbook/statistics.md I on one gauge (tests/bench/simulate.mjs, computed by us): the first
// test at which 8 in 10 of the losing engines were called falling. The plan itself knows only the design of the tests.

import { expect, test } from "vitest";
import {
  analyseHistory,
  type HistoryInput,
  type HistoryTest,
  wholeTestsUntilShown,
  type WholeLossPlan,
} from "../../../packages/core/src/history/index.ts";
import { historyOf, testsOf } from "./tables.ts";

const made = (cylinders: number, count: number, spacing: number, repeats = 1): HistoryInput => {
  const row = new Array<string>(cylinders).fill("150").join(" ");
  const tests = testsOf(
    new Array<string>(count).fill(row),
    Array.from({ length: count }, (_, k) => k * spacing),
  );
  const read = ({ cells, ...test }: HistoryTest): HistoryTest => ({
    ...test,
    gauge: "red",
    cells: cells.map((cell) => (cell.kind === "read" ? { ...cell, repeats } : cell)),
  });
  return historyOf(tests.map(read));
};

/** One reading of each cylinder, 3 % a year from now on. */
const usual: WholeLossPlan = { spacing: 1, loss: 0.03, began: "last-test", repeats: 1 };
const testsFor = (input: HistoryInput, plan: Partial<WholeLossPlan> = {}): number =>
  wholeTestsUntilShown(input, { ...usual, ...plan })?.tests ?? NaN;

test.each([
  [1, 4, 1, {}, 3],
  [1, 12, 1, {}, 4],
  [1, 4, 2, {}, 2],
  [1, 6, 0.5, { repeats: 3 }, 5],
  [1, 5, 0.625, { loss: 0.06 }, 3],
  [1, 1, 1, { began: "first-test" }, 4],
  [1, 2, 1, { began: "first-test" }, 3],
  [1, 4, 1, { began: "first-test", loss: 0.02 }, 2],
  [2, 4, 1, {}, 3],
  [2, 3, 0.625, { began: "first-test" }, 3],
  [4, 6, 1, { loss: 0.02 }, 4],
] as const)(
  "with %d cylinders, %d tests made, %d years apart, and %j it needs as many more as in simulated histories",
  (cylinders, count, spacing, plan, simulated) => {
    const repeats = "repeats" in plan ? plan.repeats : 1;
    expect(testsFor(made(cylinders, count, spacing, repeats), { spacing, ...plan })).toBe(simulated);
  },
);

test("five tests at 0.625 years are one test from the four at which 80 in 100 were found", () => {
  // 80.3 without bad readings, 76.6 with them (2,000 histories each)
  expect(Math.abs(testsFor(made(1, 5, 0.625), { spacing: 0.625 }) - 4)).toBeLessThanOrEqual(1);
});

test("a loss as large as planned, in readings without scatter, is called falling at the test planned", () => {
  const input = made(1, 6, 1);
  const tests = testsFor(input);
  const later = (count: number): HistoryInput => {
    const all = made(1, 6 + count, 1).tests;
    const lost = all.map((one, k) => ({
      ...one,
      cells: one.cells.map((cell) =>
        cell.kind === "read" ? { ...cell, ln: cell.ln - 0.03 * Math.max(0, k - 5) } : cell,
      ),
    }));
    return historyOf(lost);
  };
  expect(analyseHistory(later(tests)).common.word).toBe("falling");
  expect(analyseHistory(later(1)).common.word).toBe("no-change-shown");
});

test("one gauge shows a loss sooner than gauges that nobody named", () => {
  const named = made(1, 4, 1);
  const unnamed = { ...named, tests: named.tests.map(({ gauge: _none, ...rest }) => rest) };
  expect(testsFor(named)).toBeLessThan(testsFor(unnamed));
});

test("tests before work on all cylinders count for nothing", () => {
  const input = made(2, 6, 1);
  const work = { afterTests: 5, touched: [0, 1], newBaseline: [0, 1], why: "rebuild" };
  const plan = { began: "first-test" } as const;
  expect(testsFor({ ...input, services: [work] }, plan)).toBe(testsFor(made(2, 1, 1), plan));
});

test("more scatter than assumed asks for more tests, more readings for no more", () => {
  expect(testsFor(made(1, 6, 1), { phi: 3 })).toBeGreaterThan(testsFor(made(1, 6, 1)));
  expect(testsFor(made(1, 6, 1), { repeats: 3 })).toBeLessThanOrEqual(testsFor(made(1, 6, 1)));
});

test("the years run to the last test needed; too slow a loss and no test made have no answer", () => {
  const shown = wholeTestsUntilShown(made(1, 4, 0.5), { ...usual, spacing: 0.5 });
  expect(shown?.years).toBeCloseTo((shown?.tests ?? NaN) * 0.5, 12);
  expect(wholeTestsUntilShown(made(1, 4, 0.01), { ...usual, spacing: 0.01, loss: 0.001 })).toBeUndefined();
  expect(wholeTestsUntilShown({ ...made(1, 1, 1), tests: [] }, usual)).toBeUndefined();
});

test("what cannot be a plan is refused", () => {
  for (const wrong of [{ spacing: 0 }, { loss: NaN }, { repeats: 0.5 }, { spacing: Infinity }])
    expect(() => testsFor(made(1, 4, 1), wrong)).toThrow(RangeError);
});
