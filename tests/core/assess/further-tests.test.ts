// How many further tests are foretold to an engine, from the tests that it has. Readings invented; the plan behind it is
// checked against simulated histories in tests/core/history/tests-until-shown.test.ts.

import { assessHistory } from "@sealtrend/core";
import { expect, test } from "vitest";
import { testsUntilShown } from "../../../packages/core/src/history/index.ts";
import { type Row, recordOf } from "./records.ts";

const rows = (dates: readonly string[], cells = "150 148 152 149"): readonly Row[] =>
  dates.map((date) => ({ test: `${date}a`, cells }));
const yearly = (from: number, count: number): readonly string[] =>
  Array.from({ length: count }, (_, i) => `${String(from + i)}-05-03`);
const furtherOf = (tests: readonly Row[], more: object = {}) =>
  assessHistory(recordOf({ tests, ...more })).cranking?.further;

test("a steady engine tested once a year is told what a loss that begins now would take", () => {
  const { result, further } = assessHistory(recordOf({ tests: rows(yearly(2017, 8)) })).cranking ?? {};
  expect(further).toMatchObject({ loss: 0.03, by: "owner", repeats: 1, one: { began: "last-test" } });
  expect(further?.spacing).toBeCloseTo(1, 2);
  const plan = {
    kind: "cranking",
    cylinders: 4,
    repeats: 1,
    made: result?.tests.map(({ years }) => years) ?? [],
    spacing: further?.spacing ?? NaN,
    loss: 0.03,
    began: "last-test",
    scatter: result?.scatter.s ?? NaN,
  } as const;
  expect(further?.one?.asNow).toEqual(testsUntilShown(plan));
  expect(further?.one?.ofThree).toEqual(testsUntilShown({ ...plan, planned: 3 }));
});

test("two tests tell nothing yet, so the loss may be there all along", () => {
  expect(furtherOf(rows(yearly(2024, 2)))).toMatchObject({ one: { began: "first-test" }, by: "owner" });
});

test("one test and an alarm are nothing to plan from", () => {
  expect(furtherOf(rows(["2024-05-03"]))).toBeUndefined();
  const falling = yearly(2015, 8).map((date, i) => ({
    test: `${date}a`,
    cells: `150 148 ${String(152 - 6 * i)} 149`,
  }));
  expect(furtherOf(falling)).toBeUndefined();
});

test("tests a week apart, or nine years, are no habit: the plan is one a year", () => {
  for (const dates of [
    ["2024-05-03", "2024-05-10"],
    ["2014-05-03", "2023-05-03"],
  ])
    expect(furtherOf(rows(dates))).toMatchObject({ by: "yearly", spacing: 1 });
});

test("a test made again a few days later does not change the habit", () => {
  const dates = ["2018-05-03", "2019-05-03", "2020-05-03", "2020-05-10", "2021-05-03", "2022-05-03"];
  expect(furtherOf(rows(dates))?.spacing).toBeCloseTo(1, 2);
});

test("three readings already taken are not asked for again", () => {
  const tests = yearly(2020, 5).flatMap((date) =>
    [1, 2, 3].map((take) => ({ test: `${date}a`, take: String(take), cells: "150 148 152 149" })),
  );
  const further = furtherOf(tests);
  expect(further).toMatchObject({ repeats: 3 });
  expect(further?.one).not.toHaveProperty("ofThree");
  expect(further?.whole).not.toHaveProperty("ofThree");
});

test("work on all cylinders begins the count anew, and what was read before does not count", () => {
  const tests = rows(yearly(2016, 8));
  const renewed = furtherOf(tests, { services: ["2022-01-01,,re-ring,all,all"] });
  expect(renewed?.one?.began).toBe("first-test");
  const one = furtherOf(tests, { services: ["2022-01-01,,valve job,3,3"] });
  expect(one?.one?.began).toBe("last-test");
});

test("leak-down has its own scatter and so its own plan", () => {
  const tests = yearly(2018, 6).map((date) => ({
    test: `${date}a`,
    what: "leak-down",
    unit: "%",
    cells: "8 7 9 8",
  }));
  const { leakDown } = assessHistory(recordOf({ tests }));
  expect(leakDown?.further?.one?.asNow?.tests).toBeLessThanOrEqual(
    furtherOf(rows(yearly(2018, 6)))?.one?.asNow?.tests ?? 0,
  );
});

test("one cylinder is planned by itself, by the gauge of the last test", () => {
  const tests = yearly(2016, 8).map((date) => ({ test: `${date}a`, cells: "150", gauge: "red" }));
  const further = furtherOf(tests, { cylinders: 1 });
  expect(further).not.toHaveProperty("one");
  expect(further?.whole).toMatchObject({ gauge: "red" });
  expect(further?.whole?.asNow?.years).toBeCloseTo((further?.whole?.asNow?.tests ?? NaN) * 1, 1);
});

test("an engine that falls as a whole already has no plan for that, one that stays has", () => {
  const falling = yearly(2010, 12).map((date, i) => ({
    test: `${date}a`,
    cells: [150, 148, 152, 149].map((psi) => String(Math.round(psi * 0.96 ** i))).join(" "),
  }));
  expect(furtherOf(falling)?.one).toBeDefined();
  expect(furtherOf(falling)).not.toHaveProperty("whole");
  expect(furtherOf(rows(yearly(2010, 12)))?.whole).toBeDefined();
});
