// Cylinders of one test that were cranked at differing speeds: a slower one reads lower without being worse. Readings invented
// from the form of handbook/cranking.md I.1 (computed there from a cycle model; no published table of readings by speed).

import { expect, test } from "vitest";
import { type Row, assessed, cylinder } from "./records.ts";

/** P(N) = P_0/(1 + N_s/2N)^2 with P_0 1690 kPa and N_s 70 rpm. */
const at = (rpm: number): number => 1690 / (1 + 70 / (2 * rpm)) ** 2;
const speeds = [250, 200, 248, 180];
const readings = (shares: readonly number[]): string =>
  speeds.map((rpm, i) => (at(rpm) * (shares[i] ?? 1)).toFixed(1)).join(" ");
const half = { bore: "86mm", stroke: "86mm" };
const of = (cells: string, more: object = {}, own = speeds.join(" "), conditions: Partial<Row> = {}) =>
  assessed({
    engine: { geometry: half, limits: { compression: { speed: "260rpm" } }, ...more },
    tests: [
      {
        test: "2026-05-02a",
        unit: "kPa",
        gauge: "red",
        station_pressure_hPa: "1013.25",
        cells,
        ...conditions,
      },
      { test: "2026-05-02a", what: "speed", unit: "", cells: own },
    ],
  });

test("a cylinder that reads 12 % less only because it was cranked at 180 instead of 250 rpm is even", () => {
  const result = of(readings([1, 1, 1, 0.97]));
  expect(result.cylinders.map(({ standing }) => standing)).toEqual(["even", "even", "even", "even"]);
  // 3 % under at one speed, though read 1149 beside 1300 kPa
  expect(cylinder(result, "4").belowOthers).toBeCloseTo(0.03, 2);
  expect(result.spread?.ratio).toBeGreaterThan(0.96);
  expect(result.speed).toMatchObject({ speeds, least: 180, most: 250, uneven: { to: 224 } });
});

test("one that leaks is still found, and the fellows that were cranked slower are not", () => {
  const result = of(readings([1, 1, 1, 0.8]));
  expect(result.cylinders.map(({ standing }) => standing)).toEqual(["even", "even", "even", "suspect"]);
});

test("speeds within 3 % change nothing: the cylinders stand as read", () => {
  const result = of("1300 1290 1295 1100", {}, "250 250 248 245");
  expect(result.speed).not.toHaveProperty("uneven");
  expect(cylinder(result, "1").pressures.dry).not.toHaveProperty("even");
  expect(cylinder(result, "4").belowOthers).toBeCloseTo(1 - 1100 / 1295, 12);
});

test("where they cannot be brought to one speed nobody is flagged for what the speed may explain", () => {
  const automatic = { compressionRelease: "automatic" };
  const result = of(readings([1, 1, 1, 0.97]), automatic);
  expect(result.speed?.uneven).toMatchObject({ refused: { code: "release-unknown" } });
  expect(result.cylinders.map(({ standing }) => standing)).toEqual(["even", "even", "even", "even"]);
  expect(result).not.toHaveProperty("apart");
  // 45 % lower is more than a third less speed takes
  expect(cylinder(of(readings([1, 1, 1, 0.6]), automatic), "4").flagged).toBe(true);
  // the same readings at one speed are flagged
  expect(cylinder(of(readings([1, 1, 1, 0.97]), automatic, "250 250 250 250"), "4").flagged).toBe(true);
});

test("a cylinder whose speed is not known is taken for as slow as the slowest", () => {
  const cells = [at(250), at(250), at(250), at(180)].map((value) => value.toFixed(1)).join(" ");
  const result = of(cells, {}, "250 180 250 x");
  expect(result.speed?.uneven?.refused?.text).toBe("the cranking speed of 4 was not recorded");
  expect(cylinder(result, "4").flagged).toBe(false);
});

test("only those that were slow are said to have been", () => {
  const slow = (own: string) =>
    of(readings([1, 1, 1, 1]), {}, own).trust.reasons.find(({ code }) => code === "slow")?.text;
  expect(slow("250 200 248 180")).toBe(
    "cylinders 2 and 4 were cranked at 180 to 200 rpm, slow against 260: their readings come out low",
  );
  expect(slow("250 250 248 180")).toBe(
    "cylinder 4 was cranked at 180 rpm, slow against 260: its reading comes out low",
  );
  expect(slow("180 180 180 180")).toBe(
    "cranked at 180 rpm, slow against 260: every reading comes out low, a leaking cylinder's most",
  );
});

test("a maker's range of speeds stands for its geometric middle", () => {
  const result = of(readings([1, 1, 1, 1]), { limits: { compression: { speed: "250-400rpm" } } });
  expect(result.speed?.to).toBeCloseTo(Math.sqrt(250 * 400), 9);
  expect(result.record.engine.compressionLimits.speedRange).toBe("250-400rpm");
  for (const same of ["250rpm-400rpm", "250 – 400 rpm", "250rpm to 400rpm"])
    expect(of(readings([]), { limits: { compression: { speed: same } } }).speed?.to).toBeCloseTo(316.228, 3);
  for (const bad of ["400-250rpm", "-250rpm", "250-400"])
    expect(() => of(readings([]), { limits: { compression: { speed: bad } } })).toThrow(
      "limits.compression.speed",
    );
});
