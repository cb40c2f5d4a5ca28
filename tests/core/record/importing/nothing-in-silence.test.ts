// What a sheet does not say plainly is asked, or left out and said: blocks, footers, options against the sheet, slips of marks.
// All sheets are invented.

import { importReadings, parseSheet, type ImportHints } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { guessed, imported, inShort, leftInShort, openCodes } from "./imported-sheet.ts";

const settled: ImportHints = { unit: "psi", what: "dry", engine: "pump" };

const readBy = (text: string, hints: ImportHints = settled) => {
  const { map, open } = guessed(text, hints);
  const result = open.length > 0 ? undefined : imported(text, map);
  return {
    open: open.map(({ code }) => code),
    tests: result?.tests.map(inShort) ?? [],
    left: result === undefined ? [] : leftInShort(result).filter((one) => one.startsWith("fault")),
  };
};

describe("days in rows of their own", () => {
  const blocks = (first: string, second: string): string =>
    `Shed book,,\n${first}\nCyl,PSI,Remark\n1,118,\n2,121,\n\n${second}\nCyl,PSI,Remark\n1,117,\n2,119,worn\n`;
  test.each([
    ["Date: 12 June 2009,,", "Date: 3 July 2011,,"],
    ["Date,12 June 2009,", "Date,3 July 2011,"],
    ["12.6.2009,,", "3.7.2011,,"],
  ])("%s … %s: each block has its own", (first, second) => {
    expect(readBy(blocks(first, second))).toEqual({
      open: [],
      tests: ["pump 2009-06-12: dry 1 psi 118,121", "pump 2011-07-03: dry 1 psi 117,119"],
      left: [],
    });
  });

  test("a map with one day for all does not carry it past another day", () => {
    const text = blocks("Date: 12 June 2009,,", "Date: 3 July 2011,,");
    const { map } = guessed(text, settled);
    const result = imported(text, { ...map, date: { fixed: "2009-06-12" } });
    expect(result.tests.map(inShort)).toEqual(["pump 2009-06-12: dry 1 psi 118,121"]);
    expect(leftInShort(result)).toContain("fault A7 import-block 2");
  });

  test("a sentence with a day in it, between readings of one day, stops the day there", () => {
    const text = "Test of 3 May 2014,\nCyl,PSI\n1,118\nnew rings on 5 June 2014 here,\n2,121\n";
    expect(readBy(text)).toMatchObject({
      tests: ["pump 2014-05-03: dry 1 psi 118"],
      left: ["fault A4 import-block 1"],
    });
  });
});

test("a table of another engine below, with its name above, is left where one engine was said for all", () => {
  const text = "Red pump,,\nDate,1,2\n2015-05-01,120,121\n\nBlue boat,,\nDate,1,2\n2015-06-01,150,151\n";
  expect(readBy(text)).toMatchObject({
    tests: ["pump 2015-05-01: dry 1 psi 120,121"],
    left: ["fault A5 import-block 2"],
  });
});

