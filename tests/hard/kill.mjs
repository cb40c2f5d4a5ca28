// Kills a command that writes, at random moments, and counts what it acknowledged and did not keep.
//
//   node tests/hard/kill.mjs [options] -- COMMAND ARGUMENT...
//     --logbook DIR     the logbook, {logbook} in the command (default: a new one in a temporary folder)
//     --rounds N        how often (300)
//     --seed N          of the random moments (1)
//     --file FILE       the file in the logbook in which each round leaves its {mark} (pump/tests.csv)
//     --rows N          how many rows with that mark a round leaves there (1)
//     --and FILE        another file that must hold the mark exactly when FILE does; may be given several times
//     --expect FILE:TEXT  FILE must hold TEXT of the last round whose mark is kept, as in gauges.csv:red,gauge,{value}
//     --before COMMAND  run once before the first round, words separated by blanks
//     --settle COMMAND  run, not killed, after each kill and before the check
//   In the commands {mark} is a word of the round (k00042), {value} a number from 100 to 199, {n} the number of the round,
//   {logbook} the folder and {driver} tests/hard/driver.ts as one file for node.
//
// A round is acknowledged when the command ended with 0 before it was killed. Exit 1 if an acknowledged mark is missing, a
// mark is there in part, a row has another number of cells than the header, or a command that was not killed fails.

import { spawn } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { evenly } from "../random.mjs";

const one = { type: "string" };
const { values, positionals: template } = parseArgs({
  allowPositionals: true,
  options: {
    logbook: one,
    rounds: { ...one, default: "300" },
    seed: { ...one, default: "1" },
    file: { ...one, default: "pump/tests.csv" },
    rows: { ...one, default: "1" },
    and: { ...one, multiple: true, default: [] },
    expect: one,
    before: one,
    settle: one,
  },
});

const scratch = mkdtempSync(join(tmpdir(), "sealtrend-kill-"));
const logbook = values.logbook ?? join(scratch, "logbook");
const driver = join(scratch, "driver.mjs");
const env = { ...process.env, XDG_STATE_HOME: join(scratch, "state"), XDG_DATA_HOME: join(scratch, "data") };

const random = evenly(Number(values.seed));

const bundleDriver = async () => {
  const { build } = await import("esbuild");
  const source = join(dirname(fileURLToPath(import.meta.url)), "driver.ts");
  await build({
    entryPoints: [source],
    outfile: driver,
    bundle: true,
    conditions: ["@sealtrend/source"],
    platform: "node",
    format: "esm",
  });
};

const markOf = (n) => `k${String(n).padStart(5, "0")}`;
const filled = (text, n) =>
  text
    .replaceAll("{mark}", markOf(n))
    .replaceAll("{value}", String(100 + (n % 100)))
    .replaceAll("{n}", String(n))
    .replaceAll("{logbook}", logbook)
    .replaceAll("{driver}", driver);

/** Runs a command; after `killAfter` ms it is killed. Gives back its exit, `killed` and how long it ran. */
const run = (words, n, killAfter) =>
  new Promise((ended) => {
    const [command, ...rest] = words.map((word) => filled(word, n));
    const begun = performance.now();
    const child = spawn(command, rest, { env, stdio: ["ignore", "ignore", "pipe"] });
    let said = "";
    child.stderr.on("data", (data) => (said += data));
    const timer = killAfter === undefined ? undefined : setTimeout(() => child.kill("SIGKILL"), killAfter);
    child.on("close", (exit, signal) => {
      clearTimeout(timer);
      ended({ exit, killed: signal === "SIGKILL", took: performance.now() - begun, said });
    });
  });

const textOf = (name) => (existsSync(join(logbook, name)) ? readFileSync(join(logbook, name), "utf8") : "");
const linesWith = (name, mark) =>
  textOf(name)
    .split("\n")
    .filter((line) => line.includes(mark)).length;
/** Cells of a line; a comma in quotes parts nothing. */
const cells = (line) => line.replace(/"[^"]*"/g, "").split(",").length;

const crooked = (name) => {
  const text = textOf(name);
  if (text === "" || !name.endsWith(".csv")) return 0;
  const [header, ...rows] = text.replaceAll("\r", "").split("\n");
  const open = rows.pop();
  return rows.filter((row) => cells(row) !== cells(header)).length + (open === "" ? 0 : 1);
};

const litter = () =>
  readdirSync(logbook, { recursive: true }).filter((name) => /\.(tmp|lock|pending)$/.test(name)).length;

