import {
  absolutePressure,
  length,
  pressureCorrection,
  speedDoubt,
  temperature,
  volume,
} from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";

const station = absolutePressure(84_307);
const qnh = absolutePressure(101_325);
const altitude = length(1_524);

describe("what is known best of the air counts", () => {
  test.each([
    ["a barometer at the place", { stationPressure: station, qnh, altitude }, "station"],
    ["a weather report with the height of the place", { qnh, altitude }, "qnh"],
    ["the height alone", { altitude }, "altitude"],
  ] as const)("%s", (_, air, from) => {
    const correction = pressureCorrection(air);
    expect(correction.from).toBe(from);
    // 101.325/84.307 = 1.20186: all three say 5000 ft in standard weather
    expect(correction.factor).toBeCloseTo(1.20186, 4);
    expect(correction.reference).toBe(101_325);
  });

  test.each([
    ["nothing known", {}],
    ["a weather report without a height", { qnh: absolutePressure(99_000) }],
  ])("with %s the air of the sea is assumed and said", (_, air) => {
    expect(pressureCorrection(air)).toMatchObject({ from: "assumed", factor: 1, station: 101_325 });
  });
});

test("the less is known of the air, the wider the doubt", () => {
  const doubts = [{ stationPressure: station }, { qnh, altitude }, { altitude }, {}].map(
    (air) => pressureCorrection({ ...air, airTemperature: temperature(288.15) }).uncertainty,
  );
  // rectangular half-ranges over √3: .003, √(.003² + .0036²), .025, .1213 (judgement)
  expect(doubts.map((u) => Number(u.toFixed(5)))).toEqual([0.00173, 0.00271, 0.01443, 0.07003]);
});

test("by pressure the temperature moves no reading, by density hot air raises the corrected one", () => {
  const hot = { stationPressure: station, airTemperature: temperature(308.15) };
  expect(pressureCorrection(hot).factor).toBe(pressureCorrection({ stationPressure: station }).factor);
  // 308.15/288.15 = 1.06941
  expect(pressureCorrection(hot, "density").factor / pressureCorrection(hot).factor).toBeCloseTo(1.06941, 5);
});

test("by density and without a thermometer the air is as warm as the standard has it there, and the doubt is wider", () => {
  const none = pressureCorrection({ altitude }, "density");
  // 1/0.8617, the density ratio at 5000 ft in the ISA table (published)
  expect(1 / none.factor).toBeCloseTo(0.8617, 4);
  expect(none.uncertainty).toBeGreaterThan(pressureCorrection({ altitude }).uncertainty);
});

test("a cranking speed that was not corrected leaves 3.9 % doubt on a petrol engine and 4.9 % on a diesel", () => {
  // N_s/(N + N_s/2)·.16: 70/285·.16 = .0393; 90/295·.16 = .0488 (computed, no published figure)
  expect(speedDoubt("spark")).toBeCloseTo(0.0393, 4);
  expect(speedDoubt("compression")).toBeCloseTo(0.0488, 4);
  expect(speedDoubt("unknown")).toBe(speedDoubt("spark"));
});

test("a small cylinder that was not corrected leaves more doubt, and a speed that is known and far off leaves more still", () => {
  // N_s = 70·(.5/.25)^.4 = 92.36: 92.36/296.18·.16 = .0499 (computed)
  expect(speedDoubt("spark", volume(0.25e-3))).toBeCloseTo(0.0499, 4);
  // 70/(150 + 35)·ln(260/150) = .2081 (computed)
  expect(speedDoubt("spark", undefined, { from: 150, to: 260 })).toBeCloseTo(0.2081, 4);
  expect(speedDoubt("spark", undefined, { from: 250, to: 250 })).toBe(speedDoubt("spark"));
});

test("a temperature exponent between the two bases lies between them; outside 0 to 1 there is none", () => {
  const hot = { stationPressure: station, airTemperature: temperature(308.15) };
  const quarter = pressureCorrection(hot, "pressure", 0.25);
  expect(quarter.factor / pressureCorrection(hot).factor).toBeCloseTo(1.06941 ** 0.25, 5);
  expect(quarter).toMatchObject({ basis: "pressure", temperatureExponent: 0.25 });
  expect(pressureCorrection(hot, "density", 0).factor).toBe(pressureCorrection(hot).factor);
  for (const x of [-0.1, 1.1, Number.NaN])
    expect(() => pressureCorrection(hot, "pressure", x)).toThrow(RangeError);
});

test("the doubt about the factor is that of the pressure and that of the temperature", () => {
  for (const basis of ["pressure", "density"] as const) {
    const { uncertainty, uncertaintyOfPressure, uncertaintyOfTemperature } = pressureCorrection(
      { altitude },
      basis,
    );
    expect(uncertainty).toBeCloseTo(Math.hypot(uncertaintyOfPressure, uncertaintyOfTemperature), 12);
  }
});
