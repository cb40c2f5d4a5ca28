// A small invented logbook for the tests of what is read: a four-cylinder engine, a gauge, a tester.

import {
  type Engine,
  type Gauge,
  type Problem,
  type Test,
  readEngine,
  readGauges,
  readTests,
} from "@sealtrend/core/parts";

export const engine: Engine = (() => {
  const text = '{ "cylinders": ["1", "2", "3", "4"], "ignition": "spark" }';
  const read = readEngine(text, "engine.json", "pump").engine;
  if (read === undefined) throw new Error("the sample engine has a fault");
  return read;
})();

export const gauges: readonly Gauge[] = readGauges(
  `gauge,kind,unit,full_scale,dial
red,compression,psi,300,
blue,compression,bar,,
tester,leak-down,psi,100,
dial,leak-down,,,percent-lost
held,leak-down,,,percent-held
`,
  "gauges.csv",
).gauges;

export const header = "test,date,meter,what,take,gauge,unit,c1,c2,c3,c4";

const textOf = (rows: readonly string[], more: string): string =>
  [header + (more === "" ? "" : `,${more}`), ...rows, ""].join("\n");

/** tests.csv of the sample engine: further columns behind the usual ones, then the rows. */
export const read = (
  rows: readonly string[],
  more = "",
): { readonly tests: readonly Test[]; readonly problems: readonly Problem[] } =>
  readTests(textOf(rows, more), "tests.csv", engine, gauges);

/** The only test of some rows that have no fault. */
export const oneTest = (rows: readonly string[], more = ""): Test => {
  const { tests, problems } = read(rows, more);
  const [test] = tests;
  if (test === undefined || tests.length > 1 || problems.length > 0)
    throw new Error(`not one faultless test: ${JSON.stringify(problems)}`);
  return test;
};

/** The code of each problem, its line, and what is marked there: the cell that is wrong, or a separator where a cell is
 *  empty. `caution` stands before what is only said. */
export const marked = (problems: readonly Problem[], text: string): readonly string[] => {
  const lines = text.split(/\r\n|\n|\r/);
  return problems.map(({ code, severity, line = 0, column = 0, excerpt }) => {
    const cell = (lines[line - 1] ?? "").slice(column - 1, excerpt === undefined ? column - 1 : excerpt.to);
    return `${severity === "caution" ? "caution " : ""}${code}@${String(line)} ${cell}`.trim();
  });
};

/** What is wrong with some rows of tests.csv. */
export const faults = (rows: readonly string[], more = ""): readonly string[] =>
  marked(read(rows, more).problems, textOf(rows, more));
