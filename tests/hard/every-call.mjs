// Stops or fails the writing driver at every system call that changes the disk, one after the other; needs strace.
//   node tests/hard/every-call.mjs [enter|amend|new|undo ...]      (all four without a name)
// After each kill the next command must find the old or the new logbook, whole, and work; after each injected error the
// driver must have said whether it saved, and be right.

import { spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const scratch = mkdtempSync(join(tmpdir(), "sealtrend-calls-"));
const driver = join(scratch, "driver.mjs");
const source = join(dirname(fileURLToPath(import.meta.url)), "driver.ts");
await build({
  entryPoints: [source],
  outfile: driver,
  bundle: true,
  conditions: ["@sealtrend/source"],
  platform: "node",
  format: "esm",
});

// `write` is what the driver says on stdout: files are written with pwrite64.
const kinds = [
  "write",
  "pwrite64",
  "ftruncate",
  "fsync",
  "rename",
  "link",
  "unlink",
  "mkdir",
  "rmdir",
  "fchmod",
];
const operations = {
  enter: ["enter", "{logbook}", "mark", "3"],
  amend: ["amend", "{logbook}", "mark", "150"],
  new: ["new", "{logbook}", "mark"],
  undo: ["undo", "{logbook}"],
};

const place = (name) => ({ logbook: join(scratch, name, "logbook"), state: join(scratch, name, "state") });
const start = place("start");
const run = ({ logbook, state }, words, before = []) => {
  const [command, ...rest] = [
    ...before,
    process.execPath,
    driver,
    ...words.map((word) => word.replace("{logbook}", logbook)),
  ];
  const env = { ...process.env, XDG_STATE_HOME: state };
  return spawnSync(command, rest, { env, encoding: "utf8" });
};

/** All files of a logbook with their text, without locks, notes and unfinished files. */
const picture = ({ logbook }) =>
  readdirSync(logbook, { recursive: true })
    .map(String)
    .filter((name) => !/(\.tmp|\.lock|\.pending)$/.test(name) && statSync(join(logbook, name)).isFile())
    .sort()
    .map((name) => `${name}\n${readFileSync(join(logbook, name), "utf8")}`)
    .join("\n");

const fresh = () => {
  const now = place("now");
  rmSync(join(scratch, "now"), { recursive: true, force: true });
  cpSync(join(scratch, "start"), join(scratch, "now"), { recursive: true });
  return now;
};

// The start: a logbook with two files, and a command to take back. The undo folder is named after the logbook's path, so it
// is made where the trials run and then copied.
mkdirSync(place("now").logbook, { recursive: true });
for (const words of [["start", "{logbook}"], operations.enter, ["enter", "{logbook}", "second", "2"]])
  run(place("now"), words);
cpSync(join(scratch, "now"), join(scratch, "start"), { recursive: true });
const old = picture(start);

const count = { runs: 0, old: 0, new: 0, wrong: 0 };
const wrong = (what) => {
  count.wrong += 1;
  process.stdout.write(`wrong: ${what}\n`);
};

/** One trial; false when the call was never reached. */
const trial = (name, words, kind, nth, how, after) => {
  const now = fresh();
  const trace = join(scratch, "trace");
  const inject = [
    "strace",
    "-f",
    "-qq",
    "-o",
    trace,
    "-e",
    `trace=${kind}`,
    "-e",
    `inject=${kind}:${how}:when=${String(nth)}`,
  ];
  const { status, signal, stdout } = run(now, words, inject);
  const reached = existsSync(trace) && /INJECTED|SIGKILL/.test(readFileSync(trace, "utf8"));
  if (!reached) return false;
  count.runs += 1;
  const label = `${name}, ${kind} ${String(nth)}, ${how}`;
  const settled = run(now, ["settle", "{logbook}"]);
  if (settled.status !== 0) wrong(`${label}: the next command fails: ${settled.stderr}`);
  const found = picture(now);
  if (found !== old && found !== after) wrong(`${label}: neither old nor new`);
  if (found === old) count.old += 1;
  else count.new += 1;
  if (signal === null && status === 0 && stdout.includes("saved") && found !== after)
    wrong(`${label}: said saved and is not`);
  if (signal === null && status !== 0 && status !== 137 && found !== old)
    wrong(`${label}: said not saved and is`);
  if (run(now, ["enter", "{logbook}", "next", "1"]).status !== 0) wrong(`${label}: the next entry fails`);
  return true;
};

const wanted = process.argv.slice(2);
for (const [name, words] of Object.entries(operations)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  const done = fresh();
  run(done, words);
  const after = picture(done);
  if (after === old) wrong(`${name} changes nothing`);
  for (const how of ["signal=KILL", "error=EIO", "error=ENOSPC"])
    for (const kind of how === "signal=KILL" ? kinds : kinds.slice(1))
      for (let nth = 1; nth <= 60 && trial(name, words, kind, nth, how, after); nth += 1);
  process.stdout.write(`${name}: ${JSON.stringify(count)}\n`);
}
rmSync(scratch, { recursive: true, force: true });
process.exitCode = count.wrong === 0 ? 0 : 1;
