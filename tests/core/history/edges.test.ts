// What the history says where there is little, nothing, or something odd to go by. Readings invented.

import { expect, test } from "vitest";
import {
  analyseHistory,
  type HistoryCell,
  type HistoryTest,
} from "../../../packages/core/src/history/index.ts";
import { varianceOfMedian } from "../../../packages/core/src/statistics/index.ts";
import { h1, h1Until, historyOf, repaired, testsOf } from "./tables.ts";

const flat = (count: number, row = "150 150 150 150"): readonly string[] =>
  new Array<string>(count).fill(row);
const courses = (tests: readonly HistoryTest[], more = {}): readonly string[] =>
  analyseHistory(historyOf(tests, more)).cylinders.map(({ course }) => course);

test("without a test the history is empty and says so", () => {
  const none = analyseHistory({ ...historyOf([]), labels: ["1", "2"] });
  expect(none.cylinders.map(({ course, count }) => ({ course, count }))).toEqual([
    { course: "too-short-to-tell", count: 0 },
    { course: "too-short-to-tell", count: 0 },
  ]);
  expect(none.common).toMatchObject({ word: "too-short-to-tell", count: 0 });
});

test("one test tells nothing over time, however low a cylinder reads", () => {
  const one = analyseHistory(historyOf(testsOf(["150 152 120 149"])));
  expect(one.cylinders.map(({ course }) => course)).toEqual(new Array(4).fill("too-short-to-tell"));
  expect(
    one.cylinders.every(
      ({ change, theilSen, pooled }) =>
        change === undefined && theilSen === undefined && pooled === undefined,
    ),
  ).toBe(true);
});

test("two and three tests never give a slope", () => {
  for (const count of [2, 3]) {
    const few = analyseHistory(h1Until(count));
    expect(
      few.cylinders.every(
        ({ theilSen, pooled, lossBound }) =>
          theilSen === undefined && pooled === undefined && lossBound === undefined,
      ),
    ).toBe(true);
  }
});

test("two tests give the engine-wide change between them, without a word", () => {
  const { common } = analyseHistory(h1Until(2));
  expect(common.word).toBe("too-short-to-tell");
  expect(common.trend?.t).toBeUndefined();
  // two gauges not known, four cylinders: variance of the difference 2 (.03^2 + .02^2 + .000325 v_4), over half a year
  const error = Math.sqrt(2 * (0.0009 + 0.0004 + 0.000325 * varianceOfMedian(4))) / 0.5;
  expect(common.trend?.standardError).toBeCloseTo(error, 12);
});

test("readings that are all equal are steady, with an interval of no width", () => {
  const result = analyseHistory(historyOf(testsOf(flat(6))));
  expect(result.cylinders.map(({ course }) => course)).toEqual(new Array(4).fill("steady"));
  expect(result.cylinders[0]?.theilSen).toMatchObject({ slope: 0, low: 0, high: 0 });
  expect(result.cylinders.flatMap(({ alarms }) => alarms)).toEqual([]);
});

test("steady has to be shown: four even tests within half a year are too short to tell", () => {
  expect(courses(testsOf(flat(4), [0, 0.1, 0.3, 0.5]))).toEqual(new Array(4).fill("too-short-to-tell"));
});

test("tests of one day are one test, and their readings repeats", () => {
  const tests = testsOf(["150 152 149 151", "148 - - -", "147 148 140 147"], [0, 0, 1]);
  const { tests: used } = analyseHistory(historyOf(tests));
  expect(used.map(({ ids }) => ids)).toEqual([["t1", "t2"], ["t3"]]);
  const merged = analyseHistory(historyOf(tests)).cylinders[0]?.ratios[0];
  // mean of ln 150 and ln 148 against the median of 152, 149 and 151
  expect(merged).toBeCloseTo((Math.log(150) + Math.log(148)) / 2 - Math.log(151), 12);
});

test("work between two tests of one day keeps them apart", () => {
  const services = [{ afterTests: 1, touched: [0], newBaseline: [], why: "valve lash" }];
  const tests = testsOf(["150 152", "158 152"], [0, 0]);
  expect(analyseHistory(historyOf(tests, { services })).tests).toHaveLength(2);
});

test("a history whose tests all fall on one day has no slope", () => {
  const one = analyseHistory(historyOf(testsOf(flat(5), [0, 0, 0, 0, 0])));
  expect(one.tests).toHaveLength(1);
  expect(one.cylinders.every(({ course }) => course === "too-short-to-tell")).toBe(true);
  expect(one.common.trend).toBeUndefined();
});

