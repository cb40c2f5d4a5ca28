import { absolutePressure, beyondWeather, length, pressureAtAltitude } from "@sealtrend/core/parts";
import { expect, test } from "vitest";

test.each([
  // standard atmosphere: 84.31 kPa at 1524 m, 70.11 kPa at 3000 m
  [101_300, 1524],
  [101_000, 3000],
  [70_000, 0],
])("%i Pa is no barometer reading at %i m", (station, height) => {
  expect(beyondWeather(absolutePressure(station), length(height))).toBeDefined();
});

test("the air of the standard atmosphere, 30 hPa more or less, is weather at every height", () => {
  for (const height of [-400, 0, 350, 1524, 3000, 6000])
    for (const swing of [-0.03, 0, 0.03]) {
      const station = absolutePressure(pressureAtAltitude(length(height)) * (1 + swing));
      expect([height, beyondWeather(station, length(height))]).toEqual([height, undefined]);
    }
});

test("what it would be at sea level is told", () => {
  // by hand: (1013/1013.25)^0.190263 + 0.0065 x 1524/288.15 = 1.034331; to the power of 5.255876 times 101 325 Pa
  expect(beyondWeather(absolutePressure(101_300), length(1524))).toBeCloseTo(120_994, -2);
});
