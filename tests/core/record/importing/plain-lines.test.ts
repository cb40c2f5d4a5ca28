// A sheet without a quote is cut by a way of its own, for speed: it must give what the whole parser gives. A byte order
// mark in front sends the same text through that one.

import { parseSheet, parseTable } from "@sealtrend/core/parts";
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

const quotedPiece = fc.constantFrom(
  ",",
  ",",
  "\n",
  "\r\n",
  '"131"',
  '"a, b"',
  '"say ""120"""',
  '"two\nlines"',
  '""',
  '"',
  " ",
  "131",
  "é",
);

test("a row with quoted cells is cut again into the cells that the parser found", () => {
  const quoted = fc.array(quotedPiece, { maxLength: 40 }).map((pieces) => `a,b\n${pieces.join("")}`);
  let rowsSeen = 0;
  fc.assert(
    fc.property(quoted, (text) => {
      const { rows } = parseTable(text, "old.csv").table;
      const cut = parseSheet(text, "old.csv", { delimiter: "," }).sheet.rows.slice(1);
      rowsSeen += rows.filter(({ raw }) => raw.includes('"')).length;
      const texts = (cells: readonly { readonly text: string }[]) => cells.map(({ text: one }) => one.trim());
      const ofCut = cut.map(({ raw, line, cells }) => ({ raw, line, texts: texts(cells) }));
      const ofTable = rows.map(({ raw, line, cells }) => {
        const held = texts(cells);
        return { raw, line, texts: held.slice(0, held.findLastIndex((one) => one !== "") + 1) };
      });
      expect(ofCut).toEqual(ofTable);
    }),
    { numRuns: 1_000 },
  );
  expect(rowsSeen).toBeGreaterThan(200);
});
