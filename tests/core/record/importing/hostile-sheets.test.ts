// Sheets that are too large, cut, or named after what JavaScript objects inherit.

import { guessImportMap, importReadings, parseSheet } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { guessed, imported, inShort } from "./imported-sheet.ts";

const settled = { unit: "psi", what: "dry" } as const;

describe("a sheet that holds nothing to read", () => {
  test.each([
    ["", "import-sheet-empty"],
    [";;;\n;;;\n", "import-sheet-empty"],
    ["\u0000\u0000", undefined],
  ])("%j", (text, code) => {
    const { sheet, problems } = parseSheet(text, "sheet.csv");
    expect(problems[0]?.code).toBe(code);
    expect(importReadings(sheet, guessImportMap(sheet).map).ok).toBe(false);
  });
});

test("a million columns are refused", () => {
  const { sheet, problems } = parseSheet(",".repeat(1_000_000), "sheet.csv");
  expect(problems.map(({ code }) => code)).toEqual(["file-huge"]);
  expect(sheet.rows).toEqual([]);
});

test("more than 4,096 columns are refused, 4,096 are read", () => {
  const row = (count: number): string => Array.from({ length: count }, () => "1").join(",");
  expect(parseSheet(row(4_097), "sheet.csv").problems.map(({ code }) => code)).toEqual(["file-huge"]);
  expect(parseSheet(row(4_096), "sheet.csv").sheet.columns).toBe(4_096);
});

test("a cell of 60 kB costs its own row only, and is told", () => {
  const text = `Machine,Date,Cyl 1,Cyl 2\npump,2026-05-03,118,${"9".repeat(60_000)}\npump,2026-05-04,118,119\n`;
  const { problems } = parseSheet(text, "sheet.csv");
  expect(problems.map(({ code, line }) => `${code} ${String(line)}`)).toEqual(["cell-huge 2"]);
  expect(imported(text, guessed(text, settled).map).tests.map(inShort)).toEqual([
    "pump 2026-05-04: dry 1 psi 118,119",
  ]);
});

test("engines, units and columns named after what objects inherit are names like others", () => {
  const text =
    "Machine,Date,Cyl 1,Cyl 2,__proto__,constructor\n__proto__,2026-05-03,118,119,1,2\nconstructor,2026-05-03,117,118,1,2\ntoString,2026-05-03,116,117,1,2\n";
  const result = imported(text, guessed(text, settled).map);
  expect(result.tests.map(({ engine }) => engine)).toEqual(["constructor", "proto", "tostring"]);
  expect(Object.keys(Object.prototype)).toEqual([]);
});

test("a quote mark that never closes costs its own line only", () => {
  const text =
    'Machine,Date,Cyl 1,Cyl 2\npump,2026-05-03,118,119\npump,2026-05-04,"117,118\npump,2026-05-05,116,117\n';
  const { sheet, problems } = parseSheet(text, "sheet.csv");
  expect(problems.map(({ code, line }) => `${code} ${String(line)}`)).toEqual(["quote-open 3"]);
  expect(imported(text, guessed(text, settled).map).tests.map(inShort)).toEqual([
    "pump 2026-05-03: dry 1 psi 118,119",
    "pump 2026-05-05: dry 1 psi 116,117",
  ]);
  expect(sheet.rows.map(({ row, line }) => [row, line])).toEqual([
    [1, 1],
    [2, 2],
    [4, 4],
  ]);
});

test("rows are counted as a spreadsheet counts them: breaks in cells, blank rows, a sep line", () => {
  const text = 'sep=;\r\nMachine;Date;"Cyl\r\n1";Cyl 2\r\n\r\npump;2026-05-03;118;x1\r\n';
  const { sheet } = parseSheet(text, "sheet.csv");
  expect(sheet.rows.map(({ row, line }) => [row, line])).toEqual([
    [1, 2],
    [3, 5],
  ]);
  const [left] = imported(text, guessed(text, settled).map).left;
  expect(left?.problem).toMatchObject({ line: 5, column: 21 });
});

test("200,000 rows of 4 readings go through in linear time", () => {
  const row = (i: number): string =>
    `m${String(i % 50)},20${String(10 + (i % 16))}-05-${String(1 + (i % 28)).padStart(2, "0")},${String(i)},118,119,117,116`;
  const lines = (count: number): string =>
    `Machine,Date,Hours,Cyl 1,Cyl 2,Cyl 3,Cyl 4\n${Array.from({ length: count }, (_, i) => row(i)).join("\n")}\n`;
  const cost = (count: number): number => {
    const text = lines(count);
    const start = performance.now();
    expect(imported(text, guessed(text, settled).map).counts.readings).toBe(count * 4);
    return performance.now() - start;
  };
  cost(500);
  const small = cost(2_000);
  expect(cost(20_000)).toBeLessThan(small * 40);
}, 60_000);
