// The pressure of a cylinder itself against the maker's minimum. Readings invented.

import { expect, test } from "vitest";
import { analyseHistory, type HistoryTest } from "../../../packages/core/src/history/index.ts";
import { historyOf, testsOf } from "./tables.ts";

// statistics.md L.11 example 4: one cylinder, two gauges, one thing that tests share
const gauges = ["A", "A", "B", "B", "A", "B"];
const own = [0, 0.01, 0.01, 0.02, 0, 0.01];
const shared = [0, 0.004, 0.004, 0.012, 0, 0.008];
const example = testsOf(["160", "158", "149", "148", "151", "143"], [0, 1, 2, 3.5, 4, 5.5]).map(
  (one, k): HistoryTest => ({
    ...one,
    gauge: gauges[k] ?? "",
    correctionUncertainty: own[k] ?? 0,
    sharedUncertainty: { q: shared[k] ?? 0 },
  }),
);
const levelOf = (minimum: number, tests: readonly HistoryTest[] = example) =>
  analyseHistory(historyOf(tests, { minimum: Math.log(minimum) })).cylinders[0]?.absolute;

// slope and p: L.11 example 4. Error and crossings: the formulas of L.7 and C.7 computed apart from this library
// (numpy, roots by Brent's method): crossing of 136 psi at 9.7835, not before 6.8630, no end within 3 spans.
test("a lone cylinder reaches the minimum where the engine-wide line does", () => {
  const level = levelOf(136);
  expect(level?.last).toBeCloseTo(Math.log(143), 12);
  expect(level?.test).toBe(5);
  expect(level?.trend?.slope).toBeCloseTo(-0.015075470243377, 12);
  expect(level?.trend?.p).toBeCloseTo(0.01228639533104, 12);
  expect(level?.trend?.standardError).toBeCloseTo(0.005867315940727058, 12);
  expect(level?.trend?.leastLossShown).toBeCloseTo(0.010457244186220712, 9);
  expect(level?.trend?.crossing).toBeCloseTo(9.783526959849898, 9);
  expect(level?.trend?.low).toBeCloseTo(6.863013323108336, 9);
  expect(level?.trend).not.toHaveProperty("high");
});

test("no crossing is foretold beyond three times the observed span, only before when it does not come", () => {
  const { trend } = levelOf(120) ?? {};
  expect(trend).toMatchObject({ decline: "shown" });
  expect(trend).not.toHaveProperty("crossing");
  expect(trend?.notBefore).toBeCloseTo(12.531269094168971, 9);
});

test("wear of all cylinders alike shows in each one's own level", () => {
  const rows = Array.from({ length: 10 }, (_, i) => {
    const level = 150 * 0.977 ** i;
    return `${String(level)} ${String(level * 1.01)} ${String(level * 0.99)} ${String(level)}`;
  });
  const tests = testsOf(rows).map((one) => ({ ...one, gauge: "red" }));
  const { cylinders } = analyseHistory(historyOf(tests, { minimum: Math.log(100) }));
  expect(cylinders.map(({ course }) => course)).toEqual(new Array(4).fill("steady"));
  for (const { absolute } of cylinders) {
    expect(absolute?.trend?.slope).toBeCloseTo(Math.log(0.977), 9);
    expect(absolute?.trend?.decline).toBe("shown");
  }
  // 150 x .977^x = 100
  expect(cylinders[0]?.absolute?.trend?.crossing).toBeCloseTo(Math.log(100 / 150) / Math.log(0.977), 6);
});

test("below four tests only the level is known, and without a minimum nothing", () => {
  expect(levelOf(100, example.slice(0, 3))).toEqual({
    minimum: Math.log(100),
    last: Math.log(149),
    test: 2,
  });
  expect(analyseHistory(historyOf(example)).cylinders[0]).not.toHaveProperty("absolute");
});

test("what was read before the work on a cylinder is no part of its level", () => {
  const tests = testsOf(["150 150", "150 140", "150 130", "150 120", "150 150"]);
  const services = [{ afterTests: 4, touched: [1], newBaseline: [1], why: "valve job" }];
  const { cylinders } = analyseHistory(historyOf(tests, { minimum: Math.log(100), services }));
  expect(cylinders[1]?.absolute).toEqual({ minimum: Math.log(100), last: Math.log(150), test: 4 });
});

test("a rise that came at once is told from one bit by bit", () => {
  const shapeOf = (third: readonly number[]) =>
    analyseHistory(
      historyOf(testsOf(third.map((value, i) => `150 ${String(149 + (i % 2))} ${String(value)} 150`))),
    ).cylinders[2];
  const step = shapeOf([151, 149, 175, 176, 174, 175, 175, 176]);
  expect(step).toMatchObject({ course: "rising", shape: { shape: "sudden", firstAfter: 2 } });
  // ln 175.17/150, the means of the readings
  expect(step?.shape?.fall).toBeCloseTo(-Math.log(175.17 / 150), 2);
  expect(shapeOf([140, 144, 148, 152, 156, 160, 164, 168])?.shape?.shape).toBe("gradual");
});

test("nothing is compared across a change of scale, whatever work was done the same day", () => {
  const tests = testsOf(["150 150 150", "150 150 150", "120 120 120", "120 120 120"]);
  const change = {
    touched: [0, 1, 2],
    newBaseline: [0, 1, 2],
    why: "another tester",
    scale: "another",
  } as const;
  const work = { touched: [1], newBaseline: [1], why: "valve job" };
  const services = [
    { ...work, afterTests: 2 },
    { ...change, afterTests: 2 },
  ];
  expect(analyseHistory(historyOf(tests, { services })).services).toEqual([
    { before: 2, why: "valve job; another tester", against: "nothing", steps: [] },
  ]);
});
