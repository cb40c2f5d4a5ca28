// How many more tests until a loss shows. Expected numbers: histories simulated with the scatter of handbook/statistics.md I
// and judged one test after another (tests/bench/simulate.mjs, computed by us): the first test by which 8 in 10 losing
// cylinders had raised the alarm. The plan itself knows only the design of the tests.

import { expect, test } from "vitest";
import { testsUntilShown, usualSpacing, type LossPlan } from "../../../packages/core/src/history/index.ts";

const evenly = (count: number, spacing: number): readonly number[] =>
  Array.from({ length: count }, (_, k) => k * spacing);

/** Four cylinders read once in each of four tests, 0.625 years apart; one loses 3 % a year from now on. */
const usual: LossPlan = {
  kind: "cranking",
  cylinders: 4,
  repeats: 1,
  made: evenly(4, 0.625),
  spacing: 0.625,
  loss: 0.03,
  began: "last-test",
};
const testsOf = (plan: Partial<LossPlan>): number => testsUntilShown({ ...usual, ...plan })?.tests ?? NaN;

test.each([
  [{}, 6],
  [{ repeats: 3 }, 5],
  [{ cylinders: 2 }, 7],
  [{ cylinders: 8 }, 6],
  [{ cylinders: 12 }, 6],
  [{ made: evenly(10, 0.5), spacing: 0.5 }, 7],
  [{ made: evenly(4, 2), spacing: 2 }, 3],
  [{ cylinders: 6, made: evenly(6, 1), spacing: 1, loss: 0.015 }, 7],
  [{ loss: 0.06 }, 4],
  [{ made: evenly(2, 0.625), began: "first-test" }, 6],
  [{ made: [0], spacing: 1, began: "first-test" }, 5],
  [{ made: evenly(2, 1), spacing: 1, repeats: 3, began: "first-test" }, 3],
  // one reading so far, three from now on
  [{ made: evenly(8, 1), spacing: 1, planned: 3 }, 4],
  [{ cylinders: 2, made: evenly(3, 1), spacing: 1, planned: 3, began: "first-test" }, 3],
  [{ cylinders: 6, made: evenly(6, 0.5), spacing: 0.5, repeats: 2, planned: 3 }, 6],
] as const)("the plan %j needs as many further tests as in simulated histories", (plan, simulated) => {
  expect(testsOf(plan)).toBe(simulated);
});

test("with a test every three months the plan is one test from the twelve of simulated histories", () => {
  // by test 11 78 in 100 had been found, by test 12 90 (3,000 histories)
  const tests = testsOf({ made: evenly(4, 0.25), spacing: 0.25 });
  expect(Math.abs(tests - 12)).toBeLessThanOrEqual(1);
});

test("three readings from now on, after four tests of one, are one test from the six of simulated histories", () => {
  // by test 5 between 75 and 80 in 100 had been found (1,500 histories)
  expect(Math.abs(testsOf({ planned: 3 }) - 6)).toBeLessThanOrEqual(1);
});

test("to plan as many readings as before is to plan nothing new", () => {
  expect(testsUntilShown({ ...usual, repeats: 2, planned: 2 })).toEqual(
    testsUntilShown({ ...usual, repeats: 2 }),
  );
  expect(testsOf({ made: [], planned: 3, began: "first-test" })).toBe(
    testsOf({ made: [], repeats: 3, began: "first-test" }),
  );
});

test.each([
  [2, 0.03, 6, 8],
  [4, 0.03, 5, 7],
  [6, 0.03, 5, 7],
  [8, 0.03, 5, 7],
  [2, 0.06, 4, 5],
  [4, 0.06, 3, 5],
  [6, 0.06, 3, 4],
  [8, 0.06, 3, 4],
])(
  "with %d cylinders a loss of %d a year shows between the test that finds half of them and that which finds nine in ten",
  (cylinders, loss, half, nineInTen) => {
    // handbook/statistics.md I.3: computed there, 4,000 histories, tests .25 to 1 year apart, .625 on average
    expect(testsOf({ cylinders, loss })).toBeGreaterThanOrEqual(half);
    expect(testsOf({ cylinders, loss })).toBeLessThanOrEqual(nineInTen);
  },
);

test("the date is that of the last test needed, counted from the last one made", () => {
  expect(testsUntilShown(usual)).toEqual({ tests: 6, years: 6 * 0.625 });
  // nothing made yet: the first test begins the count
  const fresh = testsUntilShown({ ...usual, made: [], spacing: 1, began: "first-test" });
  expect(fresh?.years).toBe((fresh?.tests ?? NaN) - 1);
});

test("it counts from any day: moving all tests by 20 years changes nothing", () => {
  const later = usual.made.map((year) => year + 20);
  const [one, other] = [testsUntilShown(usual), testsUntilShown({ ...usual, made: later })];
  expect(other?.tests).toBe(one?.tests);
  expect(other?.years).toBeCloseTo(one?.years ?? NaN, 12);
});

test("more repeats, a faster loss and a longer wait never ask for more tests; more scatter never for fewer", () => {
  const falling = (numbers: readonly number[]): readonly number[] => [...numbers].sort((a, b) => b - a);
  const repeats = [1, 2, 3, 5].map((count) => testsOf({ repeats: count }));
  const losses = [0.01, 0.02, 0.03, 0.05, 0.1].map((loss) => testsOf({ loss }));
  const spacings = [0.25, 0.5, 1, 2].map((spacing) => testsOf({ spacing }));
  const scatters = [0.01, 0.02, 0.03, 0.04].map((scatter) => testsOf({ scatter }));
  expect(repeats).toEqual(falling(repeats));
  expect(losses).toEqual(falling(losses));
  expect(spacings).toEqual(falling(spacings));
  expect([...scatters].reverse()).toEqual(falling(scatters));
});

test("no alarm is ever promised before the fourth test", () => {
  expect(testsOf({ made: [], loss: 1, began: "first-test" })).toBe(4);
  expect(testsOf({ made: [0, 1, 2], loss: 1, began: "first-test" })).toBe(1);
});

test("a loss too slow for 60 tests, and a single cylinder, have no answer", () => {
  expect(testsUntilShown({ ...usual, spacing: 0.01, loss: 0.001 })).toBeUndefined();
  expect(testsUntilShown({ ...usual, cylinders: 1 })).toBeUndefined();
});

test("what cannot be a plan is refused", () => {
  for (const wrong of [
    { spacing: 0 },
    { loss: -0.01 },
    { repeats: 0 },
    { planned: 0.5 },
    { scatter: NaN },
    { cylinders: 2.5 },
  ])
    expect(() => testsUntilShown({ ...usual, ...wrong })).toThrow(RangeError);
});

test("the usual time between tests is the middle one of the gaps, whatever one long pause was", () => {
  expect(usualSpacing([2010, 2011, 2012.5, 2021.5])).toBe(1.5);
  expect(usualSpacing([2010, 2011, 2012.5, 2021.5, 2022.5])).toBe(1.25);
  expect(usualSpacing([2010])).toBeUndefined();
});
