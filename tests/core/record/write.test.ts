import { cellText, dialectOf, plainNumber, rowText, writeReadingCell } from "@sealtrend/core/parts";
import { describe, expect, test } from "vitest";
import { oneTest } from "./sample.ts";

const dialect = (delimiter: string, decimalMark: "." | ",", columns: readonly string[] = []) => ({
  delimiter,
  decimalMark,
  columns,
});

describe("the dialect of a file", () => {
  test.each([
    ["a,b\n1.5,2\n", ",", "."],
    ["a;b\n1,5;2\n", ";", ","],
    ["a\tb\n>1,5?\t2\n", "\t", ","],
    ["a;b\n1.5;2\n", ";", "."],
    ["a;b\n", ";", "."],
    ['a,b\n"1,5",2\n', ",", "."],
    ["a;b\nx;two, three\n", ";", "."],
  ])("%j", (text, delimiter, decimalMark) => {
    expect(dialectOf(text, "f.csv")).toEqual({ delimiter, decimalMark, columns: ["a", "b"] });
  });
});

describe("a cell", () => {
  test.each([
    ["131.5", "131,5"],
    [">9.25?", ">9,25?"],
    ["-5.0", "-5,0"],
    ["131", "131"],
    ["two; three", '"two; three"'],
    ['5" bore', '"5"" bore"'],
    ["line\r\nbreak", "line break"],
    ["  blanks  ", "blanks"],
    ["1.2.3", "1.2.3"],
  ])("%j is written %j in a file with ; and decimal commas", (value, written) => {
    expect(cellText(value, dialect(";", ","))).toBe(written);
  });

  test("a zero that was left out is written", () => {
    expect(cellText(">.95?", dialect(";", ","))).toBe(">0,95?");
    expect(cellText(".95", dialect(",", "."))).toBe("0.95");
  });

  test("three decimals get a fourth where they could be taken for thousands", () => {
    expect(cellText("1.234", dialect(";", ","))).toBe("1,2340");
    expect(cellText("1.234", dialect(";", "."))).toBe("1.2340");
    expect(cellText("1.234", dialect(",", "."))).toBe("1.234");
    expect(cellText("0.850", dialect(";", ","))).toBe("0,850");
    expect(cellText("1234.567", dialect(";", ","))).toBe("1234,567");
  });
});

test("a row has its cells in the order of the file's columns, empty where there is no value", () => {
  expect(rowText({ note: "warm, dry", test: "a" }, dialect(",", ".", ["test", "c1", "note"]))).toBe(
    'a,,"warm, dry"',
  );
});

test("a gauge or a note named like a number keeps its point", () => {
  const columns = ["gauge", "c1", "note"];
  expect(rowText({ gauge: "2.5", c1: "9.1", note: "1.5" }, dialect(";", ",", columns))).toBe("2.5;9,1;1.5");
});

test("a value without a column is a mistake of the caller, nothing without a column is not", () => {
  expect(() => rowText({ colour: "red" }, dialect(",", ".", ["a"]))).toThrow(RangeError);
  expect(rowText({ a: "1", colour: "" }, dialect(",", ".", ["a"]))).toBe("1");
});

test.each([
  ["10,5", "10.5"],
  [">9,25?", ">9.25?"],
  ["10.5", "10.5"],
  ["1,2345", "1.2345"],
  ["0,123", "0.123"],
  ["1,234", "1,234"],
  [">12,345?", ">12,345?"],
  ["1.234,5", "1.234,5"],
  ["two, three", "two, three"],
])("%j is stored as %j", (typed, stored) => {
  expect(plainNumber(typed)).toBe(stored);
});

test("a cell that was read is written with the digits that were typed", () => {
  const [row] = oneTest(["a,2026-05-03,,dry,,red,psi,131.50,>300,131?,-"]).rows;
  expect(row?.cells.map(writeReadingCell)).toEqual(["131.50", ">300", "131?", "x"]);
});
