// Whatever stands in a sheet, it is read without a crash and nothing is lost in silence.

import {
  type ImportMap,
  guessImportMap,
  importReadings,
  parseSheet,
  readImportMap,
  writeImportMap,
} from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";

const cell = fc.oneof(
  fc.constantFrom(
    "",
    "x",
    "118",
    "12,5",
    "12.5",
    "=1+2",
    "#REF!",
    "n.a.",
    "Average",
    "2026-05-03",
    "11/12/2026",
    "Cyl 2",
    "3",
    "%",
    "psi",
    "__proto__",
    "constructor",
    "１２",
    "131 bar",
    ">300?",
    "\u202E",
  ),
  fc.string({ unit: "binary", maxLength: 8 }),
);

const plainMap: ImportMap = {
  schema: "sealtrend/import-map@1",
  firstRow: 2,
  readings: { columns: ["C-D"] },
  engine: { column: "A" },
  date: { column: "B", fill: true },
  cylinder: { headerRow: 1 },
  what: { fixed: "dry" },
  unit: { fixed: "psi" },
  decimal: ".",
  notTaken: ["n.a."],
  sameDay: "takes",
  engines: [
    { sheet: "118", engine: "pump", cylinders: ["1", "2"] },
    { sheet: "__proto__", engine: "saw", cylinders: ["1"] },
    { sheet: "constructor", engine: "", cylinders: [] },
  ],
};

const anySheet = fc
  .tuple(fc.array(fc.array(cell, { maxLength: 7 }), { maxLength: 9 }), fc.constantFrom(",", ";", "\t"))
  .map(([rows, delimiter]) => {
    const all = [["Machine", "Date", "Cyl 1", "Cyl 2"], ...rows];
    const text = all
      .map((row) => row.map((one) => `"${one.replaceAll('"', '""')}"`).join(delimiter))
      .join("\n");
    return parseSheet(text, "sheet.csv").sheet;
  });

test("any sheet is guessed without a crash, and the map can be written and read", () => {
  fc.assert(
    fc.property(anySheet, (sheet) => {
      const { map } = guessImportMap(sheet, { unit: "psi", what: "dry" });
      const read = readImportMap(writeImportMap(map), "map.json");
      expect(read.ok ? read.value.map : map.readings.columns).toEqual(read.ok ? map : []);
      importReadings(sheet, map);
    }),
    { numRuns: 500 },
  );
});

test("every cell of any sheet is a reading, not taken, or on the list", () => {
  fc.assert(
    fc.property(anySheet, (sheet) => {
      const outcome = importReadings(sheet, plainMap);
      if (!outcome.ok) throw new TypeError("the map goes with every sheet that has its columns");
      const { tests, left, counts } = outcome.value;
      const headings = new Set(left.flatMap(({ why, row }) => (why === "header" ? [row] : [])));
      const written = sheet.rows
        .filter(({ row }) => row >= 2 && !headings.has(row))
        .flatMap(({ cells }) => [cells[2], cells[3]])
        .filter((one) => one !== undefined && !isBlank(one.text));
      expect(left.reduce((sum, one) => sum + one.readings, counts.readings)).toBe(written.length);
      const held = tests
        .flatMap(({ rows }) => rows.flatMap(({ cells }) => cells))
        .filter((text) => text !== "x");
      expect(held).toHaveLength(counts.readings);
    }),
    { numRuns: 500 },
  );
});

const isBlank = (text: string): boolean =>
  ["", "x", "-", "?", "n.a"].includes(text.toLowerCase().replace(/[\s.:]+$/, ""));
