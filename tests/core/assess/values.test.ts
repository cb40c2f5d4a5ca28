// Which value of a test counts, and how it is corrected. Readings invented; psi by definition 6894.757293168 Pa.

import { expect, test } from "vitest";
import { type Row, assessed, cylinder } from "./records.ts";

const psi = 6894.757293168;
const day = (cells: string, more: Partial<Row> = {}): Row => ({ test: "2026-05-02a", cells, ...more });
const factorOf = (more: Partial<Row>) => assessed({ tests: [day("150 148 152 149", more)] }).correction;

test("a barometer at the place gives the factor 1013.25 / reading", () => {
  expect(factorOf({ station_pressure_hPa: "965" })).toMatchObject({ from: "station" });
  expect(factorOf({ station_pressure_hPa: "965" }).factor).toBeCloseTo(1013.25 / 965, 12);
});

// ISO 2533 / ICAO 7488: p/p0 = (1 - 0.0065 h / 288.15)^5.25588; at 350 m .95920
test("a height alone gives the pressure of the standard atmosphere there", () => {
  const correction = factorOf({ altitude_m: "350" });
  expect(correction.from).toBe("altitude");
  expect(1 / correction.factor).toBeCloseTo((1 - (0.0065 * 350) / 288.15) ** 5.25588, 4);
});

test("a barometer at the place outweighs the height", () => {
  expect(factorOf({ altitude_m: "350", station_pressure_hPa: "965" }).from).toBe("station");
});

test("a weather report counts only with the height", () => {
  expect(factorOf({ qnh_hPa: "1030" }).from).toBe("assumed");
  const both = factorOf({ qnh_hPa: "1030", altitude_m: "350" });
  expect(both.from).toBe("qnh");
  expect(both.factor).toBeCloseTo((factorOf({ altitude_m: "350" }).factor * 1013.25) / 1030, 3);
});

test("where nothing is known of the air nothing is corrected, and the doubt is largest", () => {
  const nothing = factorOf({});
  expect(nothing).toMatchObject({ factor: 1, from: "assumed" });
  const known = [
    factorOf({ altitude_m: "0" }),
    factorOf({ altitude_m: "0", qnh_hPa: "1013.25" }),
    factorOf({ station_pressure_hPa: "1013.25" }),
  ].map(({ uncertainty }) => uncertainty);
  expect(known).toEqual(known.toSorted((a, b) => b - a));
  expect(nothing.uncertainty).toBeGreaterThan(known[0] ?? Infinity);
});

test("the doubt about a corrected reading grows with what is not known of gauge and air", () => {
  const gauges = "gauge,kind,unit,full_scale,class_percent\nred,compression,psi,300,1.6\n";
  const doubt = (more: Partial<Row>) =>
    cylinder(assessed({ gauges, tests: [day("150 148 152 149", more)] }), "1").pressures.dry?.uncertainty ??
    0;
  const [bare, gauge, both] = [
    doubt({}),
    doubt({ gauge: "red" }),
    doubt({ gauge: "red", station_pressure_hPa: "1013" }),
  ];
  expect(bare).toBeGreaterThan(gauge);
  expect(gauge).toBeGreaterThan(both);
});

test("the correction is one factor for all cylinders, so it changes no comparison", () => {
  const here = assessed({ tests: [day("150 148 152 120")] });
  const there = assessed({ tests: [day("150 148 152 120", { altitude_m: "1500" })] });
  expect(there.cylinders.map(({ standing }) => standing)).toEqual(
    here.cylinders.map(({ standing }) => standing),
  );
  expect(there.spread?.ratio).toBeCloseTo(here.spread?.ratio ?? 0, 12);
});

// statistics.md A.4: the same first data set
test("the spread of one test is that of the worked example", () => {
  const { spread } = assessed({ tests: [day("150 148 152 120")] });
  expect(spread?.ratio).toBeCloseTo(0.789473684210526, 12);
  expect((spread?.range ?? 0) / psi).toBeCloseTo(32, 9);
  expect(spread?.cv).toBeCloseTo(0.105885102201228, 12);
  expect((spread?.median ?? 0) / psi).toBeCloseTo(149, 9);
});

test("repeats stand as the mean of their logarithms", () => {
  const takes = ["150 148 152 149", "153 148 152 149", "156 148 152 149"];
  const { pressures } = cylinder(
    assessed({ tests: takes.map((cells, i) => day(cells, { take: String(i + 1) })) }),
    "1",
  );
  expect(pressures.dry?.readings).toHaveLength(3);
  expect((pressures.dry?.value ?? 0) / psi).toBeCloseTo(Math.cbrt(150 * 153 * 156), 9);
});

