// What P_0 rests on, whether a lag is a leak, and what limits and other years are held against. Readings invented; numbers of
// the worked cases: handbook/cranking.md I.5 (computed).

import { assessHistory } from "@sealtrend/core";
import { expect, test } from "vitest";
import { type Row, type Written, assessed, cylinder, recordOf } from "./records.ts";

const half = { bore: "86mm", stroke: "86mm" };
const low = "1190 1185 1195 1000";
const day = (cells: string, more: Partial<Row> = {}): Row => ({
  test: "2026-05-02a",
  unit: "kPa",
  gauge: "red",
  station_pressure_hPa: "1013.25",
  crank_rpm: "180",
  cells,
  ...more,
});
const engine = (compression: object = {}, more: object = {}) => ({
  geometry: half,
  limits: { compression: { speed: "260rpm", ...compression } },
  ...more,
});
const of = (more: Partial<Written> = {}, id?: string) =>
  assessed({ engine: engine(), tests: [day(low)], ...more }, id);
const full = (assessment: ReturnType<typeof of>, label: string): number =>
  (cylinder(assessment, label).pressures.dry?.full?.corrected ?? NaN) / 1000;
const verdict = (assessment: ReturnType<typeof of>, rule: string) =>
  assessment.rules.find(({ id }) => id === rule);
const curve = (P0: string, more: object = {}) => ({ P0, u_ln: 0.05, ...more });

test("the maker's figure for a new engine stands in where it gives the higher P_0 (case 8: 1111.9, without it 1051.8)", () => {
  const worn = (compression: object) =>
    of({
      cylinders: 1,
      engine: engine({ speed: "300rpm", ...compression }),
      tests: [day("950", { crank_rpm: "200" })],
    });
  const known = worn({ new: "1275kPa" });
  expect(known.speed?.lossFree?.sources).toEqual(["maker's figure"]);
  expect(Math.abs((known.speed?.lossFree?.pressure ?? 0) / 1000 - 1589.9)).toBeLessThan(0.15);
  expect(Math.abs(full(known, "1") - 1111.9)).toBeLessThan(0.1);
  expect(Math.abs(full(worn({}), "1") - 1051.8)).toBeLessThan(0.1);
  expect(worn({ new: "900kPa" }).speed?.lossFree?.sources).toEqual(["default"]);
});

test("a calibration of the gauge in use stands alone; one of another gauge says nothing", () => {
  const with_ = (curves: readonly object[]) =>
    of({ engine: engine({}, { crankingCurve: curves }) }).speed?.lossFree;
  expect(with_([curve("1700kPa", { gauge: "red" })])).toMatchObject({
    sources: ["calibration"],
    pressure: 1_700_000,
    uncertainty: 0.05,
    ownShare: 0,
  });
  expect(with_([curve("1700kPa", { gauge: "blue" })])?.sources).toEqual(["default"]);
  expect(with_([curve("1700kPa")])?.pressure).toBe(1_700_000);
  expect(with_([curve("1700kPa"), curve("1650kPa", { gauge: "red" })])?.pressure).toBe(1_650_000);
  const two = with_([curve("1600kPa", { gauge: "red" }), curve("1700kPa", { gauge: "red" })]);
  expect(two?.pressure).toBeCloseTo(Math.sqrt(1.6e6 * 1.7e6), 3);
  expect(two?.uncertainty).toBeCloseTo(0.05 / Math.SQRT2, 12);
});

test("the sizes of the engine are weighed in, more with the closing of the intake known", () => {
  const geometry = (more: object) =>
    of({ engine: engine({}, { geometry: { ...half, compressionRatio: 10, ...more } }) }).speed?.lossFree;
  expect(geometry({})?.sources).toEqual(["geometry", "default"]);
  // 1/u² = 1/0.14655² + 1/0.11², and with 0.06
  expect(geometry({})?.uncertainty).toBeCloseTo((0.14655 ** -2 + 0.11 ** -2) ** -0.5, 4);
  expect(geometry({ intakeCloses: "60deg" })?.uncertainty).toBeCloseTo(
    (0.14655 ** -2 + 0.06 ** -2) ** -0.5,
    4,
  );
  const unknown = of({
    engine: { ...engine({}, { geometry: { ...half, compressionRatio: 10 } }), ignition: "unknown" },
  });
  expect(unknown.speed?.lossFree?.sources).toEqual(["default"]);
});

