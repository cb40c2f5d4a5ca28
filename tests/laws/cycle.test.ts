// Laws of the cycle model that hold whatever the engine, and the error of its steps.

import {
  absolutePressure,
  angle,
  area,
  crankingCycle,
  gammaOfAir,
  length,
  polytropicPressure,
  speed,
  temperature,
  trappedRatio,
  volume,
  type CycleInput,
} from "@sealtrend/core/parts";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { diesel, motorcycle, plain, reading_kPa, smallDiesel, spark } from "../core/cranking/engines.ts";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Engines from a small motorcycle to a tractor diesel, cranked; leak in mm2 a half litre. */
const engines = fc
  .record({
    bore: between(0.05, 0.12),
    shape: between(0.75, 1.4),
    rod: between(1.4, 2),
    ratio: between(6, 23),
    closes: between(10, 90),
    rpm: between(120, 600),
    leak: between(0, 3),
    wall: between(260, 390),
    start: between(270, 340),
    heat: fc.constantFrom<CycleInput["heat"]>("hohenberg", "annand", "woschni", "none"),
    gamma: fc.constantFrom<CycleInput["gamma"]>("variable", 1.4, 1.3),
    hose: between(0, 4e-6),
  })
  .map(({ bore, shape, rod, ratio, closes, rpm, leak, wall, start, heat, gamma, hose }): CycleInput => ({
    cylinder: {
      bore: length(bore),
      stroke: length(bore / shape),
      rod: length((rod * bore) / shape),
      compressionRatio: ratio,
    },
    intakeCloses: angle(closes),
    speed: speed(rpm),
    air: absolutePressure(101_325),
    start: temperature(start),
    wall: temperature(wall),
    leak: area((leak * 1e-6 * bore ** 3) / 0.086 ** 3),
    heat,
    heatFactor: 1,
    gamma,
    hose: volume(hose),
  }));
const cool = engines.map((input): CycleInput => ({ ...input, heat: "none" }));
const peak = (input: CycleInput): number => crankingCycle(input).peak;
const apart = (a: number, b: number): number => Math.abs(a / b - 1);

test("a step of 1 deg is within 0.02 % of a step of 0.1 deg, for every kind of engine", () => {
  for (const input of [spark, diesel, smallDiesel, motorcycle, plain(spark), plain(diesel)])
    for (const leak of [0, 0.25e-6, 1e-6, 2e-6])
      for (const rpm of [100, 250, 600]) {
        const one = { ...input, leak: area(leak), speed: speed(rpm) };
        expect(apart(peak(one), crankingCycle(one, 0.1).peak)).toBeLessThan(0.0002);
      }
});

test("a step of 1 deg is within 0.02 % of a step of 0.1 deg, for any engine", () => {
  fc.assert(
    fc.property(engines, (input) => {
      expect(apart(peak(input), crankingCycle(input, 0.1).peak)).toBeLessThan(0.0002);
    }),
    { numRuns: 60 },
  );
});

test("halving the step over and over comes to one value: the steps converge", () => {
  const finest = crankingCycle(diesel, 0.02).peak;
  expect(apart(crankingCycle(diesel, 2).peak, finest)).toBeLessThan(1e-4);
  expect(apart(crankingCycle(diesel, 0.5).peak, finest)).toBeLessThan(5e-6);
});

test("without heat to the walls every pressure scales with the air's, leaks and all", () => {
  fc.assert(
    fc.property(cool, between(0.5, 1.1), (input, s) => {
      const scaled = { ...input, air: absolutePressure(input.air * s) };
      expect(apart(peak(scaled), s * peak(input))).toBeLessThan(1e-10);
    }),
  );
});

test("without heat to the walls twice the leak at twice the speed is the same engine", () => {
  fc.assert(
    fc.property(cool, (input) => {
      const faster = { ...input, leak: area(2 * input.leak), speed: speed(2 * input.speed) };
      expect(apart(peak(faster), peak(input))).toBeLessThan(1e-4);
    }),
  );
});

