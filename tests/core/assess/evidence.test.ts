// What stands beside the readings: oil, a second gauge, the level of the whole engine. Readings invented.

import { expect, test } from "vitest";
import { type Row, assessed } from "./records.ts";

const psi = 6894.757293168;
const day = (cells: string, more: Partial<Row> = {}): Row => ({ test: "2026-05-02a", cells, ...more });

const oiled = (dry: string, wet: string) => assessed({ tests: [day(dry), day(wet, { what: "wet" })] }).oil;

// 144/120 - 1 = .2, 153/150 - 1 = .02. Bands of trade.md B3: below 5 % none, 5 to 10 weak, 10 to 25 rings, above strong.
test("the rise with oil is held against that of a sound cylinder", () => {
  const oil = oiled("150 148 120 151", "153 x 144 x");
  expect(oil?.controls).toEqual(["1"]);
  expect(oil?.controlRise).toBeCloseTo(0.02, 12);
  expect(oil?.cylinders).toMatchObject([
    { label: "1", rise: expect.closeTo(0.02, 12) as unknown },
    {
      label: "3",
      rise: expect.closeTo(0.2, 12) as unknown,
      net: expect.closeTo(0.18, 12) as unknown,
      evidence: "rings",
    },
  ]);
});

test.each([
  ["126", "none"], // 5 % less 2 % = 3 %
  ["129.6", "weak"], // 8 % less 2 % = 6 %
  ["134.5", "rings"], // 12.1 % less 2 % = 10.1 %
  ["153", "strong"], // 27.5 % less 2 % = 25.5 %
])("oil that brings 120 to %s is called %s", (wet, evidence) => {
  expect(oiled("150 148 120 151", `153 x ${wet} x`)?.cylinders[1]?.evidence).toBe(evidence);
});

test("without a control the evidence is weak at most", () => {
  expect(oiled("150 148 120 151", "x x 153 x")?.cylinders).toMatchObject([{ label: "3", evidence: "weak" }]);
  expect(oiled("150 148 120 151", "x x 121 x")?.cylinders).toMatchObject([{ label: "3", evidence: "none" }]);
});

test("where no cylinder is low, oil tells nothing; a pegged or empty reading has no rise", () => {
  expect(oiled("150 148 149 151", "153 x 152 x")?.cylinders.map(({ evidence }) => evidence)).toEqual([
    undefined,
    undefined,
  ]);
  expect(oiled("150 148 0 151", "x x 100 x")).toBeUndefined();
  expect(oiled("150 148 120 151", "x x >300 x")).toBeUndefined();
});

test("the readings of a second gauge are kept beside those that count", () => {
  const tests = [
    day("150 148 152 149", { gauge: "red" }),
    day("155 153 157 154", { gauge: "blue", take: "1" }),
    day("156 154 158 155", { gauge: "blue", take: "2" }),
  ];
  const { comparisons } = assessed({ tests });
  expect(comparisons).toMatchObject([{ what: "dry", gauge: "red", counts: "blue" }]);
  expect(comparisons[0]?.cells.map((cell) => Math.round((cell?.value ?? 0) / psi))).toEqual([
    150, 148, 152, 149,
  ]);
  expect(assessed({ tests: tests.slice(0, 1) }).comparisons).toEqual([]);
});

test("two leak-down testers are compared in parts lost", () => {
  const leak = { what: "leak-down", regulated_psi: "80" };
  const tests = [day("72 72 72 72", { ...leak, gauge: "a" }), day("60 60 60 60", { ...leak, gauge: "b" })];
  expect(assessed({ tests }).comparisons[0]?.cells[0]?.value).toBeCloseTo(0.25, 12);
});

const first = day("150 150 151 149", { test: "2010-05-02a", gauge: "red", altitude_m: "0" });
const later = (cells: string, more: Partial<Row> = {}) =>
  day(cells, { gauge: "red", altitude_m: "0", ...more });

// Middle 111 against 150: 26 % lower. u^2 = 2 (.02^2 + .03^2 x .2982 + u_air^2) (statistics.md L.7, v_4 of B), and u_air of
// a height alone: weather within 25 hPa, .025/sqrt 3, and .14 of the doubt about the air's temperature, .0792/sqrt 3.
test("a fall of the whole engine is told, though its cylinders are even", () => {
  const { levelSince: level, apart } = assessed({ tests: [first, later("111 112 111 110")] });
  const air = Math.hypot(0.025 / Math.sqrt(3), (0.14 * 0.0792) / Math.sqrt(3));
  expect(apart).toBe("as-healthy");
  expect(level).toMatchObject({ test: "2010-05-02a", gauge: "red", labels: ["1", "2", "3", "4"] });
  expect(level?.change).toBeCloseTo(111 / 150 - 1, 9);
  // neither speed is known: 70/(250 + 35)·0.16 of each (handbook/cranking.md I.5)
  const speed = (70 / 285) * 0.16;
  expect(level?.uncertainty).toBeCloseTo(
    Math.sqrt(2 * (0.0004 + 0.0009 * 0.2982 + air * air + speed * speed)),
    6,
  );
});

test("within twice its uncertainty, by another gauge, or where one cylinder rose, no fall is told", () => {
  for (const row of [
    later("143 143 144 142"),
    later("111 112 111 110", { gauge: "blue" }),
    later("111 112 152 110"),
    later("111 112 111 110", { gauge: "" }),
    later("111 112 111 110", { throttle: "closed" }),
    later("111 112 111 110", { set_aside: "wrong adapter" }),
  ])
    expect(assessed({ tests: [first, row] }).levelSince).toBeUndefined();
});

test("work on all cylinders begins a new level, work on one leaves it out of the comparison", () => {
  const tests = [first, later("111 112 140 110")];
  const since = (cylinders: string, labels: string) =>
    assessed({ tests, services: [`2020-05-02,,valve job,${cylinders},${labels}`] }).levelSince;
  expect(since("1 2 3 4", "1 2 3 4")).toBeUndefined();
  expect(since("3", "3")?.labels).toEqual(["1", "2", "4"]);
});
