// Sheets as people keep them (all invented): what the guess makes of each, what is asked, what comes in and what is left.

import type { ImportHints, ImportMap } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { guessed, imported, inShort, leftInShort, openCodes, sampleText } from "./imported-sheet.ts";

interface Sample {
  readonly name: string;
  readonly says: string;
  /** Asked of the bare sheet. */
  readonly open?: readonly string[];
  /** The answers. */
  readonly hints?: ImportHints;
  /** What is written into the map by hand. */
  readonly more?: Partial<ImportMap>;
  readonly tests: readonly string[];
  readonly left?: readonly string[];
  readonly counts: readonly [number, number];
}

const samples: readonly Sample[] = [
  {
    name: "row-a-test",
    says: "a row a test: repeats become takes, an average row and column stay out",
    tests: [
      "hay-baler 2024-05-02: dry 1 psi 152,150,149,131 / dry 2 psi 153,150,148,133",
      "hay-baler 2025-04-19: dry 1 psi 151,149,148,127",
      "irrigation-pump 2024-06-11: dry 1 psi 118,>120,x,117?",
      "saw 2025-04-20: dry 1 psi x,96",
    ],
    left: ["summary 9 import-summary 1"],
    counts: [16, 2],
  },
  {
    name: "merged-dates",
    says: "merged dates over cylinder numbers, engines down, decimal commas, a sum at the bottom",
    tests: [
      "hay-baler 2024-05-02: dry 1 bar 10.5,10.4,10.3,9.1",
      "hay-baler 2025-04-19: dry 1 bar 10.4,10.3,10.2,8.8",
      "irrigation-pump 2024-05-02: dry 1 bar 27.5,27,26.5,x",
      "irrigation-pump 2025-04-19: dry 1 bar 27.0,26.8,26,x",
    ],
    left: ["summary 7 import-summary 2"],
    counts: [14, 2],
  },
  {
    name: "row-a-reading",
    says: "a row a reading, engine and date written once for several rows",
    tests: [
      "mahdrescher 2024-11-25: dry 1 bar 24.5,24.0,23.8 / wet 1 bar x,x,25.1",
      "pumpe-sud 2024-11-26: dry 1 bar 11.0,10.8?",
    ],
    counts: [6, 0],
  },
  {
    name: "takes",
    says: "takes that are numbered; a third part above 12 settles the dates; two of one number are told apart by nobody",
    open: ["what"],
    hints: { what: "dry" },
    tests: ["saw 2024-05-03: dry 1 psi 118,121 / dry 2 psi 119,120", "saw 2024-05-13: dry 1 psi 117,121"],
    left: ["fault D5 import-twice 1"],
    counts: [6, 1],
  },
  {
    name: "leak-percent",
    says: "leak-down in percent with faulty cells: their neighbours come in",
    tests: [
      "boat 2026-03-01: leak-down 1 % 8,9,22,7 / leak-down 2 % 8,x,x,x",
      "boat 2026-03-02: leak-down 1 % 8,x,x,9",
    ],
    left: [
      "fault D4 number-bad 1",
      "fault E4 import-formula 1",
      "fault F4 supply-missing 1",
      "fault D5 number-range 1",
      "fault E5 number-bad 1",
    ],
    counts: [7, 0],
  },
  {
    name: "pages",
    says: "the heading again on the second page; engines with one cylinder",
    open: ["cylinder", "unit", "what"],
    hints: { unit: "psi", what: "dry" },
    more: { cylinder: { fixed: "1" } },
    tests: [
      "mower 2024-03-01: dry 1 psi 98",
      "mower 2024-04-01: dry 1 psi 97",
      "mower 2024-05-01: dry 1 psi 96",
      "tiller 2024-03-01: dry 1 psi 88",
      "tiller 2024-04-01: dry 1 psi 87",
      "tiller 2024-05-01: dry 1 psi 86",
    ],
    left: ["header 5 import-header-again 0"],
    counts: [6, 0],
  },
  {
    name: "cylinders-down",
    says: "engines across, cylinders down, the day in the title, an average column",
    tests: [
      "hay-baler 2026-05-03: dry 1 psi 152,150,149,131",
      "loader 2026-05-03: dry 1 psi 350,355,349",
      "skid-steer 2026-05-03: dry 1 psi 410,405,400",
    ],
    counts: [10, 0],
  },
  {
    name: "us-dates",
    says: "dates that can be read two ways are asked; dry and wet by a column",
    open: ["unit", "dates"],
    hints: { unit: "psi", dates: "mdy" },
    tests: ["engine-a-7 2026-11-12: dry 1 psi 150,148", "engine-a-7 2026-12-11: wet 1 psi 160,158"],
    counts: [4, 0],
  },
  {
    name: "trailing",
    says: "separators behind the end, a spreadsheet's day number, a day that does not exist, a point among commas",
    open: ["decimal", "unit", "what"],
    hints: { decimal: ",", unit: "bar", what: "dry" },
    tests: ["bomba 2026-02-03: dry 1 bar 12.5,x"],
    left: ["fault A2 import-serial 2", "fault D3 import-decimal 1", "fault A4 import-date 2"],
    counts: [1, 0],
  },
  {
    name: "pairs",
    says: "leak-down with its supply behind a stroke; without it a pressure says nothing",
    tests: ["boat 2026-03-01: leak-down 1 psi 74,72", "boat 2026-05-01: leak-down 1 psi 74,x"],
    left: ["fault C3 supply-missing 2", "fault D4 number-bad 1"],
    counts: [3, 0],
  },
  {
    name: "forty-across",
    says: "forty machines across, date and cylinder down",
    tests: [],
    counts: [432, 0],
  },
];

describe.each(samples)(
  "$name: $says",
  ({ name, open = [], hints = {}, more = {}, tests, left = [], counts }) => {
    const text = sampleText(name);

    test("only what the sheet does not say is asked", () => {
      expect(openCodes(guessed(text))).toEqual(open);
      expect(openCodes(guessed(text, hints))).toEqual(Object.keys(more));
    });

    test("the readings come in, and what does not is told with its place", () => {
      const result = imported(text, { ...guessed(text, hints).map, ...more });
      if (tests.length > 0) expect(result.tests.map(inShort)).toEqual(tests);
      expect(leftInShort(result)).toEqual(left);
      expect([result.counts.readings, result.counts.notTaken]).toEqual(counts);
    });
  },
);

test("forty machines over three years are 120 tests", () => {
  const text = sampleText("forty-across");
  const { tests } = imported(text, guessed(text).map);
  expect(tests).toHaveLength(120);
  expect(tests.filter(({ engine }) => engine === "machine-06").map(inShort)).toEqual([
    "machine-06 2023-10-14: dry 1 psi 154,131",
    "machine-06 2024-10-12: dry 1 psi 157,154",
    "machine-06 2025-10-11: dry 1 psi 121,128",
  ]);
});

test("meter, supply and notes go with their tests; a note beside one reading names its cylinder", () => {
  const rowAReading = sampleText("row-a-reading");
  const [first] = imported(rowAReading, guessed(rowAReading).map).tests;
  expect(first?.rows[0]?.note).toBe("cylinder 2: Schlauch undicht");
  const rowATest = sampleText("row-a-test");
  const [baler] = imported(rowATest, guessed(rowATest).map).tests;
  expect(baler?.meter).toBe("1412");
  expect(baler?.rows[0]?.note).toBe("cold morning, 4 low again");
  const pairs = sampleText("pairs");
  expect(imported(pairs, guessed(pairs).map).tests[0]?.conditions).toEqual({ regulated_psi: "80" });
});
