// The cranking speed inside the assessment of a test: when a reading is brought to another speed, by what, and what is held
// against it. Readings invented; the numbers of the worked cases are the handbook's (cranking.md I.5, computed there from a
// cycle model; no published table of readings by speed was found).

import { expect, test } from "vitest";
import { type Row, type Written, assessed, cylinder } from "./records.ts";

const half = { bore: "86mm", stroke: "86mm" }; // 499.6 cm3: N_s 70.02 rpm
const low = "1190 1185 1195 1000";
const day = (cells: string, more: Partial<Row> = {}): Row => ({
  test: "2026-05-02a",
  unit: "kPa",
  gauge: "red",
  station_pressure_hPa: "1013.25",
  cells,
  ...more,
});
const engine = (more: object = {}) => ({
  geometry: half,
  limits: { compression: { speed: "260rpm" } },
  ...more,
});
const of = (more: Partial<Written> = {}, id?: string) =>
  assessed({ engine: engine(), tests: [day(low, { crank_rpm: "180" })], ...more }, id);
const full = (assessment: ReturnType<typeof of>): number[] =>
  assessment.cylinders.map(({ pressures }) => (pressures.dry?.full?.corrected ?? NaN) / 1000);
const refusal = (assessment: ReturnType<typeof of>): string | undefined => assessment.speed?.refused?.code;

test("four cylinders at 180 rpm are brought to the maker's 260: 1318, 1314, 1323 and 1149 kPa (case 6)", () => {
  const result = of();
  expect(result.speed).toMatchObject({ from: 180, to: 260, lossFree: { sources: ["default"] } });
  [1318.2, 1313.9, 1322.5, 1149.0].forEach((value, i) => {
    expect(Math.abs((full(result)[i] ?? 0) - value)).toBeLessThan(0.1);
  });
  // the cylinders of one test are still compared as read
  expect(result.spread?.ratio).toBeCloseTo(1000 / 1195, 12);
  expect(cylinder(result, "4").pressures.dry?.full?.lossSpeed).toBeCloseTo(108.6, 0);
});

test("the order of the cylinders changes nothing", () => {
  const turned = of({ tests: [day("1000 1195 1185 1190", { crank_rpm: "180" })] });
  full(turned)
    .toReversed()
    .forEach((value, i) => {
      expect(value).toBeCloseTo(full(of())[i] ?? 0, 9);
    });
});

test("thin air first, then speed: at 84.307 kPa every corrected reading is 1.20186 times as high", () => {
  // 101.325/84.307: gauge pressures and P_0 scale with the air, loss speeds do not
  const high = of({ tests: [day(low, { crank_rpm: "180", station_pressure_hPa: "843.07" })] });
  full(high).forEach((value, i) => {
    expect(value / (full(of())[i] ?? 0)).toBeCloseTo(101.325 / 84.307, 9);
  });
});

test("without the maker's speed the middle speed of the engine's tests is the reference", () => {
  const tests = ["240", "250", "200"].map((crank_rpm, i) =>
    day(low, { test: `202${String(i)}-05-02a`, crank_rpm }),
  );
  expect(of({ engine: { geometry: half }, tests }).speed).toMatchObject({ from: 200, to: 240 });
  const apart = tests.map((row, i) => (i === 0 ? { ...row, set_aside: "wrong adapter" } : row));
  expect(of({ engine: { geometry: half }, tests: apart }).speed?.to).toBe(225);
});

test("a test alone, at a speed no maker states, is its own reference: the reading stays, its doubt is larger", () => {
  const alone = of({ engine: { geometry: half } });
  full(alone).forEach((value, i) => {
    expect(value).toBeCloseTo([1190, 1185, 1195, 1000][i] ?? 0, 9);
  });
  const dry = cylinder(alone, "1").pressures.dry;
  expect(dry?.full?.uncertainty).toBeGreaterThan(dry?.uncertainty ?? Infinity);
});

test("each cylinder may have a speed of its own", () => {
  const tests = [day(low), day("180 180 180 180", { what: "speed", unit: "", gauge: "" })];
  full(of({ tests })).forEach((value, i) => {
    expect(value).toBeCloseTo(full(of())[i] ?? 0, 9);
  });
  const slower = [day(low), day("180 180 180 160", { what: "speed", unit: "", gauge: "" })];
  const result = of({ tests: slower });
  expect(result.speed).toMatchObject({ from: 180, least: 160, most: 180 });
  // at the lower speed the same reading means less loss
  expect(full(result)[3]).toBeGreaterThan(full(of())[3] ?? Infinity);
});

