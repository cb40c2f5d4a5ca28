// The handbook's simulations, run again through the library: invented histories, drawn by the handbook's design, go in, and
// what comes out is set beside what the handbook printed. Run by hand: node tests/bench/simulate.mjs [--runs N]
// Same seed, same result (with other seeds about 1 figure in 400 would lie outside by chance). Ends with 1 where a figure
// lies outside three standard errors.

import { parseArgs } from "node:util";
import {
  manyLooks,
  ruleAlone,
  ruleInFull,
  sensitivity,
  startAlarms,
  withoutComparing,
} from "./simulate-alarm-tables.mjs";
import { printTable } from "./simulate-compare.mjs";
import { coreFromSource } from "./core-bundle.mjs";
import { chance, drawHistory, inputOf, usualDesign } from "./simulate-draws.mjs";
import { chances, crossings } from "./simulate-forecast.mjs";
import { changeTests, forwardTests } from "./simulate-one-test.mjs";
import { plannedTests, plannedWholes } from "./simulate-plan.mjs";
import { callings, startWords } from "./simulate-shape.mjs";

const { values } = parseArgs({ options: { runs: { type: "string", default: "1000" } } });
const runs = Number(values.runs);
if (!Number.isInteger(runs) || runs < 100) throw new Error("--runs takes a whole number from 100 on");

const internals = [
  "forecast",
  "layout",
  "noise",
  "pooled-variance",
  "relative-channel",
  "series",
  "step-or-line",
  "tests-until-shown",
  "two-below-baseline",
  "whole-tests-until-shown",
];
const core = await coreFromSource(...internals.map((name) => `history/${name}.ts`));
const write = (text) => process.stdout.write(text);
const started = process.hrtime.bigint();

write(`${String(runs)} histories a figure, of quick ones more. said: by the handbook, in the last table by the library;
here: what came out; shares in per cent. error: standard error of the difference; apart: the difference in such errors\n`);
const tables = [
  ["One test: the forward test (A.5)", () => forwardTests(core, 20 * runs)],
  ["Two tests: the test for a change (L.2)", () => changeTests(core, 4 * runs)],
  ["Early change (L.2)", () => startAlarms(core, runs)],
  ["Alarms, rule C.4 alone, faults in ln units from test 4 on (I.3)", () => ruleAlone(core, runs)],
  [
    "Alarms, with the cylinder's own scatter too (L.8), faults in true per cent",
    () => ruleInFull(core, runs),
  ],
  ["Repeated looks (L.8)", () => manyLooks(core, runs)],
  ["Other noise, four cylinders, rule C.4 alone (I.4)", () => sensitivity(core, runs)],
  [
    "What comparing cylinders is worth: healthy engines that alarm in 12 tests (I.1)",
    () => withoutComparing(core, runs),
  ],
  ["At once or bit by bit, four cylinders (D)", () => callings(core, 4 * runs)],
  ["The word where the first tests looked like a step, four cylinders (L.9)", () => startWords(core, runs)],
  ["Where a limit is met: the 80 % interval (C.7)", () => crossings(core, 4 * runs)],
  ["Chances of staying above a limit (E)", () => chances(core, 4 * runs)],
  [
    "Further tests until a loss shows with 8 chances in 10: what the library foretells, against histories",
    () => plannedTests(core, runs),
  ],
  [
    "The same of all cylinders alike or of the only one: called falling at the test foretold, and the test before",
    () => plannedWholes(core, runs),
  ],
];
let outside = 0;
for (const [title, lines] of tables) outside += printTable(title, lines(), write);

const large = inputOf(drawHistory(chance(1), usualDesign, { cylinders: 28, tests: 60 }), 60, usualDesign);
const times = Array.from({ length: 15 }, () => {
  const start = process.hrtime.bigint();
  core.analyseHistory(large);
  return Number(process.hrtime.bigint() - start) / 1e6;
}).sort((a, b) => a - b);
const seconds = Number(process.hrtime.bigint() - started) / 1e9;
write(
  `\n28 cylinders x 60 tests analysed in ${times[7].toFixed(1)} ms (median of 15; least ${times[0].toFixed(1)})\n`,
);
write(`${String(outside)} figures outside three standard errors; ${seconds.toFixed(0)} s in all\n`);
process.exitCode = outside === 0 ? 0 : 1;