describe("a row under the table", () => {
  const rows = "2015-05-01,120,121\n2016-05-01,118,119\n";
  test.each([
    ["without a word, the average", ",119,120", ["fault A4 import-undated 2"]],
    ["without a word, other figures", ",125,131", ["fault A4 import-undated 2"]],
    ["with a word for an average", "Mean value,119,120", []],
    ["with another word for it", "Schnitt,119,120", []],
  ])("%s, is no test", (_how, footer, left) => {
    expect(readBy(`Date,1,2\n${rows}${footer}\n`)).toEqual({
      open: [],
      tests: ["pump 2015-05-01: dry 1 psi 120,121", "pump 2016-05-01: dry 1 psi 118,119"],
      left,
    });
  });

  test.each(["Works figures", "As bought", "All four", "Ave."])(
    "%s in the column of engines is no engine",
    (word) => {
      const text = `Engine,Date,1,2\nPump,2015-05-01,120,121\n,2016-05-01,118,119\n${word},,119,120\n`;
      const { map, open } = guessed(text, { unit: "psi", what: "dry" });
      expect(open).toEqual([]);
      expect(map.engines.map(({ engine }) => engine)).toEqual(["pump"]);
      expect(imported(text, map).counts.readings).toBe(4);
    },
  );

  test("repeats under a day that others follow come in as takes", () => {
    expect(readBy("Date,1,2\n2015-05-01,120,121\n,119,122\n2016-05-01,118,119\n,117,119\n").tests).toEqual([
      "pump 2015-05-01: dry 1 psi 120,121 / dry 2 psi 119,122",
      "pump 2016-05-01: dry 1 psi 118,119 / dry 2 psi 117,119",
    ]);
  });

  test("the same row twice is taken once", () => {
    expect(readBy(`Date,1,2\n${rows}2016-05-01,118,119\n`)).toMatchObject({
      tests: ["pump 2015-05-01: dry 1 psi 120,121", "pump 2016-05-01: dry 1 psi 118,119"],
      left: ["fault A4 import-row-twice 2"],
    });
  });
});

describe("what was typed goes before nothing that the sheet says", () => {
  test.each<[string, string, ImportHints, readonly string[]]>([
    [
      "kinds in the headings",
      "Date,Dry 1,Dry 2,Wet 1,Wet 2\n2015-05-01,120,121,130,131\n",
      { what: "dry" },
      ["what"],
    ],
    [
      "units in the headings",
      "Date,Cyl 1 (psi),Cyl 2 (psi),Cyl 3 (bar)\n2015-05-01,145,150,10.0\n",
      {},
      ["unit"],
    ],
    ["one other unit", "Date,Cyl 1 (bar),Cyl 2 (bar)\n2015-05-01,10.1,10.2\n", {}, ["unit"]],
    [
      "days of its own",
      "Date,1,2\n2015-05-01,120,121\n2016-05-01,118,119\n",
      { date: "2020-01-01" },
      ["date"],
    ],
    [
      "a day in its title",
      "Test of 3 May 2014,,\nCyl,1,2\nCompression,118,121\n",
      { date: "2020-01-01" },
      ["date"],
    ],
  ])("%s", (_what, text, hints, open) => {
    const { open: questions } = guessed(text, { ...settled, ...hints });
    expect(questions.map(({ code }) => code)).toEqual(open);
    expect(questions[0]?.readings[0]?.option).toBeUndefined();
  });

  test.each<[string, string, ImportHints]>([
    ["compression says nothing of oil", "Compression,,\nDate,1,2\n2015-05-01,120,121\n", { what: "wet" }],
    ["the same as the sheet", "Date,Dry 1 (psi),Dry 2 (psi)\n2015-05-01,120,121\n", {}],
    ["a choice of two", "Compression (bar),,\nDate,Cyl 1,Cyl 2 \nlast in psi,,\n2015-05-01,120,121\n", {}],
  ])("it fills a gap: %s", (_what, text, hints) => {
    expect(openCodes(guessed(text, { ...settled, ...hints }))).toEqual([]);
  });
});

