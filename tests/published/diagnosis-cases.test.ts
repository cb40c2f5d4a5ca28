// Published readings with their source's own verdict (data/reference/diagnosis-cases.csv, the key of each source in its row;
// excerpts seen, not the whole works) against what a rule or a diagnosis says of them, and whether that agrees.

import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { verdicts } from "./diagnosis-cases.ts";
import { referenceRows } from "./reference-rows.ts";

const rows = referenceRows("diagnosis-cases");
const ours = verdicts();
const keyOf = (row: (typeof rows)[number]): string => `${row.case ?? ""} ${row.by ?? ""}`;

test("every published case is judged, and every verdict stands in the table", () => {
  expect(rows.map(keyOf).toSorted()).toEqual(Object.keys(ours).toSorted());
  expect(new Set(rows.map((row) => row.case)).size).toBe(12);
});

test.each(rows.map((row) => [keyOf(row), row] as const))(
  "case %s: the table tells what we say and whether it agrees with the source",
  (key, row) => {
    expect(ours[key]).toEqual({ says: row.we_say, agrees: row.agrees });
  },
);

test("every source stands in data/sources.csv", () => {
  const sources = readFileSync(new URL("../../data/sources.csv", import.meta.url), "utf8");
  const keys = new Set(sources.split("\n").map((line) => line.split(",")[0]));
  expect(rows.filter(({ source = "" }) => !keys.has(source))).toEqual([]);
});

test("where we differ from a source the table says why", () => {
  expect(rows.filter(({ why = "" }) => why === "")).toEqual([]);
});

test("the page for readers says the same as the table", () => {
  const page = readFileSync(new URL("diagnosis-cases.md", import.meta.url), "utf8");
  const cells = page
    .split("\n")
    .filter((line) => line.startsWith("| ") && !line.startsWith("| case"))
    .map((line) => line.slice(2, -2).split(" | "));
  expect(cells).toEqual(rows.map((row) => Object.values(row)));
});
