// Many engines in one table.

import { readYardEngine, readYardHeader } from "@sealtrend/core/parts";
import { expect, test } from "vitest";

const head = "engine,ignition,test,date,what,unit,c1,c2,c3,c4,note\n";
const headerOf = (text: string) => {
  const { header, problems } = readYardHeader(text, "fleet.csv");
  if (header === undefined) throw new Error(problems.map(({ found }) => found).join("; "));
  return header;
};
const row = (engine: string, cells = "150,148,152,149", ignition = ""): string =>
  `${engine},${ignition},2026-05-03a,2026-05-03,dry,psi,${cells},\n`;

test("an engine has the cylinders whose columns hold anything for it, and the ignition that a row says", () => {
  const header = headerOf(head);
  const engines = [
    readYardEngine(header, "pump", [{ line: 2, text: row("pump", "150,148,,", "compression") }]),
    readYardEngine(header, "mill", [{ line: 3, text: row("mill") }]),
  ];
  expect(
    engines.map(({ id, record, problems }) => [
      id,
      record?.engine.cylinders.join(""),
      record?.engine.ignition,
      problems,
    ]),
  ).toEqual([
    ["pump", "12", "compression", []],
    ["mill", "1234", "unknown", []],
  ]);
});

test("an empty column before the last that is read is a cylinder that was never read, in its own bank", () => {
  const labels = (header: string, cells: string): readonly string[] | undefined =>
    readYardEngine(headerOf(header), "pump", [{ line: 2, text: row("pump", cells) }]).record?.engine
      .cylinders;
  expect(labels(head, ",148,152,149")).toEqual(["1", "2", "3", "4"]);
  expect(labels(head, "150,,152,")).toEqual(["1", "2", "3"]);
  expect(labels(head.replace("c1,c2,c3,c4", "cL1,cL2,cR1,cR2"), "150,,,149")).toEqual(["L1", "R1", "R2"]);
});

test("a fault names its line in the whole file, wherever the row was read from", () => {
  const { record, problems } = readYardEngine(headerOf(head), "pump", [
    { line: 12, text: row("pump") },
    { line: 407, text: row("pump", "15O,148,152,149") },
    { line: 90_001, text: row("pump", '150,1 48,"152,149') },
  ]);
  expect([record, problems.map(({ code, line }) => [code, line])]).toEqual([
    undefined,
    [
      ["number-bad", 407],
      ["quote-open", 90_001],
    ],
  ]);
});

test("a cell of two lines moves the lines behind it", () => {
  const text = `pump,,2026-05-03a,2026-05-03,dry,psi,150,148,152,149,"two\r\nlines"\r\n${row("pump", "150,x,y,149")}`;
  const { problems } = readYardEngine(headerOf(`\uFEFFsep=,\r\n${head}`), "pump", [{ line: 3, text }]);
  expect(problems.map(({ line, column }) => [line, column])).toContainEqual([5, expect.any(Number)]);
});

test("each row without an engine is a fault; rows of separators are none", () => {
  const { record, problems } = readYardEngine(headerOf(head), "", [
    { line: 2, text: `,,,,,,,,,,\n${row("")}` },
  ]);
  expect([record, problems.map(({ code, line }) => [code, line])]).toEqual([undefined, [["id-missing", 3]]]);
});

test("two rows of one engine may not say two ignitions", () => {
  const text =
    row("pump", undefined, "spark") + row("pump", undefined, "compression").replaceAll("05-03", "06-03");
  const { problems } = readYardEngine(headerOf(head), "pump", [{ line: 2, text }]);
  expect(problems.map(({ code, line }) => [code, line])).toEqual([["engine-disagrees", 3]]);
});

test("a row that is too long is told at its line", () => {
  const text = row("pump") + row("pump", `150,148,152,${"9".repeat(70_000)}`);
  const { record, problems } = readYardEngine(headerOf(head), "pump", [{ line: 8, text }]);
  expect([record, problems.map(({ code, line }) => [code, line])]).toEqual([undefined, [["row-huge", 9]]]);
});

test("a column without a name is told where a row holds something in it, and keeps no engine out", () => {
  const header = headerOf(head.replace("note", "note,"));
  const [bare, used] = ["", "7"].map((cell) =>
    readYardEngine(header, "pump", [{ line: 2, text: row("pump").replace("\n", `,${cell}\n`) }]),
  );
  expect([bare?.record, used?.record]).not.toContain(undefined);
  expect([bare?.ofHeader, used?.ofHeader.map(({ code, line }) => [code, line])]).toEqual([
    [],
    [["header-blank", 1]],
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
