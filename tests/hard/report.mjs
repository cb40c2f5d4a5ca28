// What the logbook, its readers and the command were put through, counted: one table, kept in tests/README.md.
//   npm run hard                        every part at its usual size, with kills and faults of the disk (some six minutes)
//   node tests/hard/report.mjs --push   what needs no other program and takes a minute of processor time, as .ci/run does
//     --only truncation,mutation        these parts alone
//     --mutations 1000000 --seed 7      more damaged logbooks, or others
//     --write                           puts the table of this run into tests/README.md
// Each part is a process of its own, so that its memory is its own, and ends with a line of counts and one `N passed, N failed`.

import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { rowsOf, tableOf, withTable } from "./report-table.mjs";
import { buildProgram } from "./shared/program.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const readme = join(here, "..", "README.md");
const text = { type: "string", default: "" };
const { values } = parseArgs({
  options: {
    push: { type: "boolean", default: false },
    write: { type: "boolean", default: false },
    only: text,
    seed: { ...text, default: "1" },
    mutations: { ...text, default: "20000" },
  },
});
const seeded = ["--seed", values.seed];
const sized = values.push ? ["--texts", "short"] : [];

/** In the order of the table. `apart`: .ci/run starts it by itself, since it takes minutes or needs strace. */
const parts = [
  { name: "every-call", file: "every-call.mjs", apart: true },
  { name: "disk", file: "disk-faults.mjs", apart: true },
  { name: "real-disk", file: "real-disk.mjs", apart: true },
  { name: "locks", file: "locks.mjs", apart: true },
  { name: "streams", file: "streams.mjs", apart: true },
  { name: "kills", file: "run.mjs", apart: true },
  { name: "truncation", file: "truncation.mjs" },
  { name: "mutation", file: "mutation.mjs", args: ["--count", values.mutations, ...seeded] },
  { name: "numbers", file: "number-grammar.mjs" },
  { name: "round-trip", file: "round-trip.mjs", args: seeded },
  { name: "hostile-text", file: "hostile-text.mjs" },
  { name: "crafted", file: "crafted.mjs", args: sized },
  { name: "large", file: "large.mjs", args: sized },
  { name: "formulas", file: "formulas.mjs", args: seeded },
  { name: "engine-names", file: "engine-names.mjs" },
  { name: "patterns", file: "patterns.mjs", args: sized },
];

const wanted = values.only.split(",").filter((name) => name !== "");
const strangers = wanted.filter((name) => !parts.some((part) => part.name === name));
if (strangers.length > 0)
  throw new Error(`no part ${strangers.join(", ")}; there are ${parts.map(({ name }) => name).join(", ")}`);
const chosen = parts.filter(({ name, apart }) =>
  wanted.length > 0 ? wanted.includes(name) : !(values.push && apart),
);

/** Runs one part; what it printed before its last two lines is shown as it is. */
const run = ({ name, file, args = [] }, built) => {
  process.stdout.write(`== ${name}\n`);
  const { status, stdout } = spawnSync(process.execPath, [join(here, file), ...args], {
    encoding: "utf8",
    env: { ...process.env, SEALTREND_BUILT: built },
    stdio: ["ignore", "pipe", "inherit"],
    maxBuffer: 2 ** 28,
  });
  process.stdout.write(stdout);
  const counts = /^counts: (\{.*\})$/m.exec(stdout)?.[1];
  const [, passed, failed] = /(\d+) passed, (\d+) failed\s*$/.exec(stdout) ?? [];
  const ended = passed !== undefined && (status === 0) === (failed === "0");
  if (!ended) process.stdout.write(`failed: ${name} ended with ${String(status)} and no count to believe\n`);
  return {
    name,
    counts: counts === undefined ? {} : JSON.parse(counts),
    passed: Number(passed ?? 0),
    failed: ended ? Number(failed) : Math.max(1, Number(failed ?? 0)),
  };
};

const scratch = mkdtempSync(join(tmpdir(), "sealtrend-report-"));
try {
  const built = await buildProgram(scratch);
  const results = chosen.map((part) => run(part, built));
  const rows = rowsOf(results);
  process.stdout.write(`\n${tableOf(rows)}\n`);
  if (values.write) writeFileSync(readme, withTable(readFileSync(readme, "utf8"), rows));
  const sum = (key) => results.reduce((total, result) => total + result[key], 0);
  process.stdout.write(`${String(sum("passed"))} passed, ${String(sum("failed"))} failed\n`);
  process.exitCode = sum("failed") === 0 ? 0 : 1;
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
