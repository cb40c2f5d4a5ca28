// engine set: one field of engine.json, every other byte as it was. Contract: design.md §3.

import { expect, test } from "vitest";
import { deskWithPump, newDesk } from "./desk.ts";

const byHand =
  '\uFEFF{ "name": "Irrigation pump", "cylinders": ["1", "2"],\r\n  "ignition": "compression", "mine": { "kept": true },\r\n  "geometry": { "bore": "86mm",  "stroke" : "86mm" } }';

const set = ["engine", "set"] as const;

test("a field that is there changes, and not a byte beside it", async () => {
  const desk = newDesk();
  desk.put("logbook/pump/engine.json", byHand);
  const { exit, out } = await desk.type([...set, "pump", "geometry.bore", "87mm"]);
  expect([exit, out]).toEqual([
    0,
    "set  pump geometry.bore: 86mm -> 87mm             (sealtrend undo takes it back)\n",
  ]);
  expect(desk.text("logbook/pump/engine.json")).toBe(byHand.replace("86mm", "87mm"));
});

test("a field that is missing is put in, with the objects above it; - takes it out again", async () => {
  const desk = newDesk();
  desk.put("logbook/pump/engine.json", byHand);
  await desk.type([...set, "pump", "limits.compression.minimum", "26bar"]);
  expect(desk.text("logbook/pump/engine.json")).toBe(
    byHand.replace(/ }$/, ',\r\n  "limits": { "compression": { "minimum": "26bar" } } }'),
  );
  const { out } = await desk.type([...set, "pump", "limits.compression.minimum", "-"]);
  expect(out).toContain("set  pump limits.compression.minimum: 26bar -> not known");
  expect(desk.text("logbook/pump/engine.json")).toBe(
    byHand.replace(/ }$/, ',\r\n  "limits": { "compression": {} } }'),
  );
});

test("the engine may be left out where there is only one", async () => {
  const desk = await deskWithPump();
  expect(await desk.type([...set, "firingOrder", "1 3 4 2"])).toMatchObject({ exit: 0 });
  expect(JSON.parse(desk.text("logbook/pump/engine.json"))).toMatchObject({
    firingOrder: ["1", "3", "4", "2"],
  });
});

test("prices are set one by one, and ownership as people say it", async () => {
  const desk = await deskWithPump();
  await desk.type([...set, "pump", "prices.work.reRing", "620"]);
  await desk.type([...set, "pump", "prices.currency", "EUR"]);
  await desk.type([...set, "pump", "ownership", "5 years"]);
  await desk.type([...set, "pump", "renewed", "2004"]);
  expect(JSON.parse(desk.text("logbook/pump/engine.json"))).toMatchObject({
    prices: { work: { reRing: 620 }, currency: "EUR" },
    ownership: "5y",
    renewed: "2004",
  });
});

test("the same value again writes nothing", async () => {
  const desk = await deskWithPump();
  const { exit, out } = await desk.type([...set, "pump", "ignition", "spark"]);
  expect([exit, out]).toEqual([0, "pump ignition is spark already; nothing was written\n"]);
});

test("a quantity with its unit is taken for a field that carries one in its name", async () => {
  const desk = await deskWithPump();
  await desk.type([...set, "pump", "homeAltitude_m", "1150ft"]);
  await desk.type([...set, "pump", "wetTest.oil_ml", "5ml"]);
  expect(JSON.parse(desk.text("logbook/pump/engine.json"))).toMatchObject({
    homeAltitude_m: 350.5,
    wetTest: { oil_ml: 5 },
  });
});

