// The space above the piston: contract and edges. Numbers of the 86 mm engine were computed apart from this code (handbook D.1).

import {
  angle,
  clearanceVolume,
  cylinderFault,
  length,
  sweptVolume,
  trappedRatio,
  volume,
  volumeAt,
  type Cylinder,
} from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";

const engine: Cylinder = {
  bore: length(0.086),
  stroke: length(0.086),
  rod: length(0.143),
  compressionRatio: 10,
};
const cm3 = 1e-6;

test("an 86 by 86 mm cylinder of ratio 10 sweeps 499.557 cm3 over a chamber of 55.5064 cm3", () => {
  expect(sweptVolume(engine) / cm3).toBeCloseTo(499.557, 3);
  expect(clearanceVolume(engine) / cm3).toBeCloseTo(55.5064, 4);
  expect(volumeAt(engine, angle(90)) / cm3).toBeCloseTo(343.729, 3);
});

test("the volume is that of the chamber at top dead centre, all of it at bottom, and even about both", () => {
  expect(volumeAt(engine, angle(0))).toBe(clearanceVolume(engine));
  expect(volumeAt(engine, angle(180)) / clearanceVolume(engine)).toBeCloseTo(10, 12);
  expect(volumeAt(engine, angle(-70))).toBe(volumeAt(engine, angle(70)));
});

test.each([
  [0, 10],
  [20, 9.80797],
  [30, 9.56722],
  [40, 9.2294],
  [45, 9.02418],
  [50, 8.79499],
  [60, 8.26634],
  [80, 6.95264],
  [90, 6.1926],
])("intake closing %i deg after bottom dead centre traps %f times the chamber", (closes, ratio) => {
  expect(Math.abs(trappedRatio(engine, angle(closes)) / ratio - 1)).toBeLessThan(1e-5);
});

// (458.83 + 4)/(55.5064 + 4) with V(-120 deg) = 55.5064 x 8.26634 = 458.835 cm3
test("a hose ahead of the check valve is part of the chamber, and lowers the ratio", () => {
  expect(trappedRatio(engine, angle(60), volume(4 * cm3))).toBeCloseTo(462.835 / 59.5064, 4);
});

test("an intake that closes before bottom dead centre traps what stood above the piston then", () => {
  expect(trappedRatio(engine, angle(-30))).toBeCloseTo(trappedRatio(engine, angle(30)), 12);
});

describe("sizes that cannot be", () => {
  test.each([
    ["a bore of 0", { bore: length(0) }, { field: "bore", found: 0, must: "be-at-least", limit: 0.005 }],
    ["a stroke of 7 m", { stroke: length(7) }, { field: "stroke", found: 7, must: "be-at-most", limit: 5 }],
    ["a ratio of 1", { compressionRatio: 1 }, { field: "compressionRatio", must: "be-above", limit: 1 }],
    [
      "a ratio of 100",
      { compressionRatio: 100 },
      { field: "compressionRatio", must: "be-at-most", limit: 40 },
    ],
    ["a rod as short as the throw", { rod: length(0.043) }, { field: "rod", must: "be-above", limit: 0.043 }],
    [
      "closing at top dead centre",
      { intakeCloses: angle(180) },
      { field: "intakeCloses", must: "be-below", limit: 180 },
    ],
  ])("%s is named with its limit", (_, wrong, fault) => {
    expect(cylinderFault({ ...engine, ...wrong })).toMatchObject(fault);
  });

  test("an engine, and half a description of one, has no fault", () => {
    expect(cylinderFault({ ...engine, intakeCloses: angle(60) })).toBeUndefined();
    expect(cylinderFault({})).toBeUndefined();
    expect(cylinderFault({ rod: length(0.04) })).toBeUndefined();
  });

  test("a formula given them throws, and names size, limit and value", () => {
    expect(() => sweptVolume({ ...engine, bore: length(0) })).toThrow(
      "sweptVolume: bore must be at least 0.005, got 0",
    );
    expect(() => volumeAt({ ...engine, compressionRatio: 1 }, angle(0))).toThrow(RangeError);
    expect(() => trappedRatio(engine, angle(190))).toThrow("intakeCloses must be below 180, got 190");
  });
});
