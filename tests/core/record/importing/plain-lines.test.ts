// A sheet without a quote is cut by a way of its own, for speed: it must give what the whole parser gives. A byte order
// mark in front sends the same text through that one.

import { parseSheet } from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";

const piece = fc.constantFrom(
  ",",
  ";",
  "\t",
  "\n",
  "\r\n",
  "\r",
  " ",
  "131",
  "11,2",
  "Cyl 3",
  "x",
  "é",
  "=1+2",
);
const texts = fc.array(piece, { maxLength: 60 }).map((pieces) => pieces.join(""));

const told = (text: string, delimiter: string) => {
  const { sheet, problems } = parseSheet(text, "old.csv", { delimiter });
  const { rows, file, columns, blankRows, trailing } = sheet;
  return {
    facts: { file, columns, blankRows, trailing },
    rows: rows.map(({ row, line, raw, cells }) => ({ row, line, raw, cells })),
    places: rows.map((row) => sheet.place(row, row.cells.length - 1)),
    problems,
  };
};

test("rows, cells and places are those of the whole parser", () => {
  fc.assert(
    fc.property(texts, fc.constantFrom(",", ";", "\t"), (text, delimiter) => {
      expect(told(text, delimiter)).toEqual(told(`\uFEFF${text}`, delimiter));
    }),
    { numRuns: 400 },
  );
});

test("what is too large is told as ever", () => {
  const text = `a,b\n1,${"9".repeat(2_500)}\n`;
  expect(told(text, ",").problems).toEqual(told(`\uFEFF${text}`, ",").problems);
  expect(told(text, ",").problems).not.toEqual([]);
});