describe("a mark between the thousands", () => {
  const kPa: ImportHints = { ...settled, unit: "kPa" };
  test("of all readings is asked, a point like a comma", () => {
    expect(readBy("Datum;Zyl 1;Zyl 2\n13.5.21;1.050;1.012\n14.5.22;1.040;998\n", kPa).open).toEqual([
      "decimal",
    ]);
    expect(readBy('Date,1,2\n2021-05-13,"1,050","1,012"\n', kPa).open).toEqual(["decimal"]);
  });

  test("that the answer took for a decimal mark does not come in beside whole readings", () => {
    expect(readBy("Datum;Zyl 1;Zyl 2\n14.5.22;1.040;998\n", { ...kPa, decimal: "." })).toMatchObject({
      tests: ["pump 2022-05-14: dry 1 kPa x,998"],
      left: ["fault B2 import-mark 1"],
    });
  });

  test("and does not come in alone in its test either", () => {
    const text = "Datum;Maschine;Zyl;kPa\n13.5.21;Pumpe;1;1.050\n13.5.21;Walze;1;1012.5\n";
    expect(readBy(text, { what: "dry" })).toMatchObject({
      tests: ["walze 2021-05-13: dry 1 kPa 1012.5"],
      left: ["fault D2 import-mark 1"],
    });
  });

  test("a dead cylinder of 5.0 among whole numbers comes in", () => {
    expect(readBy("Date,1,2\n2021-05-13,151,5.0\n").tests).toEqual(["pump 2021-05-13: dry 1 psi 151,5.0"]);
  });

  test("and another before the decimals, in any column, says which is which", () => {
    const text = 'Date,Hours,1,2\n2021-04-13,"1,377.5",126,"1,26"\n';
    expect(readBy(text).open).toEqual(["decimal"]);
  });

  test("of a meter: two marks are read, one in front of three digits is left alone", () => {
    const meterOf = (hours: string): readonly [string | undefined, readonly string[]] => {
      const text = `Date;Hours;1;2\n2021-04-13;${hours};126;127\n`;
      const result = imported(text, { ...guessed(text, settled).map, decimal: "." });
      return [result.tests[0]?.meter, leftInShort(result)];
    };
    expect(meterOf("1,377.5")).toEqual(["1377.5", []]);
    expect(meterOf("1.234")).toEqual([undefined, ["fault B2 number-two-ways 0"]]);
    expect(meterOf("1,234")).toEqual([undefined, ["fault B2 import-decimal 0"]]);
  });
});

test("a day that has not come yet is left out", () => {
  const { sheet } = parseSheet("Date,1,2\n2025-05-01,120,121\n2030-06-15,118,119\n", "sheet.csv");
  const { map } = guessed("Date,1,2\n2025-05-01,120,121\n2030-06-15,118,119\n", settled);
  const outcome = importReadings(sheet, map, { today: "2026-05-03" });
  expect(outcome.ok && outcome.value.tests.map(inShort)).toEqual(["pump 2025-05-01: dry 1 psi 120,121"]);
  expect(outcome.ok && leftInShort(outcome.value)).toEqual(["fault A3 import-later 2"]);
});

describe("several readings in one cell", () => {
  test("throughout: nothing else is asked before they are parted", () => {
    expect(openCodes(guessed("Date,Pump\n2015-05-01,120/121/119/122\n2016-05-01,118/120/112/121\n"))).toEqual(
      ["layout"],
    );
  });

  test.each(["120/121/119", "141/138", "120 121 119"])("%s beside others is left", (cell) => {
    expect(
      readBy(`Date,1,2\n2014-05-01,122,121\n2015-05-01,120,121\n2016-05-01,${cell},119\n`),
    ).toMatchObject({
      tests: [
        "pump 2014-05-01: dry 1 psi 122,121",
        "pump 2015-05-01: dry 1 psi 120,121",
        "pump 2016-05-01: dry 1 psi x,119",
      ],
      left: ["fault B4 import-together 1"],
    });
  });
});

test.each([
  ["<150", "150"],
  ["9,8*", "9,8"],
  ["ca. 120", "120"],
  ["9,2 (cold)", "9,2"],
])("%s is to be written with a question mark", (cell, figure) => {
  const text = `Date;1;2\n2015-05-01;${cell};121,5\n`;
  const [left] = imported(text, guessed(text, settled).map).left;
  expect(left?.problem).toMatchObject({
    code: "import-doubtful",
    mend: `write ${figure}? if it was about that; x if none was taken`,
  });
});

