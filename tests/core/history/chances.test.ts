// The chance of still being above a limit some years ahead. Readings invented.

import { expect, test } from "vitest";
import { analyseHistory, type HistoryTest } from "../../../packages/core/src/history/index.ts";
import { h1, h1Until, historyOf, testsOf } from "./tables.ts";

const relative = (tests: readonly HistoryTest[], more = {}) =>
  analyseHistory(historyOf(tests, { limitRatio: 0.8, ...more }));

test("the chances of the reference history fall from year to year, and agree with R where R was asked", () => {
  const stays = analyseHistory({ ...h1Until(8), limitRatio: 0.8 }).cylinders[2]?.stays ?? [];
  expect(stays.map(({ ahead }) => ahead)).toEqual([1, 2, 3, 5]);
  // handbook/statistics.md C.10: 5.5 and 6.5 years, one and two after the last test
  expect(stays[0]?.probability).toBeCloseTo(0.9991369058148675, 8);
  expect(stays[1]?.probability).toBeCloseTo(0.518538499289754, 7);
});

test("nothing is said beyond three times the observed span", () => {
  // a year and a half from first to last: three spans end three years after the last test
  const short = relative(testsOf(h1.rows.slice(0, 4), [0, 0.5, 1, 1.5]));
  expect(short.cylinders[2]?.stays.map(({ ahead }) => ahead)).toEqual([1, 2, 3]);
  // half a year: one year after the last test
  const shorter = relative(testsOf(h1.rows.slice(0, 4), [0, 0.2, 0.4, 0.5]));
  expect(shorter.cylinders[2]?.stays.map(({ ahead }) => ahead)).toEqual([1]);
});

test("years count from the engine's last test, not from the last one in which this cylinder was read", () => {
  const rows = ["150 150 150 150", "150 150 147 150", "150 150 144 150", "150 150 141 150"];
  const read = relative(testsOf(rows));
  const missed = relative(testsOf([...rows, "150 150 - 150"]));
  const year = (result: typeof read, ahead: number) =>
    result.cylinders[2]?.stays.find((one) => one.ahead === ahead)?.probability ?? NaN;
  // a year after test 5 is two after test 4; the scatter of the others is a little better known
  expect(Math.abs(year(missed, 1) - year(read, 2))).toBeLessThan(0.02);
  expect(year(missed, 1)).toBeLessThan(year(read, 1));
});

test("two and three tests, and a single cylinder without a minimum, give no chance", () => {
  for (const count of [1, 2, 3])
    expect(analyseHistory({ ...h1Until(count), limitRatio: 0.8 }).cylinders[2]?.stays).toEqual([]);
  expect(analyseHistory(historyOf(testsOf(["150", "149", "150", "149", "150"]))).weakest).toEqual([]);
});

// statistics.md L.11 example 4 with the maker's minimum at 136 psi; E computed apart from this library (numpy, SciPy)
test("a cylinder's own pressure has a chance against the minimum, with the doubt of its gauges", () => {
  const gauges = ["A", "A", "B", "B", "A", "B"];
  const own = [0, 0.01, 0.01, 0.02, 0, 0.01];
  const shared = [0, 0.004, 0.004, 0.012, 0, 0.008];
  const tests = testsOf(["160", "158", "149", "148", "151", "143"], [0, 1, 2, 3.5, 4, 5.5]).map((one, k) => ({
    ...one,
    gauge: gauges[k] ?? "",
    correctionUncertainty: own[k] ?? 0,
    sharedUncertainty: { q: shared[k] ?? 0 },
  }));
  const { cylinders, weakest } = analyseHistory(historyOf(tests, { minimum: Math.log(136) }));
  const expected = [0.9378926900774708, 0.8367633458055511, 0.6973177124374204, 0.4357593549958036];
  cylinders[0]?.absolute?.stays?.forEach(({ probability }, k) =>
    expect(probability).toBeCloseTo(expected[k] ?? NaN, 9),
  );
  expect(weakest.map(({ ahead }) => ahead)).toEqual([1, 2, 3, 5]);
  // one cylinder and one limit leave nothing between the bounds
  for (const { probability, allAtLeast } of weakest) expect(allAtLeast).toBeCloseTo(probability, 12);
});

test("the engine is as sure as its weakest cylinder at most, and at least as all doubts added leave", () => {
  const { cylinders, weakest } = analyseHistory({ ...h1Until(8), limitRatio: 0.8, minimum: Math.log(120) });
  for (const { ahead, label, probability, allAtLeast } of weakest) {
    const each = cylinders.flatMap(({ stays, absolute }) =>
      [...stays, ...(absolute?.stays ?? [])].flatMap((stay) =>
        stay.ahead === ahead ? [stay.probability] : [],
      ),
    );
    expect(each).toHaveLength(8);
    expect(label).toBe("3");
    expect(probability).toBe(Math.min(...each));
    expect(allAtLeast).toBeCloseTo(Math.max(0, 1 - each.reduce((sum, one) => sum + 1 - one, 0)), 12);
  }
  expect(weakest).toHaveLength(4);
});

test("after a step, a drop seen once or a reading of nothing, the engine as a whole has no chance to tell", () => {
  const flat = new Array<string>(4).fill("150 151 149 150");
  expect(relative(testsOf([...flat, ...flat])).weakest).not.toEqual([]);
  const step = ["151 150 132 149", "149 150 131 151", "150 151 133 150"];
  expect(relative(testsOf([...flat, ...step])).weakest).toEqual([]);
  expect(relative(testsOf([...flat, ...flat, "150 150 130 150"])).weakest).toEqual([]);
  expect(relative(testsOf([...flat, "150 150 x 150"])).weakest).toEqual([]);
});