test("equal dates kept apart by work on one cylinder still give the others no slope", () => {
  const services = [1, 2, 3].map((afterTests) => ({
    afterTests,
    touched: [0],
    newBaseline: [0],
    why: "valve job",
  }));
  const result = analyseHistory(historyOf(testsOf(flat(4), [0, 0, 0, 0]), { services }));
  expect(result.cylinders[1]).toMatchObject({ course: "too-short-to-tell", count: 4, alarms: [] });
  expect(result.cylinders[1]?.theilSen).toBeUndefined();
});

test("two tests close together count as one place for a slope and as two for the two last readings", () => {
  const rows = ["150 152 149 151", "151 153 150 152", "150 152 128 151", "149 151 127 150"];
  const three = analyseHistory(historyOf(testsOf(rows, [0, 1, 2, 2.03]))).cylinders[2];
  expect(three?.theilSen).toBeDefined();
  expect(three?.alarms).not.toContain("slope");
});

test("a gap of nine years changes nothing but the time", () => {
  const rows = [...flat(3), ...flat(3, "147 148 133 146")];
  const result = analyseHistory(historyOf(testsOf(rows, [0, 0.5, 1, 10, 10.5, 11])));
  expect(result.cylinders[2]?.alarms).toContain("two-below-baseline");
  // ln (133/150) - ln (147/150) lost over the gap: about 1 % a year
  expect(result.cylinders[2]?.pooled?.slope).toBeCloseTo(-0.0101, 3);
});

test("two cylinders mirror each other, and the falling one is named once the engine as a whole does not rise", () => {
  const rows = ["150 150", "150 148", "150 144", "150 139", "150 135", "150 130"];
  const long = analyseHistory(historyOf(testsOf(rows)));
  expect(long.cylinders[1]).toMatchObject({ course: "falling", mirrored: "named" });
  expect(long.cylinders[0]).toMatchObject({ course: "rising", alarms: [] });
  expect(analyseHistory(historyOf(testsOf(rows.slice(0, 3)))).cylinders[1]?.mirrored).toBe("either");
  expect(analyseHistory(h1Until(8)).cylinders[2]?.mirrored).toBe("no");
});

test("a cylinder that holds nothing is flagged outright and stays out of every statistic", () => {
  const rows = [...flat(4), "150 150 x 150"];
  const dead = analyseHistory(historyOf(testsOf(rows)));
  expect(dead.cylinders[2]).toMatchObject({
    course: "stepped-down",
    alarms: ["no-compression"],
    noCompression: [4],
    count: 4,
  });
  expect(dead.cylinders[2]?.contrasts[4]).toBeUndefined();
  expect(dead.cylinders.filter(({ alarms }) => alarms.length > 0)).toHaveLength(1);
  const never = analyseHistory(historyOf(testsOf(flat(3, "150 150 x 150"))));
  expect(never.cylinders[2]).toMatchObject({ course: "too-short-to-tell", alarms: ["no-compression"] });
});

test("a step up without work written down is a word, no alarm", () => {
  const rows = ["150 150 140 150", "150 150 157 150", "150 150 158 150"];
  expect(analyseHistory(historyOf(testsOf(rows))).cylinders[2]).toMatchObject({
    course: "stepped-up",
    alarms: [],
  });
});

test("a drop that is seen once after many even tests asks for a repeat and raises no alarm", () => {
  const last = analyseHistory(historyOf(testsOf([...flat(7), "150 150 132 150"])));
  expect(last.cylinders[2]?.change).toMatchObject({ flagged: true, test: 7 });
  expect(last.cylinders[2]?.alarms).not.toContain("two-below-baseline");
});

test("a drop that stays is sudden, and placed where it happened", () => {
  const rows = [...flat(4), "151 150 132 149", "149 150 131 151", "150 151 133 150"];
  const three = analyseHistory(historyOf(testsOf(rows))).cylinders[2];
  expect(three).toMatchObject({
    course: "stepped-down",
    shape: { shape: "sudden", firstAfter: 4, seenIn: "several" },
  });
});

test("run-in tests, foreign sheets and tests set aside are in no slope, baseline or change test", () => {
  for (const use of ["run-in", "seller", "set-aside"] as const) {
    const without = analyseHistory(h1Until(8)).cylinders[2];
    const odd: HistoryTest = { ...(testsOf(["120 172 90 171"], [4.7])[0] ?? fail()), use };
    const tests = [...testsOf(h1.rows, h1.x), odd];
    const three = analyseHistory(historyOf(tests)).cylinders[2];
    expect(three?.pooled).toEqual(without?.pooled);
    expect(three?.change).toEqual(without?.change);
    expect(three?.contrasts[8] === undefined).toBe(use === "set-aside");
  }
});