test("without heat to the walls twice the size with eight times the leak is the same engine", () => {
  fc.assert(
    fc.property(cool, (input) => {
      const { cylinder } = input;
      const doubled = {
        ...cylinder,
        bore: length(2 * cylinder.bore),
        stroke: length(2 * cylinder.stroke),
        rod: length(2 * cylinder.rod),
      };
      const larger = {
        ...input,
        cylinder: doubled,
        leak: area(8 * input.leak),
        hose: volume(8 * input.hose),
      };
      expect(apart(peak(larger), peak(input))).toBeLessThan(1e-9);
    }),
  );
});

test("without leak or heat the peak is the closed form, air times ratio to the power of gamma", () => {
  fc.assert(
    fc.property(cool, fc.constantFrom(1.3, 1.4, 1.667), (input, gamma) => {
      const tight = { ...input, leak: area(0), gamma };
      const ratio = trappedRatio(input.cylinder, input.intakeCloses, input.hose);
      const { peakAngle, massLeft } = crankingCycle(tight);
      expect(apart(peak(tight), polytropicPressure(input.air, ratio, gamma))).toBeLessThan(2e-4);
      expect([Math.abs(peakAngle) < 0.01, massLeft]).toEqual([true, 1]);
    }),
  );
});

test("a gas whose heat capacity is boundless stays at its temperature: the peak is air times ratio", () => {
  const ratio = trappedRatio(spark.cylinder, spark.intakeCloses);
  const input = { ...plain(spark), leak: area(0), gamma: 1 + 1e-9 };
  expect(apart(peak(input), 101_325 * ratio)).toBeLessThan(1e-6);
});

// dT/T = -(gamma(T) - 1) dV/V integrated by quadrature over T instead of the crank: int dT/((gamma - 1) T) = ln r.
test("without leak or heat and with gamma(T) the entropy of the gas is kept", () => {
  const input: CycleInput = { ...spark, leak: area(0), heat: "none", start: temperature(300) };
  const { peakTemperature } = crankingCycle(input);
  const steps = 20_000;
  const width = Math.log(peakTemperature / 300) / steps;
  const sum = Array.from({ length: steps }, (_, i) => 300 * Math.exp((i + 0.5) * width)).reduce(
    (total, kelvins) => total + width / (gammaOfAir(kelvins) - 1),
    0,
  );
  expect(sum).toBeCloseTo(Math.log(trappedRatio(spark.cylinder, spark.intakeCloses)), 5);
});

test("the peak never comes after top dead centre where the walls are no hotter than the gas", () => {
  fc.assert(
    fc.property(engines, (input) => {
      const wall = temperature(Math.min(input.wall, input.start));
      expect(crankingCycle({ ...input, wall }).peakAngle).toBeLessThan(0.01);
    }),
  );
});

test("a wider leak always lowers the reading and takes more of the charge", () => {
  fc.assert(
    fc.property(engines, between(1.02, 3), (input, wider) => {
      const less = crankingCycle({ ...input, leak: area(input.leak + 1e-8) });
      const more = crankingCycle({ ...input, leak: area((input.leak + 1e-8) * wider) });
      expect(more.reading).toBeLessThan(less.reading);
    }),
  );
});

test("a cylinder cooler than its gas reads higher the faster it is cranked", () => {
  fc.assert(
    fc.property(engines, between(1.02, 2), (input, faster) => {
      const cooled = {
        ...input,
        wall: temperature(Math.min(input.wall, input.start)),
        leak: area(input.leak + 1e-8),
      };
      const quick = { ...cooled, speed: speed(cooled.speed * faster) };
      expect(crankingCycle(quick).reading).toBeGreaterThan(crankingCycle(cooled).reading);
    }),
  );
});

describe("two speeds", () => {
  // P = P_inf/(1 + N_h/N) through the readings at 150 and 300 rpm.
  test("the readings of a healthy engine lie within 1 % of a hyperbola in speed between 150 and 400 rpm", () => {
    const at = (rpm: number): number => reading_kPa({ ...spark, leak: area(0.5e-6), speed: speed(rpm) });
    const lag = (at(300) - at(150)) / (at(150) / 150 - at(300) / 300);
    const limit = at(300) * (1 + lag / 300);
    for (const rpm of [150, 200, 250, 300, 400])
      expect(apart(limit / (1 + lag / rpm), at(rpm))).toBeLessThan(0.01);
  });
});
