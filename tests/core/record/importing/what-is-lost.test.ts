// What of a sheet does not come in is named: columns that the map does not read, remarks without a reading. Figures invented.

import { parseSheet, unreadColumns } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { guessed, imported } from "./imported-sheet.ts";

const text = [
  "Workshop book,,,,,,",
  "Date,Machine,Dry psi 1,Dry psi 2,Tyres,Average,Notes,",
  "2026-05-03,pump,120,121,good,120.5,,?",
  "2026-05-04,pump,x,x,,,head off,",
  "2026-05-05,pump,119,abc,worn,119,belt new,",
  "2026-05-06,pump,,,,,gone to the shop,",
  "",
].join("\n");

test("columns that the map does not read are named with their headings; averages are none", () => {
  const { map } = guessed(text);
  expect(unreadColumns(parseSheet(text, "old.csv").sheet, map)).toEqual([
    { column: "E", heading: "Tyres", cells: 2 },
    { column: "H", heading: "", cells: 1 },
  ]);
});

test("a remark beside which nothing was taken is told, one beside a reading is kept", () => {
  const { remarks, tests } = imported(text, guessed(text).map);
  expect(remarks).toEqual([
    { row: 4, text: "head off" },
    { row: 6, text: "gone to the shop" },
  ]);
  expect(tests.flatMap(({ rows }) => rows.flatMap(({ note = [] }) => note))).toEqual(["belt new"]);
});