describe("engines", () => {
  test("a column of planes names them", () => {
    const text = "Plane\tDate\t1\t2\nYellow bird\t2018-03-02\t71\t72\n";
    expect(guessed(text, { unit: "psi", what: "dry" }).map.engines.map(({ engine }) => engine)).toEqual([
      "yellow-bird",
    ]);
  });

  test("a column that may name them has its engines laid down, so that one entry answers the question", () => {
    const text = "Craft,Date,1,2,3\nYellow bird,2018-03-02,71,72,70\nWhite bird,2018-03-02,75,76,74\n";
    const { map, open } = guessed(text, { unit: "psi", what: "dry" });
    expect(open.map(({ code }) => code)).toEqual(["engine"]);
    expect(imported(text, { ...map, engine: { column: "A" } }).tests.map(inShort)).toEqual([
      "white-bird 2018-03-02: dry 1 psi 75,76,74",
      "yellow-bird 2018-03-02: dry 1 psi 71,72,70",
    ]);
  });

  test("one that the map lacks is one fault, with its own cylinders to paste", () => {
    const text = "Engine,Date,1,2,3,4\nPump,2015-05-01,120,121,122,123\nPump,2016-05-01,118,119,120,121\n";
    const { map } = guessed(text, { unit: "psi", what: "dry" });
    const { left } = imported(text, { ...map, engines: [] });
    expect(left.map(({ readings }) => readings)).toEqual([8]);
    expect(left[0]?.problem.mend).toBe(
      'add { "sheet": "Pump", "engine": "pump", "cylinders": ["1", "2", "3", "4"] } there; "engine": "" leaves it out',
    );
  });

  test("an id that was typed and cannot be one is asked, not changed", () => {
    const [question] = guessed("Date,1,2\n2015-05-01,120,121\n", { ...settled, engine: "t" }).open;
    expect(question?.readings[0]?.option).toBe("--engine engine-t");
  });

  test("warm and cold under Engine are its state, and no engines", () => {
    const text = "Date,Engine,1,2\n2015-05-01,warm,120,121\n2016-05-01,cold,118,119\n";
    const { map } = guessed(text, settled);
    expect(map.engine).toEqual({ fixed: "pump" });
    expect(imported(text, map).tests.map(({ conditions }) => conditions)).toEqual([
      { engine_temp: "warm" },
      { engine_temp: "cold" },
    ]);
  });
});

test("headings of conditions that can mean nothing else are known", () => {
  const text = "Date,Air temp (°C),Altitude (ft),Cranking rpm,RPM,1,2\n2015-05-01,18,1200,210,900,120,121\n";
  expect(guessed(text, settled).map.conditions).toEqual({
    air_temp_C: { column: "B" },
    altitude_ft: { column: "C" },
    crank_rpm: { column: "D" },
  });
});

test("percent in some cells is offered as the unit of all", () => {
  const text = "Date,1,2\n2018-03-02,8%,11%\n2019-03-10,5,6\n";
  const [question] = guessed(text, { engine: "pump", what: "leak-down" }).open;
  expect(question?.code).toBe("unit");
  expect(question?.readings.slice(0, 2).map(({ option }) => option)).toEqual(["--unit %", '--unit "% held"']);
});

describe("cells that look like days and are none", () => {
  test("in a column: it is offered, and the first one named", () => {
    const text = "tried,1,2\nJune 2004,120,121\nabout 2006,118,119\n2007,118,118\n";
    const [question] = guessed(text, settled).open;
    expect(question?.text).toBe('column A looks like days, but "June 2004" in A2 and 2 more is none');
    expect(question?.readings[0]?.entry).toBe('"date": {"column":"A"}');
  });

  test("in merged headings: the row is offered, filled", () => {
    const text =
      "Shed pump;;;;;;\n;12.04.2016;;03.05.2017;;May 2019;\nCyl;dry;wet;dry;wet;dry;wet\n1;98;106;97;105;95;104\n2;101;108;99;106;90;109\n";
    const [question] = guessed(text, { unit: "psi", engine: "pump" }).open;
    expect(question?.text).toBe('row 2 looks like days, but "May 2019" in F2 is none');
    expect(question?.readings[0]?.entry).toBe('"date": {"headerRow":2,"fill":true}');
  });
});
