// Many engines in one table.

import { type YardRun, readYardHeader, readYardRows } from "@sealtrend/core/parts";
import { expect, test } from "vitest";

const head = "engine,ignition,test,date,what,unit,c1,c2,c3,c4,note\n";
const headerOf = (text: string) => {
  const { header, problems } = readYardHeader(text, "fleet.csv");
  if (header === undefined) throw new Error(problems.map(({ found }) => found).join("; "));
  return header;
};
const run = (engine: string, line: number, lines = 1): YardRun => ({ engine, line, lines });
const row = (engine: string, cells = "150,148,152,149", ignition = ""): string =>
  `${engine},${ignition},2026-05-03a,2026-05-03,dry,psi,${cells},\n`;

test("an engine has the cylinders whose columns hold anything for it, and the ignition that a row says", () => {
  const text = row("pump", "150,148,,", "compression") + row("mill");
  const { engines, problems } = readYardRows(headerOf(head), text, [run("pump", 2), run("mill", 3)]);
  expect(problems).toEqual([]);
  expect(
    engines.map(({ id, record }) => [id, record?.engine.cylinders.join(""), record?.engine.ignition]),
  ).toEqual([
    ["pump", "12", "compression"],
    ["mill", "1234", "unknown"],
  ]);
});

test("a fault names its line in the whole file, wherever the row was read from", () => {
  const text = row("pump") + row("pump", "15O,148,152,149") + row("mill", "150,1 48,152,149");
  const { engines } = readYardRows(headerOf(head), text, [
    run("pump", 12),
    run("pump", 407),
    run("mill", 90_001),
  ]);
  expect(engines.map(({ id, record, problems }) => [id, record, problems.map(({ line }) => line)])).toEqual([
    ["pump", undefined, [407]],
    ["mill", undefined, [90_001]],
  ]);
});

test("a cell of two lines moves the lines behind it", () => {
  const text = `pump,,2026-05-03a,2026-05-03,dry,psi,150,148,152,149,"two\r\nlines"\r\n${row("pump", "150,x,y,149")}`;
  const { engines } = readYardRows(headerOf(`\uFEFFsep=,\r\n${head}`), text, [run("pump", 3, 3)]);
  expect(engines[0]?.problems.map(({ line, column }) => [line, column])).toContainEqual([
    5,
    expect.any(Number),
  ]);
});

test("what keeps one row from being read is told of its engine alone", () => {
  const text = `pump,,2026-05-03a,2026-05-03,dry,psi,150,148,152,"149,\n${row("mill")}`;
  const { engines } = readYardRows(headerOf(head), text, [run("pump", 2), run("mill", 3)]);
  expect(engines.map(({ id, problems }) => [id, problems.map(({ code }) => code)])).toEqual([
    ["pump", ["quote-open"]],
    ["mill", []],
  ]);
});

test("a row without an engine is a fault of the file; rows of separators are none", () => {
  const text = `,,,,,,,,,,\n${row("")}${row("mill")}`;
  const { engines, problems } = readYardRows(headerOf(head), text, [run("", 2, 2), run("mill", 4)]);
  expect(engines.map(({ id }) => id)).toEqual(["mill"]);
  expect(problems.map(({ code, line }) => [code, line])).toEqual([["id-missing", 3]]);
});

test("two rows of one engine may not say two ignitions", () => {
  const text =
    row("pump", undefined, "spark") + row("pump", undefined, "compression").replaceAll("05-03", "06-03");
  const { engines } = readYardRows(headerOf(head), text, [run("pump", 2, 2)]);
  expect(engines[0]?.problems.map(({ code, line }) => [code, line])).toEqual([["engine-disagrees", 3]]);
});

test("a row that is too long for the table leaves the others to be read alone", () => {
  const text = row("pump", `150,148,152,${"9".repeat(70_000)}`) + row("mill");
  const both = readYardRows(headerOf(head), text, [run("pump", 2), run("mill", 3)]);
  expect(both.engines.map(({ id }) => id)).not.toContain("mill");
  const alone = readYardRows(headerOf(head), text.slice(0, text.indexOf("\n") + 1), [run("pump", 2)]);
  expect(alone.engines.map(({ id, problems }) => [id, problems.map(({ code }) => code)])).toEqual([
    ["pump", ["row-huge"]],
  ]);
});

test.each([
  ["test,date,what,c1\n", "column-missing"],
  ["engine,test,date,what\n", "column-missing"],
  ["engine,engine,test,date,what,c1\n", "header-twice"],
  ["", "file-empty"],
])("the header %j cannot serve", (text, code) => {
  const { header, problems } = readYardHeader(text, "fleet.csv");
  expect([header, problems.map((one) => one.code)]).toEqual([undefined, [code]]);
});