test("of two gauges on one warm engine one counts: that with more readings on its scale", () => {
  const tests = [
    day("150 148 152 149", { gauge: "red" }),
    day("155 153 157 154", { gauge: "blue", take: "1" }),
    day("156 154 158 155", { gauge: "blue", take: "2" }),
  ];
  const dry = cylinder(assessed({ tests }), "1").pressures.dry;
  expect(dry?.readings.map((value) => Math.round(value / psi))).toEqual([155, 156]);
});

test("a gauge whose needle was pegged gives way to one that could read", () => {
  const tests = [day(">160 >160 >160 >160", { gauge: "a" }), day("171 169 172 170", { gauge: "z" })];
  const result = assessed({ tests });
  expect(result.trust.code).toBe("trusted");
  expect(Math.round((cylinder(result, "1").pressures.dry?.value ?? 0) / psi)).toBe(171);
});

test("a leak-down in pairs and one in percent say the same", () => {
  const pairs = assessed({ tests: [day("74 72 60 75", { what: "leak-down", regulated_psi: "80" })] });
  const percent = assessed({ tests: [day("7.5 10 25 6.25", { what: "leak-down", unit: "%" })] });
  const lost = (result: typeof pairs) => result.cylinders.map(({ leakDown }) => leakDown?.lost ?? -1);
  expect(lost(pairs)).toEqual([0.075, 0.1, 0.25, 0.0625].map((value): unknown => expect.closeTo(value, 12)));
  expect(lost(percent)).toEqual(lost(pairs).map((value): unknown => expect.closeTo(value, 12)));
  expect(percent.cylinders.map(({ standing }) => standing)).toEqual(
    pairs.cylinders.map(({ standing }) => standing),
  );
  expect(cylinder(pairs, "1").leakDown?.value).toBeCloseTo(74 * psi, 6);
  expect(cylinder(percent, "1").leakDown?.value).toBeUndefined();
});

test("pairs and percent of one tester are never averaged together", () => {
  const tests = [
    day("74 72 60 75", { what: "leak-down", regulated_psi: "80", take: "1" }),
    day("7.5 10 25 6.25", { what: "leak-down", unit: "%", take: "2" }),
  ];
  expect(cylinder(assessed({ tests }), "1").leakDown?.lost).toBeCloseTo(0.075, 12);
});

test("a reading just above its supply has lost nothing", () => {
  const tests = [day("80.5 79 78 79", { what: "leak-down", regulated_psi: "80" })];
  expect(cylinder(assessed({ tests }), "1").leakDown?.lost).toBe(0);
});

// statistics.md L.11 6: % lost 6 6 17 7, forward t of the core's outsiders .463119603796149 and 5.784003572575116
test("a leak-down is judged by its own scatter", () => {
  const result = assessed({ tests: [day("6 6 17 7", { what: "leak-down", unit: "%" })] });
  expect(cylinder(result, "4").leakDown?.t).toBeCloseTo(0.463119603796149, 9);
  expect(cylinder(result, "3").leakDown?.t).toBeCloseTo(5.784003572575116, 9);
  expect(cylinder(result, "3").leakDown?.standing).toBe("suspect");
});

test("rules are held against the corrected reading: what passes at the sea fails nowhere higher up", () => {
  const engine = { limits: { compression: { minimum: "140psi", source: "invented" } } };
  const verdict = (more: Partial<Row>) =>
    assessed({ engine, tests: [day("120 119 121 120", { ...more, crank_rpm: "250" })] }).rules.find(
      ({ id }) => id === "maker-minimum",
    );
  expect((verdict({ altitude_m: "3000" })?.value ?? 0) / psi).toBeCloseTo(
    119 / (1 - (0.0065 * 3000) / 288.15) ** 5.25588,
    1,
  );
  expect((verdict({ altitude_m: "0" })?.value ?? 0) / psi).toBeCloseTo(119, 6);
});

test("a rule that lacks a reading says which", () => {
  const rule = assessed({ tests: [day("150 x 152 149?")] }).rules.find(({ id }) => id === "ratio75");
  expect(rule).toMatchObject({ verdict: "cannot-tell" });
  expect(rule?.gaps).toEqual([
    { label: "2", gap: "not-taken" },
    { label: "4", gap: "doubtful" },
  ]);
});

test("an oil test is never proposed on a diesel whose maker did not allow it", () => {
  const low = [day("400 398 401 330", { unit: "psi" })];
  const codes = (engine: object) => assessed({ engine, tests: low }).nextTests.map(({ code }) => code);
  expect(codes({ ignition: "compression" })).not.toContain("wet");
  expect(codes({ ignition: "compression", wetTest: { allowed: true } })).toContain("wet");
  expect(codes({ ignition: "spark" })).toContain("wet");
  expect(codes({ ignition: "spark", wetTest: { allowed: false } })).not.toContain("wet");
});