test.each([
  [
    ["pump", "geometry.boer", "86mm"],
    'an engine has no field "geometry.boer"',
    "sealtrend engine set pump geometry.bore 86mm",
  ],
  [
    ["pump", "minimum", "26bar"],
    'an engine has no field "minimum"',
    "sealtrend engine set pump limits.compression.minimum 26bar",
  ],
  [
    ["pump", "limits.offered.bore", "0.25"],
    'limits.offered.bore "0.25"',
    "sealtrend engine set pump limits.offered.bore 0.25mm",
  ],
  [["pump", "zzz", "1"], 'an engine has no field "zzz"', "sealtrend engine show pump"],
  [["pump", "geometry.bore", "86"], 'geometry.bore "86"', "sealtrend engine set pump geometry.bore 86mm"],
  [["pump", "use", "tractor"], 'use "tractor"', "write one of these words"],
  [
    ["pump", "prices.work.rering", "620"],
    'an engine has no field "prices.work.rering"',
    "sealtrend engine set pump prices.work.reRing 620",
  ],
  [
    ["pump", "prices.work.reRing", "-620"],
    'prices.work.reRing "-620"',
    "sealtrend engine set pump prices.work.reRing 620",
  ],
  [
    ["pump", "prices.work.reRing", "1,200"],
    'prices.work.reRing "1,200"',
    "sealtrend engine set pump prices.work.reRing 620",
  ],
  [
    ["pump", "prices", "620"],
    "prices holds fields of its own",
    "sealtrend engine set pump prices.currency EUR",
  ],
  [["pump", "ownership", "forever"], 'ownership "forever"', "sealtrend engine set pump ownership 5y"],
  [["pump", "geometry.bore"], "no value for geometry.bore", "sealtrend engine set pump geometry.bore 86mm"],
  [["pimp", "use", "farm"], 'there is no engine "pimp" in logbook', "did you mean pump?"],
  [["pump", "ignition", "-"], 'with that, there is no "ignition"', 'add "ignition": "spark"'],
  [
    ["pump", "banks", "1 2 / 3"],
    'with that, banks is [["1","2"],["3"]]',
    "write each of the cylinders 1 2 3 4 once",
  ],
])("refused, with a mend: %j", async (words, found, mend) => {
  const desk = await deskWithPump();
  const before = desk.text("logbook/pump/engine.json");
  const { exit, err } = await desk.type([...set, ...words]);
  const lines = err.split("\n");
  expect([exit, lines[0], lines.at(-2)?.trim()]).toEqual([2, found, mend]);
  expect(desk.text("logbook/pump/engine.json")).toBe(before);
});

test("a faulty field can be mended by setting it", async () => {
  const desk = newDesk();
  desk.put("logbook/pump/engine.json", '{ "cylinders": ["1"], "ignition": "spark", "use": "plane" }');
  expect(await desk.type([...set, "pump", "use", "aircraft"])).toMatchObject({ exit: 0, err: "" });
});

test("what is no JSON is left alone", async () => {
  const desk = newDesk();
  desk.put("logbook/pump/engine.json", '{ "cylinders": ["1"], ');
  expect(await desk.type([...set, "pump", "use", "farm"])).toMatchObject({ exit: 1 });
  expect(desk.text("logbook/pump/engine.json")).toBe('{ "cylinders": ["1"], ');
});

test("a cylinder with readings keeps its label", async () => {
  const desk = await deskWithPump();
  await desk.type(["enter", "pump", "--dry", "150 149 151 150", "--unit", "psi"]);
  const { exit, err } = await desk.type([...set, "pump", "cylinders", "L R"]);
  expect([exit, err.split("\n")[0]]).toEqual([
    2,
    "pump has readings under cylinder 1, 2, 3, 4, which the new labels leave out:",
  ]);
});

test("more cylinders are added with their columns, and the readings stay readable", async () => {
  const desk = await deskWithPump();
  await desk.type(["enter", "pump", "--dry", "150 149 151 150", "--unit", "psi", "--date", "2026-05-02"]);
  expect(await desk.type([...set, "pump", "cylinders", "6"])).toMatchObject({ exit: 0 });
  expect(
    desk
      .text("logbook/pump/tests.csv")
      .split("\n")
      .map((line) => line.split(",").slice(-3).join(",")),
  ).toEqual(["note,c5,c6", ",,", ""]);
  expect(await desk.type(["show", "pump"])).toMatchObject({ exit: 0 });
  expect(
    await desk.type(["enter", "pump", "--dry", "150 149 151 150 150 148", "--unit", "psi"]),
  ).toMatchObject({ exit: 0 });
});

test("without a reading the cylinders may change freely, and the table begins anew", async () => {
  const desk = await deskWithPump();
  await desk.type([...set, "pump", "cylinders", "L R"]);
  expect(desk.text("logbook/pump/tests.csv")).toMatch(
    /^test,date,meter,what,take,gauge,unit,cL,cR,altitude_m,/,
  );
});

test("what names the old cylinders goes first", async () => {
  const desk = await deskWithPump();
  await desk.type([...set, "pump", "firingOrder", "1 3 4 2"]);
  const { exit, err } = await desk.type([...set, "pump", "cylinders", "6"]);
  expect([exit, err]).toEqual([
    2,
    expect.stringContaining("sealtrend engine set pump firingOrder - first, and set it anew afterwards"),
  ]);
});