const count = { acknowledged: 0, killed: 0, kept: 0, mended: 0, lost: 0, torn: 0, failed: 0 };
const log = new Map();
const complain = (n, what, said = "") => process.stderr.write(`round ${String(n)}: ${what} ${said}\n`);

/** Compares the files with the log of this round; the whole log is compared at the end. */
const check = (n) => {
  const mark = markOf(n);
  const found = linesWith(values.file, mark);
  const whole = found === Number(values.rows);
  const both = values.and.every((name) => linesWith(name, mark) > 0 === found > 0);
  if ((found > 0 && !whole) || !both) {
    count.torn += 1;
    complain(n, `${mark} is there in part: ${String(found)} rows`);
  }
  if (log.get(n) === "acknowledged" && found === 0) {
    count.lost += 1;
    complain(n, `${mark} was acknowledged and is lost`);
  }
  return found > 0;
};

const checkAll = (n) => {
  let bad = 0;
  for (const name of [values.file, ...values.and]) bad += crooked(name);
  if (bad > 0) {
    count.torn += bad;
    complain(n, `${String(bad)} rows are torn`);
  }
};

const checkExpected = (n) => {
  if (values.expect === undefined || n === undefined) return;
  const at = values.expect.indexOf(":");
  if (textOf(values.expect.slice(0, at)).includes(filled(values.expect.slice(at + 1), n))) return;
  count.torn += 1;
  complain(n, `${values.expect} does not hold`);
};

if (template.length === 0) throw new Error("give a command after --");
mkdirSync(logbook, { recursive: true });
if ([...template, values.before ?? ""].join(" ").includes("{driver}")) await bundleDriver();
if (values.before !== undefined) {
  const { exit, said } = await run(values.before.split(" "), 0);
  if (exit !== 0) throw new Error(`--before failed: ${said}`);
}

// Four rounds without a kill show how long the command takes, so that the kills fall on all of its parts.
let usual = 0;
let lastKept;
const rounds = Number(values.rounds);
for (let n = 1; n <= rounds + 4; n += 1) {
  const free = n <= 4;
  // Every other kill falls into the last third, where the command writes.
  const moment = n % 2 === 0 ? 0.02 + random() * 1.1 : 0.65 + random() * 0.4;
  const result = await run(template, n, free ? undefined : moment * usual);
  if (free && result.exit !== 0) throw new Error(`the command fails without being killed: ${result.said}`);
  if (free) usual = n === 1 ? result.took : Math.min(usual, result.took);
  if (result.exit === 0) {
    log.set(n, "acknowledged");
    count.acknowledged += 1;
  } else if (result.killed) {
    count.killed += 1;
    if (readdirSync(logbook).some((name) => name.endsWith(".pending"))) count.mended += 1;
  } else {
    count.failed += 1;
    complain(n, `ended with ${String(result.exit)}`, result.said);
  }
  if (values.settle !== undefined && result.exit !== 0) {
    const settled = await run(values.settle.split(" "), n);
    if (settled.exit !== 0) {
      count.failed += 1;
      complain(n, "--settle failed", settled.said);
    }
  }
  const kept = check(n);
  if (kept) lastKept = n;
  if (kept && log.get(n) !== "acknowledged") count.kept += 1;
  checkAll(n);
  checkExpected(lastKept);
}

// The whole log once more: a later round may not harm an earlier one.
const before = { ...count };
for (const n of log.keys()) check(n);
count.lost = Math.max(before.lost, count.lost - before.lost);
const good = count.lost === 0 && count.torn === 0 && count.failed === 0;
const parts = [
  `${String(rounds + 4)} rounds (seed ${values.seed}, command ${usual.toFixed(0)} ms)`,
  `acknowledged ${String(count.acknowledged)}`,
  `killed ${String(count.killed)} (in the middle of writing ${String(count.mended)})`,
  `kept without acknowledgement ${String(count.kept)}`,
  `acknowledged and lost ${String(count.lost)}`,
  `torn ${String(count.torn)}`,
  `failed when not killed ${String(count.failed)}`,
  `litter at the end ${String(litter())}`,
];
process.stdout.write(`${parts.join("\n  ")}\n`);
writeFileSync(join(scratch, "acknowledged.txt"), [...log.keys()].map(markOf).join("\n"));
if (good) rmSync(scratch, { recursive: true });
else process.stdout.write(`left for inspection: ${scratch}\n`);
process.exitCode = good ? 0 : 1;
