import { type Engine, engineFields, fieldValue, readEngine } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";

const least = { cylinders: ["1", "2", "3", "4"], ignition: "compression" };
const read = (entries: object) => readEngine(JSON.stringify(entries, null, 2), "engine.json", "pump");

/** An object with one value at a dotted path, among those that are needed. */
const withField = (path: string, value: unknown): object => {
  const nested = path.split(".").reduceRight<unknown>((inner, name) => ({ [name]: inner }), value);
  return { ...least, ...(nested as object) };
};

/** Where a name stands in text that holds it once: line and column from 1. */
const placeOf = (text: string, name: string) => {
  const before = text.slice(0, text.indexOf(`"${name}":`)).split("\n");
  return { line: before.length, column: (before.at(-1)?.length ?? 0) + 1 };
};

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
const right: Readonly<Record<string, unknown>> = {
  schema: "sealtrend/engine@1",
  name: "Irrigation pump",
  use: "boat",
  remote: true,
  cylinders: ["1", "2", "3", "4"],
  banks: [
    ["1", "2"],
    ["3", "4"],
  ],
  sharedGasket: false,
  firingOrder: ["1", "3", "4", "2"],
  cycle: "two-stroke",
  porting: "ports",
  ignition: "spark",
  cooling: "air",
  meter: "km",
  homeAltitude_m: -20,
  compressionRelease: "manual",
  "wetTest.allowed": true,
  "wetTest.oil_ml": 5,
  "wetTest.source": "manual",
  "leakDownTest.allowed": false,
  "leakDownTest.source": "the hub cannot be held",
  "geometry.bore": "86mm",
  "geometry.stroke": "3.4in",
  "geometry.rod": "143 mm",
  "geometry.compressionRatio": 21,
  "geometry.intakeCloses": "36deg",
  "layout.mains": 5,
  "layout.pins": 4,
  "layout.numberedFrom": "front",
  "limits.compression.new": "31bar",
  "limits.compression.minimum": "380psi",
  "limits.compression.difference": "3kgf/cm2",
  "limits.compression.lowestToHighest": 0.8,
  "limits.compression.speed": "250rpm",
  "limits.compression.source": "manual",
  "limits.leakDown.lost": 0.25,
  "limits.leakDown.source": "manual",
  "limits.clearances": [],
  "limits.offered": {},
  crankingCurve: [{ gauge: "red", P0: "3400kPa", u_ln: 0.05, source: "two speeds" }],
  "correction.basis": "density",
  "correction.temperatureExponent": 0.25,
  "prices.currency": "EUR",
  "prices.jobs.headOff": 620,
  "prices.jobs.bottomOpen": 620,
  "prices.jobs.engineOut": 620,
  "prices.work.topEnd": 620,
  "prices.work.reRing": 620,
  "prices.work.rebuild": 620,
  "prices.daysNow.topEnd": 4,
  "prices.daysNow.reRing": 4,
  "prices.daysNow.rebuild": 4,
  "prices.daysLater.topEnd": 4,
  "prices.daysLater.reRing": 4,
  "prices.daysLater.rebuild": 4,
  "prices.day": 620,
  "prices.test": 620,
  "prices.runningPerYear": 620,
  "prices.resale.topEnd": 620,
  "prices.resale.reRing": 620,
  "prices.resale.rebuild": 620,
  "prices.replacement": 620,
  "prices.redo.topEnd": 0.05,
  "prices.redo.reRing": 0.05,
  "prices.redo.rebuild": 0.05,
  "prices.spoil": 0.05,
  "prices.caught": 0.05,
  ownership: "5 years",
  renewed: "2004",
  yearsLeft: 12,
};
const wrong: Readonly<Record<string, unknown>> = {
  schema: "sealtrend/engine@2",
  name: 5,
  use: "tractor",
  remote: "yes",
  cylinders: ["1", "1"],
  banks: [["1", "2"], ["3"]],
  sharedGasket: 1,
  firingOrder: ["1", "3", "4", "4"],
  cycle: 4,
  porting: "valve",
  ignition: "diesel",
  cooling: "water",
  meter: "hours",
  homeAltitude_m: "350m",
  compressionRelease: true,
  "wetTest.allowed": "no",
  "wetTest.oil_ml": 51,
  "wetTest.source": null,
  "leakDownTest.allowed": 0,
  "leakDownTest.source": 1,
  "geometry.bore": 86,
  "geometry.stroke": "86",
  "geometry.rod": "-143mm",
  "geometry.compressionRatio": 1,
  "geometry.intakeCloses": "36mm",
  "layout.mains": 0,
  "layout.pins": 29,
  "layout.numberedFrom": 1,
  "limits.compression.new": "31",
  "limits.compression.minimum": 26,
  "limits.compression.difference": "3mm",
  "limits.compression.lowestToHighest": 80,
  "limits.compression.speed": "250bar",
  "limits.compression.source": ["manual"],
  "limits.leakDown.lost": 25,
  "limits.leakDown.source": false,
  "limits.clearances": "0.1 mm",
  "limits.offered": 0.25,
  crankingCurve: "none",
  "correction.basis": "both",
  "correction.temperatureExponent": 1.5,
  "prices.currency": 5,
  "prices.jobs.headOff": "620",
  "prices.jobs.bottomOpen": "620",
  "prices.jobs.engineOut": "620",
  "prices.work.topEnd": "620",
  "prices.work.reRing": "620",
  "prices.work.rebuild": "620",
  "prices.daysNow.topEnd": -4,
  "prices.daysNow.reRing": -4,
  "prices.daysNow.rebuild": -4,
  "prices.daysLater.topEnd": -4,
  "prices.daysLater.reRing": -4,
  "prices.daysLater.rebuild": -4,
  "prices.day": "620",
  "prices.test": "620",
  "prices.runningPerYear": "620",
  "prices.resale.topEnd": "620",
  "prices.resale.reRing": "620",
  "prices.resale.rebuild": "620",
  "prices.replacement": "620",
  "prices.redo.topEnd": 5,
  "prices.redo.reRing": 5,
  "prices.redo.rebuild": 5,
  "prices.spoil": 5,
  "prices.caught": 5,
  ownership: 5,
  renewed: 2004,
  yearsLeft: "12",
};

