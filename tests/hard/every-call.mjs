// Stops or fails the writing driver at every system call that changes the disk, one after the other; needs strace.
//   node tests/hard/every-call.mjs [--only enter,undo] [--lanes 2]
// After each kill the next command must find the old or the new logbook, whole, and work; after each injected error the
// driver must have said whether it saved, and be right. What each command of the program makes of a failing disk stands in
// disk-faults.mjs; here the calls are the system's own.

import { spawn } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import { begin, options } from "./shared/part.mjs";
import { filesIn, recordsOf } from "./shared/tree.mjs";

const { only, lanes } = options({ only: "", lanes: "2" });
const part = begin();
const scratch = mkdtempSync(join(tmpdir(), "sealtrend-calls-"));
const here = dirname(fileURLToPath(import.meta.url));
const logbookSources = join(here, "..", "..", "packages", "cli", "src", "logbook");
const bundle = (name, entry) =>
  build({
    ...entry,
    outfile: join(scratch, name),
    bundle: true,
    conditions: ["@sealtrend/source"],
    platform: "node",
    format: "esm",
    logLevel: "warning",
  });
await bundle("driver.mjs", { entryPoints: [join(here, "driver.ts")] });
/** What comes after each trial runs in this process: it is one that is not dead, as the next command is. */
const contents = ["settle", "write", "world"].map((name) => `export * from "./${name}.ts";`).join("\n");
await bundle("next.mjs", { stdin: { contents, resolveDir: logbookSources } });
const { settle, write, nodeWorld } = await import(pathToFileURL(join(scratch, "next.mjs")).href);

// `write` is what the driver says on stdout: files are written with pwrite64, and only a kill may fall on it.
const kinds = "pwrite64 ftruncate fsync rename link unlink mkdir rmdir fchmod".split(" ");
const ways = ["signal=KILL", "error=EIO", "error=ENOSPC"];
const operations = {
  enter: ["enter", "{logbook}", "mark", "3"],
  amend: ["amend", "{logbook}", "mark", "150"],
  new: ["new", "{logbook}", "mark"],
  undo: ["undo", "{logbook}"],
};

const place = (name) => ({ logbook: join(scratch, name, "logbook"), state: join(scratch, name, "state") });
const run = ({ logbook, state }, words, before = []) =>
  new Promise((ended) => {
    const line = [...before, process.execPath, join(scratch, "driver.mjs"), ...words];
    const [command, ...rest] = line.map((word) => word.replace("{logbook}", logbook));
    const env = { ...process.env, XDG_STATE_HOME: state };
    const child = spawn(command, rest, { env, stdio: ["ignore", "pipe", "ignore"] });
    let stdout = "";
    child.stdout.on("data", (data) => (stdout += data));
    child.on("close", (status, signal) => ended({ status, signal, stdout }));
  });
const records = ({ logbook }) => recordsOf(filesIn(logbook));

/** A place of its own to try in. The undo folder is named after the logbook's path, so the start is made in it and copied. */
const newLane = async (number) => {
  const name = `lane-${String(number)}`;
  const now = place(name);
  const kept = join(scratch, `start-${String(number)}`);
  mkdirSync(now.logbook, { recursive: true });
  for (const words of [["start", "{logbook}"], operations.enter, ["enter", "{logbook}", "second", "2"]])
    await run(now, words);
  cpSync(join(scratch, name), kept, { recursive: true });
  const fresh = () => {
    rmSync(join(scratch, name), { recursive: true, force: true });
    cpSync(kept, join(scratch, name), { recursive: true });
    return now;
  };
  return { fresh, old: records(now), trace: join(scratch, `trace-${String(number)}`) };
};

const counts = { faults: 0, kills: 0, old: 0, new: 0 };

/** What is wrong after one trial, undefined where nothing is; `not reached` where there is no such call. */
const faultOf = async ({ fresh, old, trace }, { words, after }, { kind, nth, how }) => {
  const now = fresh();
  rmSync(trace, { force: true });
  // With --seccomp-bpf strace stops at no other call, but injects no signal.
  const quick = how === "signal=KILL" ? [] : ["--seccomp-bpf"];
  const strace = ["strace", "-f", ...quick, "-qq", "-o", trace, "-e", `trace=${kind}`, "-e", `inject=${kind}:${how}:when=${String(nth)}`];
  const { status, signal, stdout } = await run(now, words, strace);
  if (!existsSync(trace) || !/INJECTED|SIGKILL/.test(readFileSync(trace, "utf8"))) return "not reached";
  const world = nodeWorld({ env: { XDG_STATE_HOME: now.state }, cwd: scratch, now: () => "2026-05-02T10:00:00", err: () => undefined });
  try {
    await settle(world, now.logbook, "read");
  } catch (error) {
    return `the next command fails: ${String(error)}`;
  }
  const found = records(now);
  counts[found === old ? "old" : "new"] += 1;
  if (found !== old && found !== after) return "neither old nor new";
  const ended = signal === null && status !== 137;
  if (ended && status === 0 && stdout.includes("saved") && found !== after) return "said saved and is not";
  if (ended && status !== 0 && found !== old) return "said not saved and is";
  const changes = [{ kind: "append", path: "pump/tests.csv", header: "name,mark,value", rows: () => ["0,next,y"] }];
  try {
    await write(world, { root: now.logbook, command: "next", changes });
  } catch (error) {
    return `the next entry fails: ${String(error)}`;
  }
}; // prettier-ignore

/** All trials of one kind of call and one way to fail, until there is no such call. */
const tryKind = async (lane, { name, kind, how, ...operation }) => {
  for (let nth = 1; nth <= 60; nth += 1) {
    const fault = await faultOf(lane, operation, { kind, nth, how });
    if (fault === "not reached") return;
    counts[how === "signal=KILL" ? "kills" : "faults"] += 1;
    part.tried(`${name}, ${kind} ${String(nth)}, ${how}`, fault);
  }
};

try {
  const all = await Promise.all(Array.from({ length: Number(lanes) }, (_, number) => newLane(number)));
  const todo = [];
  for (const [name, words] of Object.entries(operations)) {
    if (only !== "" && !only.split(",").includes(name)) continue;
    const [first] = all;
    const now = first.fresh();
    await run(now, words);
    const after = records(now);
    if (after === first.old) part.fail(`${name} changes nothing`);
    for (const how of ways)
      for (const kind of how === "signal=KILL" ? ["write", ...kinds] : kinds)
        todo.push({ name, words, after, kind, how });
  }
  await Promise.all(
    all.map(async (lane) => {
      for (let next = todo.shift(); next !== undefined; next = todo.shift()) await tryKind(lane, next);
    }),
  );
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
part.end(counts);
