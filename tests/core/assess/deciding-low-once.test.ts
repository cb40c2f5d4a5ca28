// A cylinder that lags: in one test it is read again before anything follows; shown twice and by cranking alone it is asked
// about by another instrument, and never left. Guard G3 and section 5 of handbook/decision.md; readings invented.

import { expect, test } from "vitest";
import { decided, rowsIn } from "./deciding-records.ts";
import { type Row, type Written, assessed, cylinder } from "./records.ts";

const today = "2026-05-21";
const day = (date: string, cells: string, more: Partial<Row> = {}): Row => ({
  test: `${date}a`,
  cells,
  ...more,
});
const once = (cells: string): Written => ({ tests: [day("2026-05-01", cells)] });
const again = { verdict: "test-again", reasons: ["one-odd-test"], next: { step: "repeat-this-test" } };

// 30, 38, 60 and 100 % below the others
test.each(["152 105 149 151", "152 95 94 151", "150 60 151 149", "150 149 0 151"])(
  "low once, %s is read again now, and not run hard before",
  (cells) => {
    const { decision, nextTest, oddTest, nextAction } = decided(once(cells));
    expect(decision).toMatchObject(again);
    expect(decision.ifNotTested).toMatchObject({ verdict: "watch-it", use: "no-hard-use" });
    expect(nextTest).toEqual({ date: today });
    expect(oddTest).toMatchObject({ test: "2026-05-01a", kind: "dry", against: "others" });
    expect(nextAction).toBeDefined();
  },
);

test("what holds nothing is told as that, not as 100 %", () => {
  expect(decided(once("150 149 0 151")).oddTest?.text).toBe(
    "cylinder 3 held nothing in 2026-05-01a, and nothing else says so",
  );
});

// 107 of 150: flagged in both
const running = { tests: [day("2026-04-20", "150 151 107 149"), day("2026-05-01", "150 151 107 149")] };

test("flagged in two tests running it is believed, and another instrument is asked before it is left", () => {
  const found = decided(running);
  expect(found.oddTest).toBeUndefined();
  expect(found.decision).toMatchObject({ verdict: "test-again", reasons: ["low-unexplained"] });
  expect(found.nextTest).toEqual({ date: today });
  expect(found.nextAction?.text).not.toContain("before you believe it");
  expect(found.decision.guards.some(({ code }) => code === "one-odd-test")).toBe(false);
});

test("what two tests running or two readings have shown is not read again to be believed", () => {
  const codes = (written: Written) => assessed(written).nextTests.map(({ text }) => text);
  const sameDay = {
    tests: [
      day("2026-05-01", "150 151 107 149"),
      day("2026-05-01", "150 151 107 149", { test: "2026-05-01b" }),
    ],
  };
  for (const written of [running, sameDay]) {
    expect(cylinder(assessed(written), "3")).toMatchObject({ standing: "lagging", confirmed: true });
    expect(codes(written).join()).not.toContain("before you believe it");
  }
  expect(cylinder(assessed(once("150 151 107 149")), "3")).not.toHaveProperty("confirmed");
  expect(codes(once("150 151 107 149")).join()).toContain("read 3 again, twice");
});

// 150 and 148 beside 131 and 130: no one stands out, all lie further apart than healthy cylinders do
test("what the screen of the test asks to be read again is due now", () => {
  const found = decided(once("150 148 131 130"));
  expect(found.test?.apart).toBe("wider");
  expect(found.decision.verdict).not.toBe("leave-it");
  expect(found.nextTest).toEqual({ date: today });
});

test("with the years behind it, or air heard, one low reading is not odd", () => {
  const years = ["2021", "2022", "2023", "2024", "2025"].map((year, i) =>
    day(`${year}-05-01`, `150 150 ${String(150 - 8 * i)} 150`),
  );
  const found = decided({ tests: [...years, day("2026-05-01", "150 150 102 150")] });
  expect(found.oddTest).toBeUndefined();
});

test("open it cannot be cranked: it is watched, not left", () => {
  const { decision } = decided(running, { opened: "head-off" });
  expect(decision.verdict).toBe("watch-it");
});

test("one test is no history: nothing was lost over the years, and nothing moved in a step", () => {
  const found = decided(once("150 149 0 151"));
  expect(rowsIn(once("150 149 0 151"))).toEqual(["A2"]);
  expect(found.history.cranking?.result.cylinders.flatMap(({ alarms }) => alarms)).toEqual([]);
  expect(found.chanceUnknown).not.toContain("step");
  // it held before
  const lost = decided({ tests: [day("2025-05-01", "150 149 150 151"), day("2026-05-01", "150 149 0 151")] });
  expect(lost.history.cranking?.result.cylinders[2]?.alarms).toEqual(["no-compression"]);
});

test("held nothing in two tests running: watched at least, tested before hard use", () => {
  const dead = { tests: [day("2025-11-01", "150 149 0 151"), day("2026-05-01", "150 149 0 151")] };
  const found = decided(dead);
  expect(found.decision.verdict).toBe("test-again");
  expect(found.nextTest).toEqual({ date: today });
  expect(found.decision.ifNotTested?.use).toBe("no-hard-use");
  const lost = { tests: [day("2025-05-01", "150 149 150 151"), ...dead.tests] };
  const watched = decided(lost);
  expect(watched.nextTest).toEqual({ date: today });
  if (watched.decision.verdict === "watch-it") expect(watched.nextBy).toBe("before-hard-use");
});

const leaks = (...tests: readonly [string, string, string?][]): Written => ({
  tests: tests.flatMap(([date, cells, heard]) => [
    day(date, cells, { what: "leak-down", unit: "%" }),
    ...(heard === undefined ? [] : [day(date, heard, { what: "heard" })]),
  ]),
});

test("a leak that is sure and that nobody placed is not left: it is listened for first", () => {
  const found = decided(leaks(["2025-05-01", "6 12 7 6"], ["2026-05-01", "7 25 7 6"]));
  expect(found.decision).toMatchObject({ verdict: "test-again", reasons: ["leak-unplaced"] });
  expect(found.unplacedLeaks).toEqual([{ label: "2", lost: 0.25 }]);
  expect(found.nextTest).toEqual({ date: today });
  expect(found.nextAction?.code).toBe("leak-down-and-listen");
});

test("a leak that was heard is placed, and an even one asks for nothing", () => {
  const heard = leaks(["2025-05-01", "6 12 7 6"], ["2026-05-01", "7 25 7 6", "x exhaust x x"]);
  expect(decided(heard)).toMatchObject({ unplacedLeaks: [] });
  expect(decided(heard).evidence.map(({ row }) => row)).toContain("B2");
  expect(decided(leaks(["2026-05-01", "6 7 7 6"]))).toMatchObject({
    unplacedLeaks: [],
    decision: { verdict: "leave-it" },
  });
});