test("a hose that is part of the chamber lowers P_0", () => {
  const sized = engine({}, { geometry: { ...half, compressionRatio: 10, intakeCloses: "60deg" } });
  const gauges = (row: string) => `gauge,kind,unit,valve_end,hose_cm3\nred,compression,kPa,${row}\n`;
  const p0 = (row: string) => of({ engine: sized, gauges: gauges(row) }).speed?.lossFree?.pressure ?? 0;
  expect(p0("gauge,4")).toBeLessThan(p0("plug,4"));
});

test("a low cylinder whose leak is shown gains all that a leak explains: 1159 kPa, else 1149 (case 6)", () => {
  const oil = day("1195 x x 1200", { what: "wet" });
  const leak = day("6 6 7 25", { what: "leak-down", unit: "%", gauge: "tester" });
  expect(Math.abs(full(of(), "4") - 1149.0)).toBeLessThan(0.1);
  expect(Math.abs(full(of({ tests: [day(low), oil] }), "4") - 1159.4)).toBeLessThan(0.1);
  expect(Math.abs(full(of({ tests: [day(low), leak] }), "4") - 1159.4)).toBeLessThan(0.1);
  // oil that raised it no more than the control shows nothing
  const idle = day("1200 x x 1005", { what: "wet" });
  expect(Math.abs(full(of({ tests: [day(low), idle] }), "4") - 1149.0)).toBeLessThan(0.1);
});

test("so does one that rose more than the others when it was cranked faster the same day", () => {
  // at 260 rpm the others rise by their own 11 %, cylinder 4 by 25 %
  const fast = day("1320 1315 1325 1250", { test: "2026-05-02b", crank_rpm: "260" });
  const both = of({ tests: [day(low), fast] }, "2026-05-02a");
  expect(Math.abs(full(both, "4") - 1159.4)).toBeLessThan(0.1);
  const even = day("1320 1315 1325 1120", { test: "2026-05-02b", crank_rpm: "260" });
  expect(Math.abs(full(of({ tests: [day(low), even] }, "2026-05-02a"), "4") - 1149.0)).toBeLessThan(0.1);
});

test("an absolute limit is held against the reading at the maker's speed, with less doubt than an unknown speed leaves", () => {
  const limits = engine({ minimum: "1100kPa" });
  const [known, blank] = [
    of({ engine: limits }),
    of({ engine: limits, tests: [day(low, { crank_rpm: "" })] }),
  ];
  expect((verdict(known, "maker-minimum")?.value ?? 0) / 1000).toBeCloseTo(1149.0, 0);
  expect((verdict(blank, "maker-minimum")?.value ?? 0) / 1000).toBeCloseTo(1000, 9);
  expect(cylinder(known, "4").limitsMissed).toEqual([]);
  expect(cylinder(blank, "4").limitsMissed).toEqual(["maker-minimum"]);
});

test("a difference in pressure is that at the maker's speed", () => {
  const result = of({ engine: engine({ difference: "180kPa" }) });
  // 1322.5 - 1149.0; as read it is 195
  expect((verdict(result, "maker-difference")?.value ?? 0) / 1000).toBeCloseTo(173.5, 0);
  expect(cylinder(result, "4").limitsMissed).toEqual([]);
  const blank = of({ engine: engine({ difference: "180kPa" }), tests: [day(low, { crank_rpm: "" })] });
  expect((verdict(blank, "maker-difference")?.value ?? 0) / 1000).toBeCloseTo(195, 9);
  expect(cylinder(blank, "4").limitsMissed).toEqual(["maker-difference"]);
});

test("an unknown speed leaves N_s/(N + N_s/2)·0.16 in doubt, a refused one at least what the usual loss makes of it", () => {
  const gauges = "gauge,kind,unit,full_scale,class_percent\nred,compression,kPa,2000,0.1\n";
  const doubt = (rpm: string) => {
    const result = of({
      engine: engine({ minimum: "900kPa" }, { geometry: {} }),
      tests: [day(low, { crank_rpm: rpm })],
      gauges,
    });
    const rule = verdict(result, "maker-minimum");
    return (rule?.uncertainty ?? 0) / (rule?.value ?? 1);
  };
  // 0.0393 for an unknown speed, with repeats 0.015, air 0.0066 and gauge 0.0012
  expect(doubt("")).toBeCloseTo(Math.hypot(0.0393, 0.015, 0.0066, 0.0012), 3);
  // 150 of 260 rpm: 70/(150 + 35)·ln(260/150) = 0.208
  expect(doubt("150")).toBeCloseTo(Math.hypot(0.208, 0.015, 0.0066, 0.0012), 2);
});

