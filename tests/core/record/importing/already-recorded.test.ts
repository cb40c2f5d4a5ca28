// An import that runs again adds nothing twice: what was written into tests.csv is known again.

import {
  type ImportedTest,
  alreadyRecorded,
  dialectOf,
  readEngine,
  readTests,
  rowText,
  testColumns,
  testValues,
} from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { guessed, imported } from "./imported-sheet.ts";

const engine = (() => {
  const read = readEngine('{ "cylinders": ["1", "2"], "ignition": "spark" }', "engine.json", "pump").engine;
  if (read === undefined) throw new Error("the sample engine has a fault");
  return read;
})();

const testsOf = (rows: readonly string[]): readonly ImportedTest[] => {
  const text = `Machine;Date;Hours;Cyl 1;Cyl 2\n${rows.join("\n")}\n`;
  return imported(text, guessed(text, { unit: "bar", what: "dry" }).map).tests;
};

/** The tests as a logbook has them that they were written into. */
const recorded = (tests: readonly ImportedTest[], delimiter: "," | ";") => {
  const header = testColumns(["1", "2"]).join(delimiter);
  const dialect = {
    ...dialectOf(`${header}\n`, "tests.csv"),
    decimalMark: delimiter === ";" ? "," : ".",
  } as const;
  const rows = tests
    .flatMap((one, i) => testValues(one, `${one.date}${"abc"[i] ?? "z"}`))
    .map((row) => rowText(row, dialect));
  const read = readTests([header, ...rows, ""].join("\n"), "tests.csv", engine, []);
  expect(read.problems).toEqual([]);
  return { engine, tests: read.tests };
};

const rows = [
  "pump;2026-05-03;100;10,5;10,25",
  "pump;2026-05-03;100;10,4?;>20",
  "pump;2026-05-04;101;10,1;x",
];

test.each([",", ";"] as const)("tests written with %j between cells are the same", (delimiter) => {
  const tests = testsOf(rows);
  expect(alreadyRecorded(tests, recorded(tests, delimiter)).map((one) => one?.match)).toEqual([
    "same",
    "same",
  ]);
});

test("a recorded test answers once: the same readings twice are one that is new", () => {
  const twice = testsOf(["pump;2026-05-03;100;10,5;10,25", "pump;2026-05-03;108;10,5;10,25"]);
  expect(twice).toHaveLength(2);
  const answers = alreadyRecorded(twice, recorded(twice.slice(0, 1), ","));
  expect(answers.map((one) => one?.match)).toEqual(["same", undefined]);
});

test("of a test that has grown only the further takes are missing; other figures are told", () => {
  const record = recorded(testsOf(rows.slice(0, 1)), ",");
  const [grown] = alreadyRecorded(testsOf(rows), record);
  expect(grown?.match).toBe("part");
  expect(grown?.missing.map(({ cells }) => cells)).toEqual([["10.4?", ">20"]]);
  const [other] = alreadyRecorded(testsOf(["pump;2026-05-03;100;9,5;9,25"]), record);
  expect(other?.match).toBe("other");
});

test("a test is known again from another sheet, in other ways of writing it, and not with one digit changed", () => {
  const record = recorded(testsOf(rows.slice(0, 2)), ",");
  const standing = (...lines: readonly string[]) => alreadyRecorded(testsOf(lines), record)[0]?.match;
  expect(standing("pump;3.5.2026;;10,50;10,250", "pump;3.5.2026;;10,4?;>20")).toBe("same");
  expect(standing("pump;3.5.2026;;10,50;10,251", "pump;3.5.2026;;10,4?;>20")).not.toBe("same");
});

const cellsOf = (rows: readonly { readonly cells: readonly string[] }[] | undefined) =>
  rows?.map(({ cells }) => cells);

test("a cylinder that was left open is filled by a sheet that says nothing else; then all of it is there", () => {
  const open = testsOf(["pump;2026-05-03;100;10,5;x"]);
  const mended = testsOf(["pump;2026-05-03;100;10,5;10,25"]);
  const [found] = alreadyRecorded(mended, recorded(open, ","));
  expect(found).toMatchObject({ match: "part", missing: [], others: [] });
  expect([cellsOf(found?.filling), cellsOf(found?.known)]).toEqual([[["x", "10.25"]], [["10.5", "x"]]]);
  // as the first import left it, and the second filled it: a take of its own
  const rows = [...(found?.known ?? []), ...(found?.filling ?? [])].map((row, i) => ({
    ...row,
    take: i + 1,
  }));
  const record = recorded(
    mended.map((one) => ({ ...one, rows })),
    ",",
  );
  expect(alreadyRecorded(mended, record).map((one) => one?.match)).toEqual(["same"]);
});

test("a row with another figure is not filled", () => {
  const open = testsOf(["pump;2026-05-03;100;10,4;x"]);
  const [found] = alreadyRecorded(testsOf(["pump;2026-05-03;100;10,5;10,25"]), recorded(open, ","));
  expect(found).toMatchObject({ match: "other", filling: [], others: ["dry"] });
});
