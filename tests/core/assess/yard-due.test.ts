// When the next test of an engine of a yard is due, which of its cylinders are low, what luck may bring. Readings invented.

import { type YardRow, yardRow } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { type Row, recordOf } from "./records.ts";

const today = "2026-11-26";
const rowOf = (tests: readonly Row[], decide: "always" | "never" = "never", cylinders = 4): YardRow =>
  yardRow(recordOf({ cylinders, tests }), { today, decide });
const yearly = (from: number, cells: readonly string[]): readonly Row[] =>
  cells.map((readings, i) => ({ test: `${String(from + i)}-05-01a`, cells: readings }));

test("since when a test is due stays, whatever asks for one now", () => {
  const even = yearly(2016, ["150 151 149 150", "150 150 149 151"]);
  // a year of 365 days after 2017-05-01, the usual interval
  expect(rowOf(even).due).toEqual({ date: today, since: "2018-05-01" });
  const { decision, due } = rowOf(even, "always");
  expect([decision?.code, decision?.tooOld, due]).toEqual([
    "test-again",
    "over-a-year",
    { date: today, since: "2018-05-01" },
  ]);
  const suspect = yearly(2016, ["150 151 149 150", "150 150 131 151"]);
  expect(rowOf(suspect).worst?.standing).toBe("suspect");
  expect(rowOf(suspect).due).toEqual({ date: today, since: "2018-05-01" });
});

test("what is asked again before the interval is over is due today, and overdue since no day", () => {
  expect(rowOf(yearly(2025, ["150 151 149 150", "150 150 131 151"])).due).toEqual({ date: today });
  expect(rowOf([], "never").due).toEqual({ date: today });
});

/** The last one is a seller's sheet, which counts for nothing. */
const soldOn = (...dates: readonly string[]): readonly Row[] =>
  dates.map((date, i) => ({
    test: `${date}a`,
    cells: "150 151 149 150",
    by: i === dates.length - 1 ? "seller" : "me",
  }));

test("a later test that does not count is told from the one that does, and neither is overdue before it was made", () => {
  const tests = soldOn("2025-08-10", "2026-09-05");
  const { decision, due, test } = rowOf(tests, "always");
  expect(test?.date).toBe("2026-09-05");
  expect(decision).toMatchObject({ code: "test-again", tooOld: "over-a-year", counts: "2025-08-10" });
  // as without a decision: asked for now, and overdue since no day
  expect([due, rowOf(tests).due]).toEqual([{ date: today }, { date: today }]);
  // a year and a day after the sheet
  const old = soldOn("2024-01-10", "2025-10-05");
  expect([rowOf(old, "always").due, rowOf(old).due]).toEqual(
    Array(2).fill({ date: today, since: "2026-10-05" }),
  );
  // where the one that counts still speaks, the interval counts from it, and says so
  const near = rowOf(soldOn("2025-11-26", "2026-11-20"), "always");
  expect(near.decision).toMatchObject({ code: "leave-it", counts: "2025-11-26" });
  expect(near.due).toMatchObject({ of: "2025-11-26a" });
  expect(rowOf(yearly(2026, ["150 151 149 150"]), "always").due).not.toHaveProperty("of");
});

test("the interval counts from work on all of it, with a decision and without", () => {
  const record = recordOf({
    cylinders: 4,
    tests: yearly(2016, ["150 151 149 150"]),
    services: ["2026-10-01,,valve job,1 2 3 4,1 2 3 4,,"],
  });
  const due = (decide: "always" | "never") => yardRow(record, { today, decide }).due;
  expect(due("never")).toEqual({ date: "2027-10-01" });
  expect(due("always")).toEqual({ date: today });
});

test("a test that is dated after today is told, and the next one is due now", () => {
  const row = rowOf(yearly(2031, ["150 151 149 150"]));
  expect([row.ahead, row.due]).toEqual([["test 2031-05-01a"], { date: today }]);
  expect(rowOf(yearly(2026, ["150 151 149 150"]))).not.toHaveProperty("ahead");
});

test("every low cylinder is listed, in the engine's order, with what makes it so", () => {
  const { low = [], worst } = rowOf(
    yearly(2025, ["150 110 151 149 108 111 150 152", "150 109 151 149 108 110 150 152"]),
    "never",
    8,
  );
  expect(low.map(({ label, standing, limitsMissed }) => [label, standing, limitsMissed])).toEqual(
    ["2", "5", "6"].map((label) => [label, "lagging", ["usual-ratio"]]),
  );
  expect(worst?.label).toBe("5");
  expect(rowOf(yearly(2026, ["150 151 149 150"]))).not.toHaveProperty("low");
});

test("readings that contradict each other are told from one that was flagged once", () => {
  const twice = (first: string, second: string): readonly Row[] => [
    { test: "2026-05-01a", take: "1", cells: first },
    { test: "2026-05-01a", take: "2", cells: second },
  ];
  const torn = rowOf(twice("150 151 110 150", "150 150 149 151"));
  expect(torn.worst).toMatchObject({ label: "3", standing: "suspect", repeats: "contradict" });
  expect(rowOf(yearly(2026, ["150 150 131 151"])).worst).not.toHaveProperty("repeats");
});

test("luck is told as a bound where cylinders were read more than once", () => {
  const once: Row = { test: "2026-05-01a", cells: "150 151 149 150" };
  const again: Row = { test: "2026-05-01a", take: "2", cells: "150 150 149 151" };
  expect([rowOf([once]).byLuckIs, rowOf([once, again]).byLuckIs]).toEqual(["about", "at-most"]);
  expect(rowOf([once, again]).byLuck).toBe(rowOf([once]).byLuck);
});

test("with a scatter of its own from many repeats the chance is that of the test itself, 1 in 20", () => {
  const takes = (year: number): readonly Row[] =>
    ["150 151 149 150", "151 150 150 149", "149 151 150 151"].map((cells, i) => ({
      test: `${String(year)}-05-01a`,
      take: String(i + 1),
      cells,
    }));
  const many = rowOf([2023, 2024, 2025, 2026].flatMap(takes));
  expect([many.byLuck, many.byLuckIs]).toEqual([0.05, "at-most"]);
});

test("a lone cylinder that falls has its rate", () => {
  const { course } = rowOf(yearly(2021, ["152", "146", "140", "134", "128", "123"]), "never", 1);
  // 152 to 123 in five years
  expect(course?.code).toBe("falling");
  expect(course?.perYear).toBeCloseTo(Math.log(123 / 152) / 5, 2);
});
