// What the types of the library allow, and what they do not: the README's examples compile; a misuse stops the compiler where it
// stands.

import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { expect, test } from "vitest";
import { asModule, examples } from "./examples.ts";
import { programOf } from "./program-of.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Each line says in its comment what is wrong with it. */
const misuses = [
  "stationPressure(gaugePressure(80e3), length(350)); // above the air is not above vacuum",
  "pressureAtAltitude(350); // a number has no unit",
  "pressureAtAltitude(temperature(290)); // a temperature is no height",
  "answerLeak({ typed: { kind: 'pressure', cylinder: 68 }, restrictor: {}, ambient: air, uDial: 0 }); // a number of psi",
  "answerLeak({ typed: { kind: 'pressure', cylinder: air }, restrictor: {}, ambient: air, uDial: 0 }); // the air in place of the reading",
  "answerLeak({ typed: { kind: 'lost', lost: 0.1 }, restrictor: { bore: 1 }, ambient: air, uDial: 0 }); // a bore in mm",
  "toSi(80, 'pounds'); // no unit of that name",
  "readQuantity('80psi', 'torque'); // nothing that is measured here",
  "assessDecision(record, {}); // the day is missing",
  "assessTest(record, record.tests[0]); // there may be no test",
  "record.tests.push(record.tests[1]); // what was read is not changed",
  "record.engine.cylinders = []; // nor put in the place of it",
  "const chosen: Verdict = 'scrap it'; // no word of a decision",
];

const uses = `
import { type EngineRecord, type Verdict, absolutePressure, aboveVacuum, answerLeak, assessDecision, assessTest, gaugePressure,
  length, pressureAtAltitude, readQuantity, stationPressure, temperature, toSi } from "@sealtrend/core";
declare const record: EngineRecord;
const air = absolutePressure(97e3);
export const right = [aboveVacuum(gaugePressure(80e3), air), stationPressure(air, length(350)), toSi(80, "psi"),
  assessDecision(record, { today: "2026-11-25" })];
`;

interface Fault {
  readonly name: string;
  /** From 1. */
  readonly line: number;
  readonly text: string;
}

/** What the compiler finds in texts that stand among the tests. */
const faultsOf = (texts: Readonly<Record<string, string>>): readonly Fault[] => {
  const read = ts.readConfigFile(join(root, "tsconfig.json"), (path) => ts.sys.readFile(path));
  const { options } = ts.parseJsonConfigFileContent(read.config, ts.sys, root);
  const paths = Object.fromEntries(
    Object.entries(texts).map(([name, text]) => [join(root, "tests", name), text]),
  );
  const program = programOf(paths, options);
  return Object.keys(paths).flatMap((path) =>
    program.getSemanticDiagnostics(program.getSourceFile(path)).map(({ file, start = 0, messageText }) => ({
      name: basename(path),
      line: file?.text.slice(0, start).split("\n").length ?? 0,
      text: ts.flattenDiagnosticMessageText(messageText, " "),
    })),
  );
};

test("the README's examples and what is meant compile, every misuse does not", () => {
  const first = uses.split("\n").length;
  const faults = faultsOf({
    "examples.ts": asModule(examples()),
    "misuse.ts": `${uses}${misuses.join("\n")}\n`,
  });
  const isMisuse = ({ name, line }: Fault) => name === "misuse.ts" && line >= first;
  expect(faults.filter((fault) => !isMisuse(fault))).toEqual([]);
  const seen = faults.filter(isMisuse).map(({ line }) => line - first);
  expect(misuses.filter((_, i) => !seen.includes(i))).toEqual([]);
});
