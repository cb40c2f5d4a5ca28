import { absolutePressure, gaugePressure, length, speed, temperature, volume } from "@sealtrend/core";
import { expect, test } from "vitest";

test.each([
  [
    "an absolute pressure is above 0",
    () => absolutePressure(0),
    "absolute pressure: must be above 0 Pa, got 0",
  ],
  ["a temperature is above 0", () => temperature(-1), "temperature: must be above 0 K, got -1"],
  ["a speed is not below 0", () => speed(-1), "speed: must be at least 0 rpm, got -1"],
  ["a volume is not below 0", () => volume(-1e-9), "volume: must be at least 0 m3, got -1e-9"],
  [
    "a gauge pressure is not below a vacuum",
    () => gaugePressure(-120_000),
    "gauge pressure: must be at least -110000 Pa, got -120000",
  ],
  ["a length is finite", () => length(Number.NaN), "length: must be a finite number, got NaN"],
  [
    "nothing is infinite",
    () => gaugePressure(Infinity),
    "gauge pressure: must be a finite number, got Infinity",
  ],
])("%s", (_, make, message) => {
  expect(make).toThrow(new RangeError(message));
});