test.each([
  ["no speed recorded", {}, {}, "speed-not-recorded"],
  ["a speed below 120 rpm", { crank_rpm: "119" }, {}, "speed-out-of-range"],
  ["a speed above 450 rpm", { crank_rpm: "451" }, {}, "speed-out-of-range"],
  [
    "a reference above 450 rpm",
    { crank_rpm: "400" },
    { limits: { compression: { speed: "600rpm" } } },
    "speed-out-of-range",
  ],
  ["less than 0.6 of the reference", { crank_rpm: "155" }, {}, "speeds-too-far-apart"],
  ["more than 1.67 times the reference", { crank_rpm: "435" }, {}, "speeds-too-far-apart"],
  [
    "a P_0 that the middle reading reaches",
    { crank_rpm: "180" },
    { crankingCurve: [{ P0: "1187kPa", u_ln: 0.05 }] },
    "loss-free-too-low",
  ],
  ["more than 6 % doubt", { crank_rpm: "160" }, { geometry: {} }, "too-uncertain"],
  ["a closed throttle", { crank_rpm: "180", throttle: "closed" }, {}, "throttle-closed"],
  [
    "a release that works by itself and may have been defeated",
    { crank_rpm: "180" },
    { compressionRelease: "automatic" },
    "release-unknown",
  ],
  ["a release that was active", { crank_rpm: "180", release: "active" }, {}, "release"],
  ["a two-stroke", { crank_rpm: "180" }, { cycle: "two-stroke" }, "two-stroke"],
] as const)("with %s the reading stands as it is, and that is said", (_, conditions, more, code) => {
  const result = of({ engine: engine(more), tests: [day(low, conditions)] });
  expect(refusal(result)).toBe(code);
  expect(result.speed?.refused?.text).toMatch(/^[a-z0-9].{10,}[^.]$/);
  expect(cylinder(result, "1").pressures.dry).toMatchObject({ corrected: 1_190_000 });
  expect(cylinder(result, "1").pressures.dry).not.toHaveProperty("full");
});

test("a release that was defeated refuses nothing", () => {
  const tests = [day(low, { crank_rpm: "180", release: "defeated" })];
  expect(refusal(of({ engine: engine({ compressionRelease: "automatic" }), tests }))).toBeUndefined();
});

test("cold against warm is refused; cold against cold is not", () => {
  const cold = day(low, { crank_rpm: "180", engine_temp: "cold" });
  const other = (engine_temp: string) => day(low, { test: "2025-05-02a", crank_rpm: "260", engine_temp });
  expect(refusal(of({ tests: [other("warm"), cold] }))).toBe("cold");
  expect(refusal(of({ tests: [other("cold"), cold] }))).toBeUndefined();
});

test("a test that is set aside, alone, has no speed to be held against", () => {
  const tests = [day(low, { crank_rpm: "180", set_aside: "wrong adapter" })];
  expect(refusal(of({ engine: { geometry: half }, tests }))).toBe("no-reference-speed");
});

test("one cylinder without a speed refuses the whole test by its name: its cylinders are read at one speed or none", () => {
  const tests = [day(low), day("180 180 180 x", { what: "speed", unit: "", gauge: "" })];
  expect(of({ tests }).speed?.refused).toEqual({
    code: "speed-not-recorded",
    text: "the cranking speed of 4 was not recorded",
  });
});

test("only dry readings are brought to another speed", () => {
  const tests = [
    day(low, { crank_rpm: "180" }),
    day("500 500 500 400", { what: "first-stroke" }),
    day("1195 x x 1150", { what: "wet" }),
  ];
  const { pressures } = cylinder(of({ tests }), "4");
  expect(pressures.dry).toHaveProperty("full");
  expect(pressures.wet).not.toHaveProperty("full");
  expect(pressures["first-stroke"]).not.toHaveProperty("full");
});

test("no compression is no reading to correct, and a test without a dry reading has no speed at all", () => {
  const dead = of({ tests: [day("1190 1185 0 1195", { crank_rpm: "180" })] });
  expect(cylinder(dead, "3").pressures.dry).not.toHaveProperty("full");
  expect(cylinder(dead, "1").pressures.dry).toHaveProperty("full");
  const leak = of({ tests: [day("6 7 6 8", { what: "leak-down", unit: "%", crank_rpm: "180" })] });
  expect(leak.speed).toBeUndefined();
});

test("what is compared within a test, its standings and its ratio rules, is the same whether speed was recorded or not", () => {
  const [with180, without] = [of(), of({ tests: [day(low)] })];
  expect(with180.cylinders.map(({ standing, t }) => [standing, t])).toEqual(
    without.cylinders.map(({ standing, t }) => [standing, t]),
  );
  const ratio = (result: ReturnType<typeof of>) => result.rules.find(({ id }) => id === "ratio75");
  expect(ratio(with180)?.value).toBe(ratio(without)?.value);
  expect(ratio(with180)?.uncertainty).toBe(ratio(without)?.uncertainty);
});
