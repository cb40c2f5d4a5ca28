// The words and cells of strange sheets, one by one: cylinders, units, layouts, engines, facts of the day.

import type { ImportHints } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { guessed, imported, inShort, leftInShort, openCodes } from "./imported-sheet.ts";

const settled: ImportHints = { unit: "psi", what: "dry" };

describe("a heading that names cylinder 3", () => {
  test.each([
    "Cyl 3",
    "Cyl. 3",
    "CYL3",
    "Zyl. 3",
    "Zylinder 3",
    "cylinder 3",
    "cylinder no. 3",
    "Cylinder #3",
    "#3",
    "No 3",
    "Nr. 3",
    "c3",
    "Cilindro 3",
    "Cil. 3",
    "Cylindre n° 3",
    "cilinder 3",
    "Cylindr 3",
    "Cyl 3 (psi)",
    "Dry 3",
    "Compression cyl 3",
  ])("%s", (head) => {
    const text = `Machine,Date,Cyl 1,Cyl 2,${head}\npump,2026-05-03,118,119,120\n`;
    expect(imported(text, guessed(text, settled).map).tests.map(inShort)).toEqual([
      "pump 2026-05-03: dry 1 psi 118,119,120",
    ]);
  });
});

describe("cylinders of two banks", () => {
  test.each([
    ["L1", "L2", "R1", "R2"],
    ["l 1", "l 2", "r 1", "r 2"],
    ["Cyl L1", "Cyl L2", "Cyl R1", "Cyl R2"],
  ])("%s, %s, %s, %s", (...heads) => {
    const text = `Machine,Date,${heads.join(",")}\npump,2026-05-03,118,119,120,121\n`;
    expect(guessed(text, settled).map.engines[0]?.cylinders).toEqual(["L1", "L2", "R1", "R2"]);
  });
});

describe("a unit", () => {
  test.each([
    ["Cyl 1 (psi),Cyl 2", "psi"],
    ["Cyl 1 [bar],Cyl 2 [bar]", "bar"],
    ["Cyl 1 kPa,Cyl 2 kPa", "kPa"],
    ["Cyl 1 (kg/cm²),Cyl 2", "kgf/cm2"],
  ])("is told by %s", (heads, unit) => {
    const text = `Machine,Date,${heads}\npump,2026-05-03,118,119\n`;
    expect(guessed(text, { what: "dry" }).map.unit).toEqual({ fixed: unit });
  });

  test("is never told by the size of the numbers", () => {
    const text = "Machine,Date,Cyl 1,Cyl 2\npump,2026-05-03,150,151\n";
    expect(openCodes(guessed(text, { what: "dry" }))).toEqual(["unit"]);
  });

  test("two in the headings are asked", () => {
    const text = "Compression (bar),,,\nMachine,Date,Cyl 1 psi,Cyl 2 psi\npump,2026-05-03,150,151\n";
    expect(openCodes(guessed(text, { what: "dry" }))).toEqual(["unit"]);
  });

  test("in the cells alone it counts too, and the digits stay", () => {
    const text = "Machine,Date,Cyl 1,Cyl 2\npump,2026-05-03,150 psi,151psi?\n";
    expect(imported(text, guessed(text, { what: "dry" }).map).tests.map(inShort)).toEqual([
      "pump 2026-05-03: dry 1 psi 150,151?",
    ]);
  });

  test("percent alone is asked: lost or held", () => {
    const text = "Machine,Date,Cyl 1 %,Cyl 2 %\nboat,2026-05-03,92,90\n";
    expect(openCodes(guessed(text))).toEqual(["percent"]);
    const { map } = guessed(text, { unit: "% held" });
    expect(imported(text, map).tests.map(inShort)).toEqual(["boat 2026-05-03: leak-down 1 % 8,10"]);
  });
});

test("a cell that is not taken, pegged or doubtful is as in tests.csv", () => {
  const text = "Machine,Date,Cyl 1,Cyl 2,Cyl 3,Cyl 4,Cyl 5,Cyl 6\npump,2026-05-03,> 300,131 ?,n.a.,-,N/A,\n";
  const { map } = guessed(text, settled);
  expect(
    imported(text, {
      ...map,
      engines: [{ sheet: "pump", engine: "pump", cylinders: ["1", "2", "3", "4", "5", "6"] }],
    }).tests.map(inShort),
  ).toEqual(["pump 2026-05-03: dry 1 psi >300,131?,x,x,x,x"]);
});

test("two columns that could be repeats or machines are both told", () => {
  const text = "Date;Cyl;1;2;3\n2026-05-03;1;118;119;118\n2026-05-03;2;121;120;122\n";
  const [question] = guessed(text, settled).open;
  expect(question?.code).toBe("layout");
  expect(question?.readings.map(({ entry }) => entry)).toEqual([
    '"take": { "headerRow": 1 }',
    '"engine": { "headerRow": 1 }',
  ]);
  const told = guessed(text, { ...settled, engine: "pump" });
  expect(openCodes(told)).toEqual([]);
  expect(imported(text, told.map).tests.map(inShort)).toEqual([
    "pump 2026-05-03: dry 1 psi 118,121 / dry 2 psi 119,120 / dry 3 psi 118,122",
  ]);
});

test("an engine of the logbook is known by its id or its name; one that is near is asked", () => {
  const known = [{ id: "pump", name: "Irrigation pump", cylinders: ["1", "2"] }];
  const sheet = (name: string): string => `Machine,Date,Cyl 1,Cyl 2\n${name},2026-05-03,118,119\n`;
  expect(guessed(sheet("irrigation PUMP"), { ...settled, known }).map.engines).toEqual([
    { sheet: "irrigation PUMP", engine: "pump", cylinders: ["1", "2"] },
  ]);
  expect(openCodes(guessed(sheet("Pumps"), { ...settled, known }))).toEqual(["engine-name"]);
});

test("meters, persons, units that disagree on one day make tests of their own", () => {
  const text =
    "Machine,Date,Hours,By,Cyl 1,Cyl 2\npump,2026-05-03,100,me,118,119\npump,2026-05-03,,,117,118\npump,2026-05-03,108,me,116,117\n";
  const { tests } = imported(text, guessed(text, settled).map);
  expect(tests.map(inShort)).toEqual([
    "pump 2026-05-03: dry 1 psi 118,119 / dry 2 psi 117,118",
    "pump 2026-05-03: dry 1 psi 116,117",
  ]);
  expect(tests.map(({ meter, by }) => [meter, by])).toEqual([
    ["100", "me"],
    ["108", "me"],
  ]);
});

test("with sameDay tests every repeat is a test of its own", () => {
  const text = "Machine,Date,Cyl 1,Cyl 2\npump,2026-05-03,118,119\npump,2026-05-03,117,118\n";
  const { map } = guessed(text, settled);
  expect(imported(text, { ...map, sameDay: "tests" }).tests.map(inShort)).toEqual([
    "pump 2026-05-03: dry 1 psi 118,119",
    "pump 2026-05-03: dry 1 psi 117,118",
  ]);
});

test("a meter that cannot be read and a note that is a formula are left; their readings come in", () => {
  const text = "Machine;Date;Hours;Cyl 1;Cyl 2;Note\npump;2026-05-03;1.234;118,5;119,0;=A1\n";
  const result = imported(text, guessed(text, settled).map);
  expect(result.tests.map(inShort)).toEqual(["pump 2026-05-03: dry 1 psi 118.5,119.0"]);
  expect(result.tests[0]?.meter).toBeUndefined();
  expect(leftInShort(result)).toEqual(["fault C2 import-decimal 0", "fault F2 text-formula 0"]);
});
