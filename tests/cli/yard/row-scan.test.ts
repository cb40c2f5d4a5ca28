// The borders of rows on bytes are those that the core sees in the text.

import { parseTable } from "@sealtrend/core/parts";
import fc from "fast-check";
import { expect, test } from "vitest";
import { cellBounds, cellText, isBlank, lineEnds, rowEnd } from "../../../packages/cli/src/yard/row-scan.ts";

const comma = 44;

/** The rows of a text, cut on bytes. */
const rowsOf = (text: string, part = Infinity): string[] => {
  const bytes = new TextEncoder().encode(text);
  const rows: string[] = [];
  let [from, to] = [0, Math.min(part, bytes.length)];
  while (from < bytes.length) {
    const end = rowEnd(bytes, from, to, {
      delimiter: comma,
      end: to === bytes.length ? "of the file" : "more follows",
    });
    if (end === -1) {
      to = Math.min(bytes.length, to + part);
      continue;
    }
    rows.push(new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes.subarray(from, end)));
    from = end;
  }
  return rows;
};

test.each([
  ["a,b\nc,d\n", ["a,b\n", "c,d\n"]],
  ["a,b\r\nc,d", ["a,b\r\n", "c,d"]],
  ["a\rb\r", ["a\r", "b\r"]],
  ['a,"x\ny"\nb\n', ['a,"x\ny"\n', "b\n"]],
  ['a,"x ""y"", z"\r\nb\n', ['a,"x ""y"", z"\r\n', "b\n"]],
  ['a,"open\nb,c\n', ['a,"open\n', "b,c\n"]],
  ['a,12"\nb,"c"\n', ['a,12"\n', 'b,"c"\n']],
  ['a,"x" y\nb\n', ['a,"x" y\n', "b\n"]],
  ['a,"x\nb,"y"\nc\n', ['a,"x\n', 'b,"y"\n', "c\n"]],
  ["\n\r\n,\n", ["\n", "\r\n", ",\n"]],
])("%j is cut into its rows", (text, rows) => {
  expect(rowsOf(text)).toEqual(rows);
  expect(rowsOf(text, 1)).toEqual(rows);
});

const pieces = fc.array(
  fc.constantFrom("a", "ä", "1", ",", '"', '""', "\n", "\r\n", "\r", " ", '"x, y"', '"two\nlines"'),
  {
    maxLength: 60,
  },
);

test("nothing is lost between the rows, however the bytes come, and lines are counted as an editor does", () => {
  fc.assert(
    fc.property(pieces, fc.integer({ min: 1, max: 9 }), (parts, part) => {
      const text = parts.join("");
      const rows = rowsOf(text, part);
      expect(rows.join("")).toBe(text);
      expect(rows).toEqual(rowsOf(text));
      const bytes = new TextEncoder().encode(text);
      expect(lineEnds(bytes, 0, bytes.length)).toBe(text.match(/\r\n|\r|\n/g)?.length ?? 0);
    }),
    { numRuns: 2_000 },
  );
});

test("the rows that the core reads whole begin where the bytes were cut, on the same line", () => {
  fc.assert(
    fc.property(pieces, (parts) => {
      const body = parts.join("");
      const { table } = parseTable(`h,i\n${body}`, "f.csv");
      let line = 2;
      const cut = new Map<number, string>();
      for (const row of rowsOf(body)) {
        cut.set(line, row);
        line += row.match(/\r\n|\r|\n/g)?.length ?? 0;
      }
      for (const { line: at, raw } of table.rows)
        expect(cut.get(at)?.replace(/[\r\n]+$/, "")).toBe(raw.replace(/[\r\n]+$/, ""));
    }),
    { numRuns: 2_000 },
  );
});

test("the cell of the engine is found in whatever column it stands", () => {
  const bytes = new TextEncoder().encode('1,"a, b", mill ,"say ""x"""\r\n');
  const cell = (column: number): string => {
    const bounds = cellBounds(bytes, { from: 0, to: bytes.length, delimiter: comma, column });
    return cellText(new TextDecoder().decode(bytes.subarray(...bounds)));
  };
  expect([0, 1, 2, 3, 4].map(cell)).toEqual(["1", "a, b", "mill", 'say "x"', ""]);
  expect(isBlank(new TextEncoder().encode(" ,\t,\r\n"), 0, 6, comma)).toBe(true);
});
