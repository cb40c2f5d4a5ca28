// Every field of engine.json: as it is meant, with a wrong value, and as a person types it.

import { engineFields, fieldValue, readEngine } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { placeOf, read, withField } from "./engine-entries.ts";

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
