// A text without quote marks is located by its lines alone, any other by the text of each row: both ways give one answer.

import fc from "fast-check";
import { expect, test } from "vitest";
import { plainRows, quotedRows } from "../../../packages/core/src/record/located-rows.ts";

const signs = fc.constantFrom(..."ab1 ,;\t,,\r\n\n\r.-x\u00A0\u202FéΩ\u2028\u0000😀");
const texts = fc.array(signs, { maxLength: 80 }).map((parts) => parts.join(""));
const lines = fc
  .array(fc.array(fc.constantFrom("", "1", " 131 ", "dry", "x", "a b", "é"), { maxLength: 6 }), {
    maxLength: 12,
  })
  .chain((rows) =>
    fc
      .tuple(fc.constantFrom("\n", "\r\n", "\r"), fc.constantFrom("", "\n", "\r\n"))
      .map(([end, last]) => rows.map((row) => row.join(",")).join(end) + last),
  );

const cellsOf = ({ rows }: ReturnType<typeof plainRows>) => rows.map(({ cells }) => cells);

test("rows, cells, lines, columns and offsets of any text without quote marks are found alike both ways", () => {
  fc.assert(
    fc.property(fc.oneof(texts, lines), fc.constantFrom(",", ";", "\t"), (text, mark) => {
      const [plain, quoted] = [plainRows(text, mark, "f.csv"), quotedRows(text, mark, "f.csv")];
      expect(plain).toEqual(quoted);
      expect(cellsOf(plain)).toEqual(cellsOf(quoted));
    }),
    { numRuns: 1_000 },
  );
});

test("both ways refuse a row without an end, at the same line", () => {
  const text = `a,b\n1,2\n${"x".repeat(70_000)}`;
  const plain = plainRows(text, ",", "f.csv");
  expect(plain).toEqual(quotedRows(text, ",", "f.csv"));
  expect(plain.problems.map(({ code }) => code)).toEqual(["row-huge"]);
});

test("where every row stands: its line, its offset, and the columns of its cells", () => {
  const { rows } = plainRows("a,b\r\n\r\n1,,22\n3", ",", "f.csv");
  expect(rows.map(({ line, offset, raw }) => [line, offset, raw])).toEqual([
    [1, 0, "a,b"],
    [3, 7, "1,,22"],
    [4, 13, "3"],
  ]);
  expect(rows[1]?.cells.map(({ text, column }) => [text, column])).toEqual([
    ["1", 1],
    ["", 3],
    ["22", 4],
  ]);
});