describe("every field", () => {
  test("is named in the tables of this test", () => {
    expect(Object.keys(right)).toEqual(Object.keys(engineFields));
    expect(Object.keys(wrong)).toEqual(Object.keys(engineFields));
  });

  test.each(Object.keys(right))("%s is taken as it is meant", (path) => {
    expect(read(withField(path, right[path])).problems).toEqual([]);
  });

  test.each(Object.keys(wrong))("%s with a wrong value is one fault, at its own line and column", (path) => {
    const entries = withField(path, wrong[path]);
    const text = JSON.stringify(entries, null, 2);
    const { engine, problems } = readEngine(text, "engine.json", "pump");
    expect(engine).toBeUndefined();
    const name = path.slice(path.lastIndexOf(".") + 1);
    expect(problems).toMatchObject([{ code: "field-bad", ...placeOf(text, name) }]);
    expect(problems[0]?.found).toContain(`${path} is `);
    expect(problems[0]?.mend).toMatch(/^write /);
  });
});

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

describe("a field as a person types it", () => {
  const typed = (path: string, text: string): unknown => {
    const field = engineFields[path];
    if (field === undefined) throw new Error(`no field ${path}`);
    return fieldValue(field, text);
  };

  test.each([
    ["name", " Irrigation pump ", "Irrigation pump"],
    ["use", "boat", "boat"],
    ["use", "tractor", undefined],
    ["remote", "yes", true],
    ["remote", "false", false],
    ["remote", "maybe", undefined],
    ["homeAltitude_m", "350", 350],
    ["homeAltitude_m", "-3,5", -3.5],
    ["homeAltitude_m", "350m", undefined],
    ["homeAltitude_m", "9000", undefined],
    ["geometry.bore", "86mm", "86mm"],
    ["geometry.bore", "86", undefined],
    ["firingOrder", "1 3 4 2", ["1", "3", "4", "2"]],
    ["firingOrder", "1,3,4,2", ["1", "3", "4", "2"]],
    ["cylinders", "1", ["1"]],
    ["cylinders", "4", undefined],
    ["cylinders", "1 2 2", undefined],
    [
      "banks",
      "1 2 / 3 4",
      [
        ["1", "2"],
        ["3", "4"],
      ],
    ],
    ["prices.currency", "EUR", "EUR"],
    ["prices.work.reRing", "620", 620],
    ["prices.work.reRing", "620,50", 620.5],
    ["prices.work.reRing", "-620", undefined],
    ["prices.work.reRing", "1,200", undefined],
    ["prices.work.reRing", "620 EUR", undefined],
    ["prices.redo.reRing", "0.1", 0.1],
    ["prices.redo.reRing", "10", undefined],
    ["ownership", "5y", "5y"],
    ["ownership", "5 years", "5y"],
    ["ownership", "For good", "for-good"],
    ["ownership", "5", undefined],
    ["ownership", "0y", undefined],
    ["renewed", "2004-05-01", "2004-05-01"],
    ["renewed", "2004-13-01", undefined],
    ["yearsLeft", "12", 12],
    ["limits.offered", "5", undefined],
  ])("%s: %j becomes %j", (path, text, value) => {
    expect(typed(path, text)).toEqual(value);
  });
});
