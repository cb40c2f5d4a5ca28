// The pump: a twin diesel, even, too few tests to tell; the first try was made with a gauge too small for it.

import { farm } from "./farm.mjs";
import { limits, measurements, offered } from "./pump-teardown.mjs";

export const pump = {
  id: "pump",
  json: {
    schema: "sealtrend/engine@1",
    name: "Irrigation pump, twin diesel (invented)",
    use: "stationary",
    remote: false,
    cylinders: ["1", "2"],
    banks: [["1", "2"]],
    sharedGasket: true,
    firingOrder: ["1", "2"],
    cycle: "four-stroke",
    porting: "valves",
    ignition: "compression",
    cooling: "liquid",
    meter: "h",
    homeAltitude_m: farm,
    compressionRelease: "none",
    wetTest: { allowed: false, source: "workshop book, invented: no oil in the cylinders" },
    layout: { mains: 3, pins: 2, numberedFrom: "front" },
    geometry: { bore: "86mm", stroke: "86mm", rod: "143mm", compressionRatio: 21 },
    limits: {
      compression: {
        new: "31bar",
        minimum: "25bar",
        difference: "3bar",
        speed: "250rpm",
        source: "workshop book, invented",
      },
      clearances: limits,
      offered,
    },
    ownership: "for-good",
  },
  unit: "bar",
  level: 29.6,
  step: 0.5,
  offsets: [0.008, -0.008],
  commonPerYear: 0.002,
  changes: [],
  always: { altitude_m: farm, strokes: 6, engine_temp: "warm" },
  tests: [
    {
      date: "2020-06-13",
      meter: 905,
      gauge: "red",
      air: 19,
      literal: { unit: "psi", cells: [">300", "x"] },
      note: "stopped at once: the petrol gauge is too small for a diesel",
    },
    { date: "2022-05-21", meter: 1012, gauge: "long", air: 16, takes: 2 },
    { date: "2024-05-25", meter: 1130, gauge: "long", air: 18, takes: 2 },
    { date: "2026-05-23", meter: 1247, gauge: "long", air: 17, takes: 2 },
  ],
  services: [["2024-05-25", 1130, "oil change", "", "", "me", ""]],
  notes: [],
  measurements,
};