const years = (more: Partial<Row> = {}) => [
  day("1240 1240 1240 1240", { test: "2018-05-02a", crank_rpm: "260" }),
  day("1050 1050 1050 1050", { test: "2026-05-02a", crank_rpm: "180", ...more }),
];
const kept = engine({}, { crankingCurve: [curve("1640kPa", { gauge: "red" })] });

test("a tired battery years later shows no fall of the whole engine; as read it would be 15 % (case 7)", () => {
  expect(of({ engine: kept, tests: years() }).levelSince).toBeUndefined();
  expect(of({ engine: kept, tests: years({ crank_rpm: "" }) }).levelSince?.change).toBeCloseTo(
    1050 / 1240 - 1,
    9,
  );
  const { cranking } = assessHistory(recordOf({ engine: kept, tests: years() }));
  const effects = cranking?.result.common.effects.map((effect) => effect ?? NaN) ?? [];
  expect((effects[1] ?? 0) - (effects[0] ?? 0)).toBeCloseTo(-0.0394, 4);
});

test("a cylinder that leaks moves against the others with the speed alone, which is taken out", () => {
  const tests = [
    day("1318 1314 1323 1159", { test: "2018-05-02a", crank_rpm: "260" }),
    day(low, { crank_rpm: "180" }),
  ];
  const moved = (rows: readonly Row[]) => cylinder(of({ tests: rows }), "4").sinceFirst?.change ?? NaN;
  expect(moved(tests.map((row) => ({ ...row, crank_rpm: "" })))).toBeCloseTo(
    1000 / 1190 / (1159 / 1318) - 1,
    9,
  );
  expect(Math.abs(moved(tests))).toBeLessThan(0.01);
});

test("the years stand at one speed only if it was refused for no test between two works on all cylinders", () => {
  const speeds = (tests: readonly Row[], services: readonly string[] = []) =>
    assessHistory(recordOf({ engine: kept, tests, services })).cranking?.speeds.map(({ counts }) => counts);
  expect(speeds(years())).toEqual(["full", "full"]);
  expect(speeds(years({ crank_rpm: "" }))).toEqual(["air", "air"]);
  const blank = day("1240 1240 1240 1240", { test: "2016-05-02a", crank_rpm: "" });
  expect(speeds([blank, ...years()])).toEqual(["air", "air", "air"]);
  expect(speeds([blank, ...years()], ["2017-01-01,,rebuild,1 2 3 4,1 2 3 4"])).toEqual([
    "air",
    "full",
    "full",
  ]);
  // a test that counts nowhere refuses nothing
  expect(speeds([{ ...blank, set_aside: "wrong adapter" }, ...years()])).toEqual(["air", "full", "full"]);
});

test("across a rebuild with the speed known on one side only, the step is told with the doubt of a speed", () => {
  const step = (rpm: string) => {
    const before = day("1240 1240 1240 1240", { test: "2016-05-02a", crank_rpm: rpm });
    const services = ["2017-01-01,,rebuild,1 2 3 4,1 2 3 4"];
    const record = recordOf({ engine: engine(), tests: [before, ...years()], services });
    return assessHistory(record).cranking?.result.services[0]?.steps[0]?.standardError ?? NaN;
  };
  expect(step("")).toBeGreaterThan(step("260"));
});

test("by density, as chosen for the engine, warm air raises what counts; a temperature exponent of one's own goes between", () => {
  const factor = (correction: object) =>
    of({
      engine: engine({}, { correction }),
      tests: [day(low, { air_temp_C: "35" })],
    }).correction.factor;
  // (35 + 273.15)/288.15 = 1.06941, to the power 0, 1 and 0.25
  expect(factor({})).toBeCloseTo(1, 9);
  expect(factor({ basis: "density" })).toBeCloseTo(1.06941, 5);
  expect(factor({ temperatureExponent: 0.25 })).toBeCloseTo(1.06941 ** 0.25, 5);
});
