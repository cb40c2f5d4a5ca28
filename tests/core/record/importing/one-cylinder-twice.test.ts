// A cylinder under two headings, a kind beside none, a supply beside readings: told apart, or asked. All sheets are invented.

import type { ImportHints } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { guessed, imported, inShort, openCodes } from "./imported-sheet.ts";

const dry: ImportHints = { engine: "twin", unit: "psi", what: "dry" };
const shorts = (text: string, hints: ImportHints): readonly string[] =>
  imported(text, guessed(text, hints).map).tests.map(inShort);

describe("a side with a number is a cylinder of that bank", () => {
  test.each([
    ["Left 1,Left 2,Right 1,Right 2", ["L1", "L2", "R1", "R2"]],
    ["Left 1,Left 2,Right 3,Right 4", ["L1", "L2", "R3", "R4"]],
    ["Links 1,Links 2,Rechts 1,Rechts 2", ["L1", "L2", "R1", "R2"]],
    ["Left cyl 1,Left cyl 2,Right cyl 1,Right cyl 2", ["L1", "L2", "R1", "R2"]],
  ])("%s", (heads, labels) => {
    const text = `Date,${heads}\n2018-05-05,150,149,152,151\n`;
    expect(guessed(text, dry).map.engines[0]?.cylinders).toEqual(labels);
    expect(shorts(text, dry)).toEqual(["twin 2018-05-05: dry 1 psi 150,149,152,151"]);
  });

  test("the side alone still is one; a side with other words is asked", () => {
    expect(shorts("Date,Left,Right\n2018-05-05,150,149\n", dry)).toEqual([
      "twin 2018-05-05: dry 1 psi 150,149",
    ]);
    const text = "Date,Left front,Left rear\n2018-05-05,150,149\n";
    expect(openCodes(guessed(text, dry))).toEqual(["cylinder"]);
  });
});

describe("one cylinder under two headings is no repeat", () => {
  const text = "Date,Cyl 1,No 1,Cyl 2\n2018-05-05,150,149,152\n";

  test("it is asked, and the map is laid down without the entry", () => {
    const guess = guessed(text, dry);
    expect(openCodes(guess)).toEqual(["cylinder"]);
    expect(guess.map.cylinder).toBeUndefined();
  });

  test("a map that says so is refused; the same heading twice is a repeat", () => {
    const { map } = guessed(text, dry);
    expect(() => imported(text, { ...map, cylinder: { headerRow: 1 } })).toThrow();
    expect(shorts(text.replace("No 1", "Cyl 1"), dry)).toEqual([
      "twin 2018-05-05: dry 1 psi 150,152 / dry 2 psi 149,x",
    ]);
  });

  test("two columns of readings beside a column of cylinders are asked, numbered ones are repeats", () => {
    const two = "Date,Cyl,Cold psi,Hot psi\n2018-05-05,1,150,149\n2018-05-05,2,151,152\n";
    expect(openCodes(guessed(two, dry))).toEqual(["cylinder"]);
    const numbered = two.replace("Cold", "First").replace("Hot", "Second");
    expect(shorts(numbered, dry)).toEqual(["twin 2018-05-05: dry 1 psi 150,151 / dry 2 psi 149,152"]);
  });
});

test.each([
  "Date,Bank,1,2\n2020-05-01,L,150,149\n2020-05-01,R,151,152\n",
  "Date,Side,Cyl,psi\n2020-05-01,L,1,150\n2020-05-01,R,1,151\n",
])("a column of banks is asked, not read over: %j", (text) => {
  expect(openCodes(guessed(text, dry))).toEqual(["cylinder"]);
});

describe("a kind beside none", () => {
  test.each([undefined, "dry", "wet"])("is asked, with --what %s too", (what) => {
    const text = "Date,Cyl 1,Cyl 1 wet,Cyl 2,Cyl 2 wet\n2021-05-01,150,158,110,140\n";
    const { open, map } = guessed(text, {
      engine: "twin",
      unit: "psi",
      ...(what === undefined ? {} : { what }),
    });
    expect(open.map(({ code, readings }) => [code, readings[0]?.entry])).toEqual([
      ["what", 'write dry in each of them: "Cyl 1 dry"'],
    ]);
    expect(map.what).toBeUndefined();
  });

  test("mended as told, each comes in as its kind", () => {
    const text = "Date,Cyl 1 dry,Cyl 1 wet,Cyl 2 dry,Cyl 2 wet\n2021-05-01,150,158,110,140\n";
    expect(shorts(text, { engine: "twin", unit: "psi" })).toEqual([
      "twin 2021-05-01: dry 1 psi 150,110 / wet 1 psi 158,140",
    ]);
  });

  test("in the labels of rows: read where each has one, asked where some have none, refused against --what", () => {
    const text =
      "Cylinder,2018-05-04,2020-06-05\n1 dry,150,148\n2 dry,150,149\n1 wet,160,158\n2 wet,162,160\n";
    const hints = { engine: "twin", unit: "psi" };
    expect(shorts(text, hints)).toEqual([
      "twin 2018-05-04: dry 1 psi 150,150 / wet 1 psi 160,162",
      "twin 2020-06-05: dry 1 psi 148,149 / wet 1 psi 158,160",
    ]);
    expect(openCodes(guessed(text, { ...hints, what: "dry" }))).toEqual(["what"]);
    expect(openCodes(guessed(text.replaceAll(" dry", ""), { ...hints, what: "dry" }))).toEqual(["what"]);
  });
});

describe("a supply is no reading of a cylinder", () => {
  const hints: ImportHints = { engine: "mixer", what: "leak-down" };

  test.each(["Supply psi", "Supply (psi)", "Regulated psi", "Reg (psi)", "Input psi"])("%s", (head) => {
    const text = `Date,Cylinder,${head},Held psi\n2022-06-01,1,80,76\n2022-06-01,2,80,75\n`;
    const { map } = guessed(text, hints);
    expect(map.conditions).toEqual({ regulated_psi: { column: "C" } });
    expect(shorts(text, hints)).toEqual(["mixer 2022-06-01: leak-down 1 psi 76,75"]);
  });

  test("one without a unit is left alone, and so are readings that then have no supply", () => {
    const text = "Date,Cyl,Input,Output\n2022-06-01,1,80,76\n2022-06-01,2,80,75\n";
    expect(guessed(text, { ...hints, unit: "psi" }).map.readings.columns).toEqual(["D"]);
  });
});

test("kgf/cm2 in a cell is the unit of that cell", () => {
  const text = "Machine,Date,Cyl 1,Cyl 2\ndigger,2023-03-11,26.5 bar,22.1 kgf/cm2\n";
  expect(shorts(text, { what: "dry" })).toEqual([
    "digger 2023-03-11: dry 1 bar 26.5,x / dry 2 kgf/cm2 x,22.1",
  ]);
});
