// From a record to its history: which tests count, on which axis, with which breaks. Readings invented.

import { assessHistory, assessTest } from "@sealtrend/core";
import { expect, test } from "vitest";
import { type Row, recordOf } from "./records.ts";

const day = (date: string, cells: string, more: Partial<Row> = {}): Row => ({
  test: `${date}a`,
  cells,
  ...more,
});
const sound = ["2020-05-02", "2021-05-02", "2022-05-02", "2023-05-02", "2024-05-02"].map((date) =>
  day(date, "150 148 152 149"),
);
const of = (tests: readonly Row[], more: object = {}) => assessHistory(recordOf({ tests, ...more }));
const uses = (assessment: ReturnType<typeof of>) => assessment.cranking?.result.tests.map(({ use }) => use);

test("equal readings over the years are steady, cylinder by cylinder", () => {
  const courses = of(sound).cranking?.result.cylinders.map(({ course }) => course);
  expect(courses).toEqual(["steady", "steady", "steady", "steady"]);
});

test("the axis is the meter where every test has it and it runs forward", () => {
  const metered = sound.map((row, i) => ({ ...row, meter: String(1000 + 100 * i) }));
  expect(of(metered, { engine: { meter: "h" } }).cranking?.result.axis).toMatchObject({
    kind: "meter",
    unit: "h",
    slopePer: 1000,
  });
  expect(of(metered).cranking?.result.axis.kind).toBe("dates");
  const gap = metered.map((row, i) => (i === 2 ? { ...row, meter: "" } : row));
  expect(of(gap, { engine: { meter: "h" } }).cranking?.result.axis.kind).toBe("dates");
  const still = sound.map((row) => ({ ...row, meter: "1000" }));
  expect(of(still, { engine: { meter: "h" } }).cranking?.result.axis.kind).toBe("dates");
});

test("a meter that was replaced sends the history back to dates", () => {
  const metered = sound.map((row, i) => ({ ...row, meter: String(i < 3 ? 1000 + i : i) }));
  const services = ["2022-12-01,0,meter replaced,,none"];
  expect(of(metered, { engine: { meter: "h" }, services }).cranking?.result.axis.kind).toBe("dates");
});

test("a seller's sheet, a void test and one set aside are shown and do not count", () => {
  const tests = [
    day("2019-05-02", "170 170 170 170", { by: "seller" }),
    ...sound,
    day("2025-05-02", "90 90 90 90", { throttle: "closed" }),
    day("2026-05-02", "90 148 152 149", { set_aside: "wrong adapter" }),
  ];
  const assessment = of(tests);
  expect(uses(assessment)).toEqual([
    "seller",
    "full",
    "full",
    "full",
    "full",
    "full",
    "set-aside",
    "set-aside",
  ]);
  expect(assessment.cranking?.result.cylinders.map(({ course }) => course)).toEqual(
    new Array(4).fill("steady"),
  );
});

test("a doubtful test counts", () => {
  const tests = [...sound, day("2025-05-02", "150 148 152 149?")];
  expect(uses(of(tests))?.at(-1)).toBe("full");
});

test("tests within 25 h after new rings are run-in, at 25 h they count", () => {
  const tests = [
    day("2024-05-02", "150 148 152 149", { meter: "1000" }),
    day("2024-06-02", "140 141 139 140", { meter: "1019" }),
    day("2024-07-02", "150 148 152 149", { meter: "1030" }),
  ];
  const services = ["2024-05-20,1005,re-ring,all,all"];
  const after = of(tests, { engine: { meter: "h" }, services });
  expect(uses(after)).toEqual(["full", "run-in", "full"]);
});

test("run-in is 1,000 km, and as many miles as that makes", () => {
  const tests = (meter: string) => [
    day("2024-05-02", "150 148 152 149", { meter: "1000" }),
    day("2024-06-02", "150 148 152 149", { meter }),
  ];
  const at = (unit: string, meter: string) =>
    uses(of(tests(meter), { engine: { meter: unit }, services: ["2024-05-20,1000,rebuild,all,all"] }))?.at(
      -1,
    );
  expect([at("km", "1999"), at("km", "2000")]).toEqual(["run-in", "full"]);
  // 1,000 km = 621.4 miles
  expect([at("mi", "1621"), at("mi", "1622")]).toEqual(["run-in", "full"]);
});

test("a test on the day of the work comes after it; of two the first is before", () => {
  const services = ["2022-05-02,,valve job,3,3"];
  const one = of(sound, { services }).cranking?.result.services[0];
  expect(one).toMatchObject({ before: 2 });
  const twice = [...sound, { ...day("2022-05-02", "150 148 152 149"), test: "2022-05-02b" }];
  const two = of(twice, { services }).cranking;
  expect(two?.result.services[0]?.before).toBe(3);
  expect(two?.result.tests.map(({ ids }) => ids[0])).toContain("2022-05-02b");
});

test("two tests of one day with no work between are one test", () => {
  const twice = [...sound, { ...day("2022-05-02", "150 148 152 149"), test: "2022-05-02b" }];
  expect(of(twice).cranking?.result.tests.map(({ ids }) => ids.length)).toEqual([1, 1, 2, 1, 1]);
});

