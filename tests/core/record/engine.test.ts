// engine.json as a whole: what it may leave out, what is read from it, and what is told of it.

import { type Engine } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { least, read, withField } from "./engine-entries.ts";

test("cylinders and ignition are enough; all else is unknown or the usual", () => {
  const { engine, problems } = read(least);
  expect(problems).toEqual([]);
  expect(engine).toEqual({
    id: "pump",
    name: "pump",
    use: "other",
    remote: false,
    cylinders: ["1", "2", "3", "4"],
    banks: [],
    sharedGasket: true,
    firingOrder: [],
    cycle: "four-stroke",
    porting: "valves",
    ignition: "compression",
    compressionRelease: "unknown",
    geometry: {},
    crankingCurves: [],
    correction: {},
    compressionLimits: {},
    leakDownLimits: {},
    clearances: [],
    offered: {},
    layout: {},
  } satisfies Engine);
});

test.each(["cylinders", "ignition"])(
  "without %s there is no engine, and the entry to add is shown",
  (field) => {
    const { engine, problems } = read({ ...least, [field]: undefined });
    expect(engine).toBeUndefined();
    expect(problems).toMatchObject([{ code: "field-missing", line: 1, column: 1 }]);
    expect(problems[0]?.mend).toContain(`add "${field}": `);
  },
);

test("limits are read in their units, home altitude in metres, oil in millilitres", () => {
  const { engine } = read({
    ...least,
    homeAltitude_m: 350,
    wetTest: { allowed: false, oil_ml: 5, source: "manual p. 31" },
    limits: {
      compression: {
        new: "31bar",
        minimum: "26 bar",
        difference: "3bar",
        lowestToHighest: 0.8,
        speed: "250rpm",
        source: "manual p. 30",
      },
      leakDown: { lost: 0.25, source: "manual p. 40" },
    },
  });
  expect(engine?.compressionLimits).toEqual({
    new: 3_100_000,
    minimum: 2_600_000,
    difference: 300_000,
    lowestToHighest: 0.8,
    speed: 250,
    source: "manual p. 30",
  });
  expect(engine?.leakDownLimits).toEqual({ lost: 0.25, source: "manual p. 40" });
  expect(engine?.homeAltitude).toBe(350);
  expect(engine?.wetTest).toMatchObject({ allowed: false, source: "manual p. 31" });
  expect(engine?.wetTest?.oil).toBeCloseTo(5e-6, 12);
});

test("sizes of the cylinder, the calibrations and the choice of basis are read in their units", () => {
  const { engine, problems } = read({
    ...least,
    geometry: { bore: "86mm", stroke: "3in", rod: "143mm", compressionRatio: 21, intakeCloses: "36deg" },
    crankingCurve: [
      { gauge: "red", P0: "34bar", u_ln: 0.05, source: "two speeds, 2026-05-03a" },
      { P0: "500psi", u_ln: 0.1 },
    ],
    correction: { basis: "density", temperatureExponent: 0.5 },
  });
  expect(problems).toEqual([]);
  expect(engine?.geometry).toEqual({
    bore: expect.closeTo(0.086, 12) as number,
    stroke: expect.closeTo(3 * 0.0254, 12) as number,
    rod: expect.closeTo(0.143, 12) as number,
    compressionRatio: 21,
    intakeCloses: 36,
  });
  expect(engine?.crankingCurves).toEqual([
    { gauge: "red", P0: 3_400_000, uncertainty: 0.05, source: "two speeds, 2026-05-03a" },
    { P0: expect.closeTo(500 * 6894.757293168361, 3) as number, uncertainty: 0.1 },
  ]);
  expect(engine?.correction).toEqual({ basis: "density", temperatureExponent: 0.5 });
});

test.each([
  [{}, "a list of entries, each in { }, between [ and ]"],
  [["3400kPa"], "{ } around gauge, P0, u_ln and source"],
  [[{ gauge: "red", u_ln: 0.05 }], 'P0, a pressure above 0 such as "3400kPa"'],
  [[{ P0: 3400, u_ln: 0.05 }], "P0, a pressure above 0"],
  [[{ P0: "0kPa", u_ln: 0.05 }], "P0, a pressure above 0"],
  [[{ P0: "3400kPa" }], "u_ln, a number above 0 and up to 0.5, such as 0.05 for 5 %"],
  [[{ P0: "3400kPa", u_ln: 5 }], "u_ln, a number above 0 and up to 0.5, such as 0.05 for 5 %"],
  [[{ P0: "3400kPa", u_ln: 0 }], "u_ln, a number above 0 and up to 0.5, such as 0.05 for 5 %"],
  [[{ P0: "3400kPa", u_ln: 0.05, gauge: 1 }], "gauge as text in double quotes"],
  [
    [
      { P0: "3400kPa", u_ln: 0.05 },
      { P0: "3400kPa", u_ln: 0.05, source: ["two speeds"] },
    ],
    "source as text in double quotes in entry 2",
  ],
])("a calibration %j is a fault that says what is missing", (crankingCurve, expected) => {
  const { engine, problems } = read({ ...least, crankingCurve });
  expect(engine).toBeUndefined();
  expect(problems).toMatchObject([
    { code: "field-bad", expected: expect.stringContaining(expected) as string },
  ]);
});

test.each([
  [{ rod: "43mm", stroke: "86mm" }, "a rod, centre to centre, above 43 mm (half the stroke)"],
  [{ bore: "86m" }, "a bore of at most 2000 mm"],
  [{ intakeCloses: "180deg" }, "an intake closing after bottom dead centre below 180 deg"],
])("sizes that no cylinder has, %j, are a fault at the one that cannot be", (geometry, expected) => {
  expect(read({ ...least, geometry }).problems).toMatchObject([{ code: "field-bad", expected }]);
});

/** For each field a value it may have and one it may not. */
test("what should hold further entries and does not is a fault that names them", () => {
  expect(read({ ...least, limits: 5 }).problems).toMatchObject([
    {
      code: "field-bad",
      found: "limits is 5",
      expected: "{ } around any of compression, leakDown, clearances, offered",
    },
  ]);
});

test("an entry that is not known here is said and kept, with the nearest name suggested", () => {
  const { engine, problems } = read(withField("limits.compression.minimun", "26bar"));
  expect(engine).toBeDefined();
  expect(problems).toMatchObject([
    { code: "field-unknown", severity: "caution", line: 11, mend: "rename it minimum" },
  ]);
  expect(
    read({ ...least, constructor: 1, colour: "red" }).problems.map(({ code, mend }) => [code, mend]),
  ).toEqual([
    ["field-unknown", "rename it, or leave it"],
    ["field-unknown", "rename it, or leave it"],
  ]);
});

test("cylinder labels are up to four letters or digits, 1 to 28 of them, each once", () => {
  const labels = (cylinders: unknown) => read({ ...least, cylinders }).problems.length;
  expect(labels(["L1", "R1"])).toBe(0);
  expect(labels(Array.from({ length: 28 }, (_, i) => String(i + 1)))).toBe(0);
  for (const bad of [
    [],
    Array.from({ length: 29 }, (_, i) => String(i)),
    ["1", 2],
    ["front"],
    ["1-2"],
    "4",
    4,
  ])
    expect(labels(bad)).toBe(1);
});

test("all faults of the file are named, sorted by their place", () => {
  const { problems } = read({ ...least, ignition: "diesel", use: "tractor", firingOrder: ["1"] });
  expect(problems.map(({ line }) => line)).toEqual([8, 9, 10]);
});
