// Dates and decimal marks of strange sheets: read where they have one meaning, asked where they have two.

import type { ImportHints } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { guessed, imported, openCodes } from "./imported-sheet.ts";

const settled: ImportHints = { unit: "psi", what: "dry" };

describe("a date", () => {
  const days = (cells: readonly string[], hints: ImportHints = {}) => {
    const text = `Machine;Date;Cyl 1;Cyl 2\n${cells.map((cell) => `pump;${cell};118;119`).join("\n")}\n`;
    const { map, open } = guessed(text, { ...settled, ...hints });
    const { tests, left } = imported(text, map);
    return {
      open: open.map(({ code }) => code),
      days: tests.map(({ date }) => date),
      left: left.map((one) => one.problem.code),
    };
  };
  test.each([
    ["2026-05-03", "2026-05-03"],
    ["2026-05-03 14:30", "2026-05-03"],
    ["2026-05-03T14:30:00", "2026-05-03"],
    ["2026/5/3", "2026-05-03"],
    ["3.5.2026", "2026-05-03"],
    ["25/11/2026", "2026-11-25"],
    ["11/25/26", "2026-11-25"],
    ["24-11-98", "1998-11-24"],
    ["3 May 2026", "2026-05-03"],
    ["3. Mai 2026", "2026-05-03"],
    ["3 août 2026", "2026-08-03"],
    ["3 de mayo de 2026", "2026-05-03"],
    ["03-May-26", "2026-05-03"],
    ["May 3, 2026", "2026-05-03"],
    ["Sunday 3 May 2026", "2026-05-03"],
    ["3 października 2026", "2026-10-03"],
  ])("%s is %s", (cell, day) => {
    expect(days([cell])).toEqual({ open: [], days: [day], left: [] });
  });

  test.each([["11/12/2026"], ["3-5-2026"], ["05/06/07"]])("%s can be read two ways, and is asked", (cell) => {
    expect(days([cell])).toEqual({ open: ["dates"], days: [], left: ["import-date"] });
    expect(days([cell], { dates: "mdy" }).open).toEqual([]);
  });

  test("one date with a first part above 12 settles the others", () => {
    expect(days(["11/12/2026", "13/12/2026"])).toEqual({
      open: [],
      days: ["2026-12-11", "2026-12-13"],
      left: [],
    });
    expect(days(["11/12/2026", "11/13/2026"]).days).toEqual(["2026-11-12", "2026-11-13"]);
  });

  test("a column that contradicts itself is asked, not decided by the majority", () => {
    expect(days(["13/12/2026", "14/12/2026", "12/13/2026"]).open).toEqual(["dates"]);
  });

  // 1900 system: serial 45231 is 2023-11-01; 1904 system: four years and a day later. From memory, spreadsheets' own help.
  test("a spreadsheet's day number is refused with both days", () => {
    const text = "Machine,Date,Cyl 1,Cyl 2\npump,45231,118,119\npump,2026-05-03,118,119\n";
    const [left] = imported(text, guessed(text, settled).map).left;
    expect(left?.problem.expected).toBe("a day; counted from 1900 it is 2023-11-01, from 1904 2027-11-02");
  });

  test.each([
    "2026-02-30",
    "31/11/2026",
    "2026",
    "May 2026",
    "today",
    "00/00/2026",
    "2026-05",
    "１２/05/2026",
  ])("%s is no day", (cell) => {
    expect(days(["2026-05-03", cell])).toMatchObject({ days: ["2026-05-03"], left: ["import-date"] });
  });
});

describe("a decimal mark", () => {
  const marks = (cells: readonly string[], hints: ImportHints = {}) => {
    const text = `Machine;Date;Cyl 1;Cyl 2\n${cells.map((cell) => `pump;2026-05-03;${cell};10`).join("\n")}\n`;
    const { map, open } = guessed(text, { unit: "bar", what: "dry", ...hints });
    return {
      open: open.map(({ code }) => code),
      cells: imported(text, map).tests.flatMap(({ rows }) => rows.map((row) => row.cells[0])),
    };
  };
  test.each([
    [
      ["10,5", "9"],
      ["10.5", "9"],
    ],
    [
      ["10.5", "9"],
      ["10.5", "9"],
    ],
    [
      ["1,250", "10,5"],
      ["1.250", "10.5"],
    ],
    [["0,850"], ["0.850"]],
  ])("%j is %j", (typed, read) => {
    expect(marks(typed)).toEqual({ open: [], cells: read });
  });

  test("1,250 alone is 1.25 or 1250, and is asked", () => {
    expect(marks(["1,250"]).open).toEqual(["decimal"]);
    expect(marks(["1,250"], { decimal: "," }).cells).toEqual(["1.250"]);
  });

  test("two marks in one sheet are asked, and the odd one is left", () => {
    expect(marks(["10,5", "10.6"]).open).toEqual(["decimal"]);
    expect(marks(["10,5", "10.6"], { decimal: "," }).cells).toEqual(["10.5", "x"]);
  });

  test("commas that part cells and decimals alike are asked", () => {
    const text = "Machine,Date,Cyl 1,Cyl 2\npump,2026-05-03,10,5,10,4\npump,2026-05-04,10,3,10,2\n";
    expect(openCodes(guessed(text, settled))).toContain("delimiter");
  });
});