test("another leak-down tester begins the contrasts anew, a second compression gauge does not", () => {
  const leak = (date: string, gauge: string, more: Partial<Row> = {}) =>
    day(date, "8 7 9 8", { what: "leak-down", unit: "%", gauge, ...more });
  const tests = [
    leak("2022-05-02", "a"),
    leak("2023-05-02", "a"),
    leak("2024-05-02", "b"),
    leak("2025-05-02", "b"),
  ];
  const history = of(tests).leakDown?.result;
  expect(history?.cylinders.map(({ since }) => since)).toEqual([2, 2, 2, 2]);
  expect(history?.epochs.some(({ why }) => why === "another tester")).toBe(true);
  const gauges = sound.map((row, i) => ({ ...row, gauge: i < 2 ? "a" : "b" }));
  expect(of(gauges).cranking?.result.cylinders.map(({ since }) => since)).toEqual([0, 0, 0, 0]);
});

test("a test that does not count changes no tester", () => {
  const leak = (date: string, more: Partial<Row> = {}) =>
    day(date, "8 7 9 8", { what: "leak-down", unit: "%", gauge: "a", ...more });
  const tests = [
    leak("2022-05-02"),
    leak("2023-05-02", { gauge: "b", set_aside: "wrong hose" }),
    leak("2024-05-02"),
  ];
  expect(of(tests).leakDown?.result.cylinders.map(({ since }) => since)).toEqual([0, 0, 0, 0]);
});

test("cranking and leak-down never share a table, and no date is foretold from a leak-down", () => {
  const tests = [
    ...sound,
    ...["2021", "2022", "2023", "2024"].map((year) =>
      day(`${year}-06-01`, "8 7 12 8", { what: "leak-down", unit: "%" }),
    ),
  ];
  const { cranking, leakDown } = of(tests);
  expect(cranking?.result.tests).toHaveLength(5);
  expect(leakDown?.result.tests).toHaveLength(4);
  expect(leakDown?.result.cylinders.map(({ limit }) => limit)).toEqual(new Array(4).fill(undefined));
});

test("an engine with no test has no history", () => {
  expect(of([])).toMatchObject({ repeatability: { df: 0 } });
  expect(of([]).cranking).toBeUndefined();
});

// statistics.md F: pooled s in ln units .00997914711486511 with 8 degrees of freedom, blended .0123827847581141
test("own repeats give the repeatability of the worked example", () => {
  const takes = ["158 152 163 149", "161 150 162 153", "160 151 165 151"];
  const { repeatability } = of(takes.map((cells, i) => day("2026-05-02", cells, { take: String(i + 1) })));
  expect(repeatability.s).toBeCloseTo(0.00997914711486511, 12);
  expect(repeatability.df).toBe(8);
  expect(repeatability.blended).toBeCloseTo(0.0123827847581141, 12);
});

test("the correction for height stands in the history, so a move to the hills is no loss", () => {
  const tests = sound.map((row, i) =>
    i < 3 ? { ...row, altitude_m: "0" } : { ...row, altitude_m: "1500", cells: "125 124 127 124" },
  );
  expect(of(tests).cranking?.result.common.word).not.toBe("falling");
});

// contrasts of L.3: change of one against the others, here a plain 10 % with the others unchanged
test("a test tells how far each cylinder has moved since the first test of its history", () => {
  const record = recordOf({
    tests: [day("2020-05-02", "150 150 150 150"), day("2024-05-02", "150 150 135 150")],
  });
  const last = record.tests.at(-1);
  const moved =
    last === undefined ? [] : assessTest(record, last).cylinders.map(({ sinceFirst }) => sinceFirst);
  expect(moved[2]).toMatchObject({
    test: "2020-05-02a",
    date: "2020-05-02",
    change: expect.closeTo(-0.1, 9) as number,
  });
  expect(moved[0]?.change).toBeCloseTo(0, 9);
});

test("the first test, a void one and a lone cylinder have nothing to tell since when", () => {
  const moved = (tests: readonly Row[], cylinders = 4) => {
    const record = recordOf({ tests, cylinders });
    return record.tests.map((one) =>
      assessTest(record, one).cylinders.map(({ sinceFirst }) => sinceFirst?.test),
    );
  };
  expect(moved(sound)[0]).toEqual(new Array(4).fill(undefined));
  const spoilt = [...sound, day("2025-05-02", "90 90 90 90", { throttle: "closed" })];
  expect(moved(spoilt).at(-1)).toEqual(new Array(4).fill(undefined));
  expect(moved([day("2020-05-02", "150"), day("2021-05-02", "149")], 1).at(-1)).toEqual([undefined]);
});

test("work on a cylinder moves its own first test, and that of no other", () => {
  const record = recordOf({ tests: sound, services: ["2022-01-01,,valve job,3,3"] });
  const last = record.tests.at(-1);
  const first =
    last === undefined ? [] : assessTest(record, last).cylinders.map(({ sinceFirst }) => sinceFirst?.date);
  expect(first).toEqual(["2020-05-02", "2020-05-02", "2022-05-02", "2020-05-02"]);
});