test("nothing is set in the demo", async () => {
  const desk = newDesk();
  await desk.type(["demo"]);
  const { exit } = await desk.type([...set, "tractor", "use", "boat", "--logbook", "sealtrend-demo"]);
  expect(exit).toBe(2);
});

test("the document says what was before and after", async () => {
  const desk = await deskWithPump();
  expect((await desk.json(...set, "pump", "use", "farm")).written).toEqual({
    file: "logbook/pump/engine.json",
    path: "use",
    after: "farm",
  });
});

const taper = '{ "part": "bore", "quantity": "taper", "wear": [null, 0.10], "unit": "mm" }';

test("the maker's limits for parts are set as JSON and keep the digits they were typed with", async () => {
  const desk = newDesk();
  desk.put("logbook/pump/engine.json", byHand);
  expect(await desk.type([...set, "pump", "limits.clearances", `[${taper}]`])).toMatchObject({ exit: 0 });
  expect(desk.text("logbook/pump/engine.json")).toBe(
    byHand.replace(/ }$/, `,\r\n  "limits": { "clearances": [${taper}] } }`),
  );
  await desk.type([...set, "pump", "limits.offered", '{ "bore": { "unit": "mm", "sizes": [0.50] } }']);
  await desk.type([...set, "pump", "layout.mains", "5"]);
  expect(JSON.parse(desk.text("logbook/pump/engine.json").slice(1))).toMatchObject({
    limits: { offered: { bore: { unit: "mm", sizes: [0.5] } } },
    layout: { mains: 5 },
  });
});

test("each fault of a limit is named by its path, with its mend, and nothing is written", async () => {
  const desk = await deskWithPump();
  const before = desk.text("logbook/pump/engine.json");
  const bad = `[${taper}, { "part": "bore", "quantity": "tapper", "wear": 0.1, "unit": "mm" }]`;
  const { exit, err } = await desk.type([...set, "pump", "limits.clearances", bad]);
  expect(exit).toBe(2);
  expect(err).toContain('with that, limits.clearances[1].quantity is "tapper"');
  expect(err).toContain('write "taper"');
  expect(err).toContain("with that, limits.clearances[1].wear is 0.1");
  expect(err).toContain("write [null, 0.1]");
  for (const [path, value] of [
    ["limits.clearances", "0.1"],
    ["limits.clearances", "taper 0.1"],
    ["limits.offered", "[0.5]"],
    ["layout.mains", "4.5"],
  ])
    expect(await desk.type([...set, "pump", path ?? "", value ?? ""])).toMatchObject({ exit: 2 });
  expect(desk.text("logbook/pump/engine.json")).toBe(before);
});

test("the sizes of one part are typed with one unit at the end, and keep their digits", async () => {
  const desk = await deskWithPump();
  const { out } = await desk.type([...set, "pump", "limits.offered.bore", "0.020 0.040, 0.060in"]);
  expect(out).toContain("set  pump limits.offered: none -> bore 0.02 0.04 0.06 in");
  expect(desk.text("logbook/pump/engine.json")).toContain(
    '"bore": { "unit": "in", "sizes": [0.020, 0.040, 0.060] }',
  );
  await desk.type([...set, "pump", "limits.offered.main", "0,25 0,5mm"]);
  expect(await desk.json(...set, "pump", "limits.offered.bore", "-")).toMatchObject({
    written: { before: { unit: "in", sizes: [0.02, 0.04, 0.06] } },
  });
  expect(JSON.parse(desk.text("logbook/pump/engine.json"))).toMatchObject({
    limits: { offered: { main: { unit: "mm", sizes: [0.25, 0.5] } } },
  });
  const { exit, err } = await desk.type([...set, "pump", "limits.offered.pin", "20mm"]);
  expect([exit, err]).toEqual([2, expect.stringContaining("limits.offered.pin.sizes[0] is 20")]);
});

test.each(["offered.bore", "limits.offered.bores", "limits.offered.boer"])(
  "%s is nearly a field",
  async (path) => {
    const desk = await deskWithPump();
    const { exit, err } = await desk.type([...set, "pump", path, "0.5mm"]);
    expect([exit, err]).toEqual([
      2,
      expect.stringContaining("sealtrend engine set pump limits.offered.bore 0.5mm"),
    ]);
  },
);
