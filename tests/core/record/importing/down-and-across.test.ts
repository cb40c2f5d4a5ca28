// Cylinders down and tests across, names of sides, and cylinders that a map leaves to the sheet. Figures invented.

import { describe, expect, test } from "vitest";
import { parseSheet, readImportMap, unreadColumns, writeImportMap } from "@sealtrend/core/parts";
import { guessed, imported, inShort, leftInShort, openCodes } from "./imported-sheet.ts";

const entries = ({ open }: ReturnType<typeof guessed>): readonly string[] =>
  open.flatMap(({ readings }) => readings.map(({ entry }) => entry));

describe("cylinders down", () => {
  const across = [
    "Compression - mower (psi),,,,",
    ",3 May 2018,,4 June 2020,",
    "Cylinder,1st,2nd,1st,2nd",
    "1,121,122,119,120",
    "2,118,117,111,110",
  ].join("\n");

  test("repeats across under merged days are takes", () => {
    const guess = guessed(across, { engine: "mower" });
    expect(openCodes(guess)).toEqual([]);
    expect(guess.map.take).toEqual({ headerRow: 3 });
    expect(imported(across, guess.map).tests.map(inShort)).toEqual([
      "mower 2018-05-03: dry 1 psi 121,118 / dry 2 psi 122,117",
      "mower 2020-06-04: dry 1 psi 119,111 / dry 2 psi 120,110",
    ]);
  });

  test("a Date that stands left of the days names them, not the column of cylinders below", () => {
    const sheet = "Cyl,Ox,Mule\nDate,3/14/2019,3/20/2019\n1,110,121\n2,112,120\n";
    const { map } = guessed(sheet, { unit: "psi", what: "dry" });
    expect(map).toMatchObject({
      engine: { headerRow: 1 },
      date: { headerRow: 2 },
      cylinder: { column: "A" },
    });
    expect(imported(sheet, map).tests.map(inShort)).toEqual([
      "mule 2019-03-20: dry 1 psi 121,120",
      "ox 2019-03-14: dry 1 psi 110,112",
    ]);
  });

  test("merged headings are no reason to ask for the mark between the cells", () => {
    const sheet =
      "Lathe,,,\n,2 May 2018,,4 May 2020,\nPlace,a,b,a,b\nfront,121,122,119,120\nrear,118,117,111,110\n";
    const guess = guessed(sheet, { engine: "lathe", unit: "psi", what: "dry" });
    expect(openCodes(guess)).not.toContain("delimiter");
    expect(openCodes(guessed("Date,1,2\n2018-05-03,9,4,9,5\n2019-05-03,9,3,9,2\n"))).toContain("delimiter");
  });

  test("what may name the cylinders is offered as this sheet has it", () => {
    const sheet = "Pump,,,\nDate,Bank,fore,aft\n2018-05-03,P,121,122\n2019-05-03,S,120,118\n";
    const found = entries(guessed(sheet, { engine: "pump", unit: "psi", what: "dry" }));
    expect(found).toContain('"cylinder": { "headerRow": 2 }');
    expect(found).toContain('"cylinder": { "column": "B" }');
  });
});

describe("the labels of cylinders", () => {
  const sides = "Date,Left,Right\n2019-12-16,150,149\n";
  const { map } = guessed(sides, { unit: "psi", what: "dry" });
  const withLabels = (cylinders: readonly string[]) => ({
    ...map,
    engine: { fixed: "twin" },
    cylinder: { headerRow: 1 },
    engines: [{ sheet: "twin", engine: "twin", cylinders }],
  });
  const labels = (cylinders: readonly string[]) =>
    imported(sides, withLabels(cylinders)).tests.map((one) => one.cylinders.join(" "));

  test("Left goes with L, and a list that is empty is filled from the sheet", () => {
    expect(labels(["L", "R"])).toEqual(["L R"]);
    expect(labels([])).toEqual(["L R"]);
    expect(labels(["Left", "R"])).toEqual(["Left R"]);
  });

  test("Left and Right are cylinders where the engine has its name elsewhere, else they are asked", () => {
    const typed = guessed(sides, { unit: "psi", what: "dry", engine: "twin" });
    expect(openCodes(typed)).toEqual([]);
    expect(imported(sides, typed.map).tests.map((one) => one.cylinders.join(" "))).toEqual(["L R"]);
    expect(openCodes(guessed(sides, { unit: "psi", what: "dry" }))).toContain("cylinder");
  });

  test("a word goes with the letter it begins with, where only one does; an average with none", () => {
    const sheet = "Date,Front,Rear,Average\n2019-12-16,150,149,149.5\n";
    const read = (cylinders: readonly string[]) =>
      imported(sheet, { ...withLabels(cylinders), readings: { columns: ["B-D"] } });
    expect(leftInShort(read(["F", "A"]))).toEqual([
      "fault C1 import-cylinder 1",
      "fault D1 import-cylinder 1",
    ]);
    expect(leftInShort(read(["F", "R"]))).toEqual(["fault D1 import-cylinder 1"]);
  });

  test("what no label goes with is told with a label that can be written", () => {
    const [first] = imported(sides.replace("Left", "Leftmost"), withLabels(["1", "R"])).left;
    expect(first?.problem.mend).toContain('add "L", which "Leftmost" then goes with,');
  });

  test("a map laid down before the cylinders are known leaves its lists open, and reads back", () => {
    const sheet = "Dates,Ox,Mule\nTop,3/14/2019,3/20/2019\none,110,121\ntwo,112,120\n";
    const guess = guessed(sheet, { unit: "psi", what: "dry" });
    expect(guess.map.cylinder).toBeUndefined();
    expect(guess.map.engines.every(({ cylinders }) => cylinders.length === 0)).toBe(true);
    expect(readImportMap(writeImportMap(guess.map), "map.json")).toMatchObject({ ok: true });
    expect(unreadColumns(parseSheet(sheet, "sheet.csv").sheet, guess.map).length).toBeLessThan(3);
  });
});

test("names that stand beside each other in one sheet are no slips of each other", () => {
  const known = ["pump-1", "pump-2"].map((id) => ({ id, name: id, cylinders: ["1", "2"] }));
  const grown =
    "Machine,Date,1,2\nPump 1,2020-01-02,100,101\nPump 2,2020-01-02,99,98\nPump 3,2020-01-02,97,99\n";
  expect(openCodes(guessed(grown, { unit: "psi", what: "dry", known }))).toEqual([]);
  const alone = "Machine,Date,1,2\nPmup 1,2020-01-02,100,101\n";
  expect(openCodes(guessed(alone, { unit: "psi", what: "dry", known }))).toEqual(["engine-name"]);
});

test("an engine that was typed is doubted only where no figure of its name differs", () => {
  const known = [{ id: "hull-8", name: "hull-8", cylinders: ["1", "2"] }];
  const sheet = "Date,1,2\n2020-01-02,100,101\n";
  const typed = (engine: string) => guessed(sheet, { unit: "psi", what: "dry", known, engine });
  expect(openCodes(typed("hull-9"))).toEqual([]);
  expect(typed("hul-8").open.map(({ readings }) => readings[0]?.option)).toEqual(["--engine hull-8"]);
});

test("a mark behind the figure is left off in the mend", () => {
  const sheet = 'Date,1,2\n2020-01-02,100,"119,"\n';
  const { map } = guessed(sheet, { unit: "psi", what: "dry", engine: "mower", decimal: "." });
  expect(imported(sheet, map).left.map(({ problem }) => problem.mend)).toEqual([
    expect.stringContaining("write 119 in the sheet"),
  ]);
});
