// Maps as people edit them: read back as they were written, and refused with the place of every slip.

import {
  type ImportMap,
  importReadings,
  parseSheet,
  readImportMap,
  writeImportMap,
} from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";

const whole: ImportMap = {
  schema: "sealtrend/import-map@1",
  encoding: "windows-1252",
  delimiter: "\t",
  decimal: ",",
  dates: "dmy",
  firstRow: 3,
  lastRow: 90,
  readings: { columns: ["C-F", "AB"] },
  engine: { column: "Machine [ 1 ]", fill: true },
  date: { headerRow: 1, fill: true },
  cylinder: { headerRow: 2 },
  what: { fixed: "dry" },
  take: { column: "G" },
  unit: { fixed: "bar" },
  gauge: { fixed: "red" },
  meter: { column: "H" },
  by: { fixed: "shop" },
  note: { column: "I" },
  conditions: { air_temp_C: { column: "J" } },
  notTaken: ["x", "n.a."],
  sameDay: "tests",
  engines: [
    { sheet: '5" "pump" [ ]', engine: "pump", cylinders: ["1", "L2"], ignition: "unknown" },
    { sheet: "__proto__", engine: "", cylinders: [] },
  ],
};

const faults = (text: string): readonly string[] => {
  const read = readImportMap(text, "map.json");
  return read.ok
    ? []
    : read.problems.map(
        ({ code, line, column, found }) => `${String(line)}:${String(column)} ${code} ${found}`,
      );
};

test("a written map is read back the same, and stays readable: an engine a line", () => {
  const text = writeImportMap(whole);
  const read = readImportMap(text, "map.json");
  expect(read.ok && read.value.map).toEqual(whole);
  expect(text.split("\n")).toHaveLength(28);
  expect(read.ok && writeImportMap(read.value.map)).toBe(text);
});

describe("a slip is named at its place", () => {
  const written = writeImportMap(whole);
  test.each([
    ['"dmy"', '"dym"', '6:3 field-bad dates is "dym"'],
    ['"decimal": ","', '"decimal": "comma"', '5:3 field-bad decimal is "comma"'],
    ['"firstRow": 3', '"firstRow": 0', "7:3 field-bad firstRow is 0"],
    ['"lastRow": 90', '"lastRow": 2', "8:3 field-bad lastRow is 2"],
    [
      '"headerRow": 2 }',
      '"headerRow": 3 }',
      "12:17 import-header-below headerRow 3 does not stand above firstRow 3",
    ],
    ['{ "fixed": "bar" }', '{ "fixed": "barr" }', '15:13 field-bad unit.fixed is "barr"'],
    ['{ "fixed": "dry" }', '{ "fixed": "moist" }', '13:13 field-bad what.fixed is "moist"'],
    [
      '{ "column": "G" }',
      '{ "column": "G", "fixed": "1" }',
      '14:3 field-bad take is {"column":"G","fixed":"1"}',
    ],
    ['{ "column": "H" }', '"H"', '17:3 field-bad meter is "H"'],
    ["air_temp_C", "air_temp", '20:19 field-bad conditions.air_temp is {"column":"J"}'],
    ['"engine": "pump"', '"engine": "Pump 1"', '24:36 field-bad engines[0].engine is "Pump 1"'],
    ['["1", "L2"]', '["1", "1"]', '24:54 field-bad engines[0].cylinders is ["1","1"]'],
    ['"unknown"', '"diesel"', '24:80 field-bad engines[0].ignition is "diesel"'],
    ['"notTaken"', '"nottaken"', '21:3 import-map-key "nottaken" is no entry of a map'],
    [
      '"fill": true },\n  "date"',
      '"down": true },\n  "date"',
      '10:42 import-map-key "engine.down" is no entry of a map',
    ],
  ])("%s as %s", (good, bad, fault) => {
    expect(written).toContain(good);
    expect(faults(written.replace(good, bad))).toEqual([fault]);
  });

  test("no JSON, no object, nothing of it", () => {
    expect(faults("{")).toEqual(["1:2 json-bad this is not JSON: it ends too early"]);
    expect(faults("[]")).toEqual(["1:1 json-bad this is not JSON: it is no object"]);
    expect(faults("{}")).toEqual([
      "1:1 field-bad schema is nothing",
      '1:1 field-missing there is no "firstRow"',
      '1:1 field-missing there is no "readings"',
      '1:1 field-missing there is no "engines"',
    ]);
  });

  test("one name of the sheet for two engines", () => {
    const two = { ...whole, engines: [whole.engines[0], { ...whole.engines[0], engine: "saw" }] };
    expect(faults(JSON.stringify(two)).map((fault) => fault.replace(/^\S+ /, ""))).toEqual([
      'field-bad engines[1].sheet is "5\\" \\"pump\\" [ ]"',
    ]);
  });
});

describe("a map that does not go with its sheet is refused before the first reading", () => {
  const { sheet } = parseSheet("Engine,Date,Cyl 1,Cyl 2\nPump,2026-05-03,118,121\n", "sheet.csv");
  const map: ImportMap = {
    schema: "sealtrend/import-map@1",
    firstRow: 2,
    readings: { columns: ["C-D"] },
    engine: { column: "Engine" },
    date: { column: "B" },
    cylinder: { headerRow: 1 },
    what: { fixed: "dry" },
    unit: { fixed: "psi" },
    notTaken: [],
    sameDay: "takes",
    engines: [{ sheet: "Pump", engine: "pump", cylinders: ["1", "2"] }],
  };
  const { unit: _, ...withoutUnit } = map;
  test.each([
    ["no unit", withoutUnit, 'there is no "unit"'],
    [
      "a column behind the last",
      { ...map, note: { column: "E" } },
      'the sheet has no column "E", or more than one with that text above it',
    ],
    ["an engine that is not listed", { ...map, engine: { fixed: "Saw" } }, 'engine.fixed is "Saw"'],
    ["a cylinder that it has not", { ...map, cylinder: { fixed: "3" } }, 'cylinder.fixed is "3"'],
    ["percent of a dry test", { ...map, unit: { fixed: "%" } }, 'unit.fixed is "%"'],
    [
      "a heading that is not there",
      { ...map, firstRow: 4, cylinder: { headerRow: 3 } },
      "cylinder.headerRow is 3",
    ],
    ["dates among the readings", { ...map, date: { column: "C" } }, "column C stands in readings already"],
  ])("%s", (_name, bad: ImportMap, found) => {
    const outcome = importReadings(sheet, bad);
    expect(outcome.ok ? [] : outcome.problems.map((one) => one.found)).toEqual([found]);
  });

  test("and the good one is taken", () => {
    expect(importReadings(sheet, map).ok).toBe(true);
  });
});
