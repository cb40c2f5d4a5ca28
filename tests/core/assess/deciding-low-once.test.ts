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
  // and where there is nothing to be below, no more "0 % below the others"
  expect(decided(once("0 0 0 0")).oddTest?.text).toMatch(/^cylinder 1 held nothing in 2026-05-01a/);
});

test("one cylinder has no others to read below", () => {
  const takes = ["90", "120"].map((cells, i) => day("2026-05-01", cells, { take: String(i + 1) }));
  const engine = { limits: { compression: { minimum: "110 psi", source: "invented" } } };
  expect(decided({ cylinders: 1, engine, tests: takes }).oddTest?.text).toBe(
    "cylinder 1 read low in 2026-05-01a, and nothing else says so",
  );
  const leak = [day("2026-05-01", "42", { what: "leak-down", unit: "%" })];
  const leaks = decided({ cylinders: 1, tests: leak });
  expect(leaks.nextAction?.text).not.toMatch(/others|every cylinder/);
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

test("held nothing in two tests running: tested before hard use, and never watched", () => {
  const dead = { tests: [day("2025-11-01", "150 149 0 151"), day("2026-05-01", "150 149 0 151")] };
  const lost = { tests: [day("2025-05-01", "150 149 150 151"), ...dead.tests] };
  for (const found of [decided(dead), decided(lost)]) {
    expect(found.decision.verdict).toBe("test-again");
    expect(found.nextTest).toEqual({ date: today });
    expect(found.nextBy).toBe("before-hard-use");
    expect(found.decision.ifNotTested?.use).toBe("no-hard-use");
  }
});

// 60 and 58 beside 120 are half of the others; 80 beside 120 is two thirds of them, and of a minimum of 120
test("far past its limit, with the years against it as well, it is tested, not watched", () => {
  const years = ["2020", "2022", "2024"].map((year) => day(`${year}-05-01`, "120 121 119 120"));
  const far = [...years, day("2025-05-01", "120 121 60 119"), day("2026-05-01", "120 121 58 119")];
  const found = decided({ tests: far });
  expect(found.evidence.map(({ row }) => row)).toEqual(["A2", "A8"]);
  expect(found.decision).toMatchObject({ verdict: "test-again", reasons: ["low-unexplained"] });
  expect(found.nextAction).toMatchObject({ code: "leak-down-and-listen", by: "test" });
  expect(found.nextTest).toEqual({ date: today });
  // open above it can be measured, not tested
  expect(decided({ tests: far }, { opened: "head-off" }).decision.verdict).toBe("watch-it");
  const less = [...years, day("2025-05-01", "120 121 80 119"), day("2026-05-01", "120 121 80 119")];
  expect(decided({ tests: less }).input).not.toHaveProperty("farPast");
  const engine = { limits: { compression: { minimum: "120 psi", source: "invented" } } };
  expect(decided({ engine, tests: less }).input.farPast).toBe("yes");
});

test("however many tests say so, and whatever was before, far past its limit is tested or mended", () => {
  const row = (one: string, cylinders: number): string =>
    Array.from({ length: cylinders }, (_, i) => (i === 0 ? one : String(118 + i))).join(" ");
  for (const cylinders of [2, 4])
    for (const low of ["0", "62"])
      for (const before of [0, 1, 3])
        for (const running of [1, 2, 3, 4]) {
          const all = [...Array<string>(before).fill("120"), ...Array<string>(running).fill(low)];
          const tests = all.map((one, i) =>
            day(`${String(2027 - all.length + i)}-05-01`, row(one, cylinders)),
          );
          const { decision } = decided({ cylinders, tests });
          expect([cylinders, low, before, running, decision.verdict]).not.toContain("watch-it");
          expect(decision.verdict).not.toBe("leave-it");
        }
});

test("heard at the exhaust as well it is work, however far past its limit", () => {
  const years = ["2020", "2022", "2024"].map((year) => day(`${year}-05-01`, "120 121 119 120"));
  const tests = [
    ...years,
    day("2025-05-01", "120 121 60 119"),
    day("2026-05-01", "120 121 58 119"),
    day("2026-05-01", "6 7 60 6", { test: "2026-05-01a", what: "leak-down", unit: "%" }),
    day("2026-05-01", "x x exhaust x", { test: "2026-05-01a", what: "heard" }),
  ];
  const { decision } = decided({ tests });
  expect(decision).toMatchObject({ verdict: "open-the-top-end", basis: "needed" });
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

test("half the air lost, and the years against it as well, is listened for, not watched", () => {
  const years = [150, 146, 142, 138, 134].map((one, i) =>
    day(`${String(2021 + i)}-05-01`, `150 150 ${String(one)} 150`),
  );
  const now = (lost: string) => [
    ...years,
    day("2026-05-01", "150 150 130 150"),
    day("2026-05-01", `6 7 ${lost} 6`, { what: "leak-down", unit: "%" }),
  ];
  const found = decided({ tests: now("55") });
  expect(found.evidence.map(({ row }) => row)).toContain("A8");
  expect(found.decision).toMatchObject({ verdict: "test-again", reasons: ["leak-unplaced"] });
  expect(decided({ tests: now("25") }).input).not.toHaveProperty("farPast");
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
