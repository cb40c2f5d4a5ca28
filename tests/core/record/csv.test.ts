import { expect, test } from "vitest";
import { parseTable } from "../../../packages/core/src/record/csv.ts";

const cellsOf = (text: string) =>
  parseTable(text, "f.csv").table.rows.map((row) => row.cells.map((c) => c.text));
const codesOf = (text: string) =>
  parseTable(text, "f.csv").problems.map((p) => `${p.code}@${String(p.line)}:${String(p.column)}`);

test("comma, semicolon and tab files are read alike", () => {
  for (const mark of [",", ";", "\t"])
    expect(cellsOf(`a${mark}b\n1${mark}"x${mark}y"\n`)).toEqual([["1", `x${mark}y`]]);
});

test("a byte order mark, a sep= line, mixed line ends and blank lines do not matter", () => {
  const { table, problems } = parseTable('\uFEFFsep=;\r\na;b\r\n\r\n1;2\n3;"4\r\nfour"\r\n5;6', "f.csv");
  expect(problems).toEqual([]);
  expect(table.header.map((h) => h.name)).toEqual(["a", "b"]);
  expect(table.rows.map((row) => row.line)).toEqual([4, 5, 7]);
});

test("each cell knows its column, quoted ones too", () => {
  const row = parseTable('a,b,c\n12,"x,y",z\n', "f.csv").table.rows[0];
  expect(row?.cells.map((c) => c.column)).toEqual([1, 4, 10]);
});

test("an unclosed quote costs its own line only", () => {
  expect(codesOf('a,b\n1,"open\n2,3\n4,5" bore\n6,7\n')).toEqual(["quote-open@2:3", "quote-stray@4:4"]);
  expect(cellsOf('a,b\n1,"open\n2,3\n6,7\n')).toEqual([
    ["2", "3"],
    ["6", "7"],
  ]);
});

test("a row with too many cells, a cut last line, and a short row are told apart", () => {
  expect(codesOf("a,b\n1,2,3\n1\n1,2,,,\n1")).toEqual(["row-long@2:5", "row-short@3:2", "row-cut@5:2"]);
});

test("a name used twice and a nameless column that holds text are faults", () => {
  expect(codesOf("a,,a,\n1,2,3,\n")).toEqual(["header-blank@1:3", "header-twice@1:4"]);
});

test("rows of separators only are no rows, as spreadsheets leave them behind the last entry", () => {
  expect(cellsOf("a,b\n,,\n1,2\n , \n,\n")).toEqual([["1", "2"]]);
  expect(codesOf("a,b\n1,2\n,\n")).toEqual([]);
});

test("a first line with a stray quote is the only fault: no row is taken for the first line", () => {
  expect(codesOf('a,b"\n1,2\n')).toEqual(["quote-stray@1:4"]);
  expect(cellsOf('a,b"\n1,2\n3,4\n')).toEqual([]);
});

test("a file with a stray quote on every line is given up after 200 of them", () => {
  const text = `a,b\n${'x"y,"z\n'.repeat(20_000)}`;
  expect(codesOf(text)).toHaveLength(200);
});

test("half a character, as a damaged UTF-16 file has it, leaves every row at its own line", () => {
  const { table } = parseTable("a,b\n1,x\udc1fy\n2,3\n4,5\n", "f.csv");
  expect(table.rows.map(({ line, offset }) => [line, offset])).toEqual([
    [2, 4],
    [3, 10],
    [4, 14],
  ]);
});

test("an empty file says which first line it needs", () => {
  for (const text of ["", "\n\n", "\uFEFF"])
    expect(parseTable(text, "f.csv", "a,b").problems).toMatchObject([
      { code: "file-empty", line: 1, column: 1, mend: "put this line first: a,b" },
    ]);
});
