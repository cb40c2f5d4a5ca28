// The gas in a cranked cylinder: contract, inflow, edges.

import {
  absolutePressure,
  angle,
  area,
  crankingCycle,
  gammaOfAir,
  speed,
  temperature,
  volume,
  volumeAt,
} from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { diesel, plain, spark } from "./engines.ts";

test("what a gauge shows is the peak less the air around it", () => {
  const { peak, reading } = crankingCycle(spark);
  expect(reading).toBeCloseTo(peak - 101_325, 6);
});

test("the exponent is that of the peak over the air on the trapped ratio with the hose", () => {
  const adiabatic = { ...plain(spark), leak: area(0), hose: volume(3e-6) };
  expect(crankingCycle(adiabatic).exponent).toBeCloseTo(1.4, 6);
});

test("a hose ahead of the check valve lowers the reading, a wider leak and a stronger loss of heat too", () => {
  const { reading } = crankingCycle(spark);
  expect(crankingCycle({ ...spark, hose: volume(2e-6) }).reading).toBeLessThan(reading);
  expect(crankingCycle({ ...spark, leak: area(1.1e-6) }).reading).toBeLessThan(reading);
  expect(crankingCycle({ ...spark, heatFactor: 1.2 }).reading).toBeLessThan(reading);
});

test("a heat factor of 0 is no heat at all", () => {
  const none = crankingCycle({ ...spark, heat: "none" });
  expect(crankingCycle({ ...spark, heatFactor: 0 })).toEqual(none);
});

// So wide a leak keeps the cylinder at the air's pressure: its mass follows its volume, into the cylinder first and out of it
// later, and p V = m R T holds at one temperature only if what flows in brings h_in and not u_in.
test("air drawn in at the gas's own temperature and pressure changes neither", () => {
  const wide = { ...plain(spark), intakeCloses: angle(-80), leak: area(90e-6), speed: speed(30) };
  const { peakTemperature, peak, peakAngle, massLeft } = crankingCycle(wide);
  expect(Math.abs(peak / 101_325 - 1)).toBeLessThan(0.01);
  expect(Math.abs(peakTemperature / 320 - 1)).toBeLessThan(0.005);
  const swollen = volumeAt(wide.cylinder, peakAngle) / volumeAt(wide.cylinder, angle(-260));
  expect(Math.abs(massLeft / swollen - 1)).toBeLessThan(0.01);
});

test("a leak wider than any engine's leaves next to no reading, and a number all the same", () => {
  const { reading, massLeft } = crankingCycle({ ...spark, leak: area(200e-6) });
  expect(reading).toBeGreaterThanOrEqual(0);
  expect(reading).toBeLessThan(2_000);
  expect(massLeft).toBeGreaterThan(0);
});

test("an intake that closes a degree before top dead centre traps nothing to squeeze", () => {
  const { reading } = crankingCycle({ ...diesel, intakeCloses: angle(179) });
  expect(reading).toBeLessThan(1_000);
});

test("air of 300, 500 and 1000 K has ratios of specific heats of 1.4002, 1.3867 and 1.3363", () => {
  expect(gammaOfAir(300)).toBeCloseTo(1.4002, 4);
  expect(gammaOfAir(500)).toBeCloseTo(1.3867, 4);
  expect(gammaOfAir(1000)).toBeCloseTo(1.3363, 4);
});

test.each([
  ["a speed of 0", { speed: speed(0) }, "speed must be above 0 rpm, got 0"],
  ["a negative heat factor", { heatFactor: -1 }, "heatFactor must be at least 0, got -1"],
  ["a ratio of specific heats of 1", { gamma: 1 }, "gamma must be above 1, got 1"],
  ["an intake that closes after top dead centre", { intakeCloses: angle(200) }, "must be below 180, got 200"],
])("%s is a slip of the caller's and throws", (_, wrong, message) => {
  expect(() => crankingCycle({ ...spark, ...wrong })).toThrow(message);
});

test("a step of 0 is a slip of the caller's and throws", () => {
  expect(() => crankingCycle(spark, 0)).toThrow("step must be above 0 deg, got 0");
});

test("the same engine in thinner air of the same temperature reads lower", () => {
  const high = { ...spark, air: absolutePressure(84_307), start: temperature(320) };
  expect(crankingCycle(high).reading).toBeLessThan(crankingCycle(spark).reading);
});