test("work on all cylinders closes every epoch, and only the level of the engine is left to compare", () => {
  const services = [{ afterTests: 1, touched: [0, 1, 2, 3], newBaseline: [0, 1, 2, 3], why: "rebuild" }];
  const rows = ["120 122 118 121", "150 151 149 150"];
  const gauged = (names: readonly string[]): readonly HistoryTest[] =>
    testsOf(rows).map((one, k) => ({ ...one, gauge: names[k] ?? "" }));
  const other = analyseHistory(historyOf(gauged(["A", "B"]), { services })).services[0];
  const same = analyseHistory(historyOf(gauged(["A", "A"]), { services })).services[0];
  expect(other).toMatchObject({ against: "earlier-level", steps: [{ verdict: "rose" }] });
  // handbook/statistics.md L.6: one test each side hides changes below 8.7 % on two gauges, 5.2 % on one (N = 4)
  expect(other?.steps[0]?.shownFrom).toBeCloseTo(0.087, 3);
  expect(same?.steps[0]?.shownFrom).toBeCloseTo(0.052, 3);
});

test("after work no test has followed yet, the new epoch is open and empty", () => {
  const services = [{ afterTests: 6, touched: [2], newBaseline: [2], why: "valve job" }];
  const result = analyseHistory(historyOf(testsOf(repaired), { services }));
  expect(result.cylinders[2]).toMatchObject({ course: "too-short-to-tell", count: 0 });
  expect(result.cylinders[2]?.since).toBeUndefined();
  expect(result.epochs.at(-1)).toEqual({ cylinders: ["3"], why: "valve job" });
  expect(result.services[0]?.steps[0]?.verdict).toBe("cannot-tell");
});

test("untouched cylinders keep their epoch across work on another", () => {
  const services = [{ afterTests: 4, touched: [2], newBaseline: [2], why: "valve job" }];
  const result = analyseHistory(historyOf(testsOf(repaired), { services }));
  expect(result.cylinders.map(({ count, since }) => ({ count, since }))).toEqual([
    { count: 6, since: 0 },
    { count: 6, since: 0 },
    { count: 2, since: 4 },
    { count: 6, since: 0 },
  ]);
  expect(result.epochs).toEqual([
    { from: 0, to: 3, cylinders: ["3"] },
    { from: 0, to: 5, cylinders: ["1", "2", "4"] },
    { from: 4, to: 5, cylinders: ["3"], why: "valve job" },
  ]);
});

test("on a meter axis slopes count a 1000 units, and places of a limit are meter readings", () => {
  const x = h1.x.map((years) => 40_000 + 12_000 * years);
  const tests = testsOf(h1.rows, x).map((one, k) => ({ ...one, years: h1.x[k] ?? NaN }));
  const axis = { kind: "meter", unit: "km" } as const;
  const metered = analyseHistory({ ...historyOf(tests), axis, limitRatio: 0.8 });
  // 12,000 km a year: slopes per 1000 km are a twelfth of those a year; crossing C.10: 6.49733052290641 years
  expect(metered.cylinders[2]?.pooled?.slope).toBeCloseTo(-0.0331594290433041 / 12, 10);
  expect(metered.axis.perYear).toBeCloseTo(12, 12);
  expect(metered.cylinders[2]?.limit?.crossing).toBeCloseTo(40_000 + 12_000 * 6.49733052290641, 2);
  expect(metered.cylinders[0]?.course).toBe("steady");
});

test("a test in which one cylinder was read says nothing about it against the others", () => {
  const rows = [...h1.rows.slice(0, 4), "- - 120 -"];
  const with1 = analyseHistory(historyOf(testsOf(rows, [...h1.x.slice(0, 4), 2])));
  expect(with1.cylinders[2]).toMatchObject({ count: 4 });
  expect(with1.cylinders[2]?.contrasts[4]).toBeUndefined();
});

test("input that no caller should make is refused by name", () => {
  const bad = (change: Partial<HistoryTest>) => () =>
    analyseHistory(
      historyOf(testsOf(["150 151", "150 151"]).map((one, k) => (k === 1 ? { ...one, ...change } : one))),
    );
  const infinite: readonly HistoryCell[] = [
    { kind: "read", ln: -Infinity, repeats: 1 },
    { kind: "not-read" },
  ];
  expect(bad({ x: -1 })).toThrow(/test t2 lies before/);
  expect(bad({ cells: [] })).toThrow(/0 cells for 2 cylinders/);
  expect(bad({ cells: infinite })).toThrow(/without a finite ln/);
});

const fail = (): never => {
  throw new Error("no such test");
};
