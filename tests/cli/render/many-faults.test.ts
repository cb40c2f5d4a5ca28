// Of very many faults the first are told and all are counted, on the screen and in a document.

import { expect, test } from "vitest";
import type { Fault } from "../../../packages/cli/src/command.ts";
import { yardDocument } from "../../../packages/cli/src/documents/yard-document.ts";
import { faultDocument, faultText } from "../../../packages/cli/src/render/faults.ts";
import { yardCsvRow } from "../../../packages/cli/src/render/yard/yard-csv.ts";

const words = { severity: "error", found: "is wrong", expected: "what is right", mend: "mend it" } as const;
const code = (i: number) => (i < 900 ? "number-bad" : "date-bad");
/** Each in a file of its own: none is like another. */
const many = Array.from({ length: 1_000 }, (_, i): Fault => {
  return { ...words, code: code(i), file: `file-${String(i).padStart(4, "0")}.csv`, line: 2, column: 1 };
});

test("a screen tells the first few hundred, and of the rest how many of each kind", () => {
  const text = faultText(many, 80);
  expect(text.match(/is wrong/g)).toHaveLength(200);
  expect(text.replace(/\s+/g, " ")).toContain(
    "800 more are not shown here: 700 number-bad, 100 date-bad; mend these first, then run it again",
  );
  expect(faultText(many.slice(0, 200), 80)).not.toContain("more");
  expect(faultText(many, 80, "all").match(/is wrong/g)).toHaveLength(200);
});

test("faults of one column are counted after the first, however many there are", () => {
  const alike = many.map((fault, i): Fault => ({
    ...fault,
    code: "number-bad",
    file: "tests.csv",
    line: i + 2,
  }));
  const text = faultText(alike, 80);
  expect(text.match(/is wrong/g)).toHaveLength(3);
  expect(text).toContain("997 more like it, lines 5 to 1001");
});

test("a document holds the same first ones, and counts the rest", () => {
  expect(faultDocument(many)).toMatchObject({
    problems: { length: 200 },
    more: { count: 800, codes: { "number-bad": 700, "date-bad": 100 } },
  });
  expect(faultDocument(many.slice(0, 200))).toMatchObject({ more: undefined });
});

test("a row of the yard counts all faults, and holds nothing that a spreadsheet would run", () => {
  const [first] = many;
  if (first === undefined) throw new Error("no fault");
  const row = (engine: string) => yardCsvRow(yardDocument({ engine, problems: many }));
  expect(row("pump")).toMatch(/^pump,.*,1000\n$/);
  for (const engine of ["=1+2", "+1", "-a", "@a", "\t=1", " =1", "\uFF1D1"])
    expect(row(engine).startsWith("'"), engine).toBe(true);
  expect(row("-1")).toMatch(/^-1,/);
});
