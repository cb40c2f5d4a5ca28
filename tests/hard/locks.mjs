// Locks and litter that others left, against the command itself: it takes over or explains within a second, waits for the living
// its stated time, and sweeps what is old.
//   node tests/hard/locks.mjs

import { spawn } from "node:child_process";
import {
  chmodSync,
  existsSync,
  mkdirSync,
  readFileSync,
  readdirSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { hostname } from "node:os";
import { join } from "node:path";
import { begin } from "./shared/part.mjs";
import { flat, realCommand } from "./shared/real-command.mjs";
import { litterOf, filesIn } from "./shared/tree.mjs";

const part = begin();
const { scratch, sealtrend } = realCommand("locks");
const enter = ["enter", "pump", "--dry", "150 149 148 147", "--unit", "psi", "--by", "me"];
const startOf = (pid) => {
  const stat = readFileSync(`/proc/${String(pid)}/stat`, "latin1");
  return stat.slice(stat.lastIndexOf(")") + 2).split(" ")[19];
};
/** A process that is there and does nothing, to hold a lock. */
const idle = spawn("sleep", ["600"], { stdio: "ignore" });
const dead = spawn("true", { stdio: "ignore" });
await new Promise((ended) => dead.on("exit", ended));

const owner = (facts) =>
  JSON.stringify({ pid: dead.pid, host: hostname(), start: "1", nonce: "n", ...facts });
const living = owner({ pid: idle.pid, start: startOf(idle.pid) });
const minutes = 60_000;

let desks = 0;
const desk = async () => {
  desks += 1;
  const cwd = join(scratch, `desk-${String(desks)}`);
  mkdirSync(join(cwd, "logbook"), { recursive: true });
  for (const words of [["engine", "add", "pump", "--cylinders", "4", "--ignition", "spark"], enter]) {
    const { exit, err } = await sealtrend(words, { cwd });
    if (exit !== 0) part.fail(err);
  }
  const put = (name, text, age = 0) => {
    const path = join(cwd, name);
    mkdirSync(join(path, ".."), { recursive: true });
    writeFileSync(path, text);
    const then = (Date.now() - age) / 1_000;
    utimesSync(path, then, then);
    return path;
  };
  const rows = () => readFileSync(join(cwd, "logbook", "pump", "tests.csv"), "utf8").trim().split("\n").length - 1;
  return { cwd, put, rows, type: (words) => sealtrend(words, { cwd }), litter: () => litterOf(filesIn(join(cwd, "logbook"))) };
}; // prettier-ignore

// How long the same command takes on this machine at this time, without any lock.
const plain = await desk();
const usual = (await plain.type(enter)).took;
const lock = "logbook/pump/tests.csv.lock";

/** A lock as it was left; what must be said; `waits`: how many seconds at the most beyond the usual time. */
const left = [
  ["of a dead process", owner({}), 0, 0, /^$/, 1],
  ["of a process whose number another has now", owner({ pid: idle.pid, start: "1" }), 0, 0, /^$/, 1],
  ["of another computer, eleven minutes old", owner({ host: "barn-pc" }), 11 * minutes, 0, /removed an old lock of process \d+ on barn-pc/, 1],
  ["empty, eleven minutes old", "", 11 * minutes, 0, /removed an old lock of an unknown process/, 1],
  ["full of zeros, eleven minutes old", "\0".repeat(64), 11 * minutes, 0, /removed an old lock/, 1],
  ["of no text of ours, eleven minutes old", "locked", 11 * minutes, 0, /removed an old lock/, 1],
  ["of another computer, from eleven minutes ahead: the clock was set back", owner({ host: "barn-pc" }), -11 * minutes, 0, /removed an old lock/, 1],
  ["of a dead process, from ahead", owner({}), -11 * minutes, 0, /^$/, 1],
  ["of a living process", living, 0, 3, /waiting for process \d+ to finish.*in use by process \d+.*if none is running: rm .*not saved: .*150 149 148 147/, 10],
  ["of a living process, from ahead", living, -11 * minutes, 3, /waiting for process.*in use by process \d+/, 10],
  ["of another computer, just made", owner({ host: "barn-pc" }), 0, 3, /waiting for process \d+ on barn-pc.*in use by process \d+ on barn-pc.*not saved/, 10],
  ["empty, just made", "", 0, 3, /waiting for an unknown process.*in use by an unknown process.*not saved/, 10],
]; // prettier-ignore

const tryLock = async ([name, text, age, exit, says, waits]) => {
  const place = await desk();
  const path = place.put(lock, text, age);
  const before = place.rows();
  const ended = await place.type(enter);
  const said = flat(ended.err).trim();
  const late = ended.took - usual > waits * 1_000 + usual;
  const kept = exit === 0 || (existsSync(path) && readFileSync(path, "utf8") === text);
  const fault =
    ended.exit !== exit
      ? `ends with ${String(ended.exit)}: ${said}`
      : !says.test(said)
        ? `says ${said}`
        : place.rows() - before !== (exit === 0 ? 1 : 0)
          ? "the rows are not as told"
          : late
            ? `takes ${String(Math.round(ended.took))} ms, usually ${String(Math.round(usual))}`
            : !kept
              ? "the lock of the other one is gone"
              : exit === 0 && place.litter().length > 0
                ? `leaves ${place.litter().join(", ")}`
                : undefined;
  part.tried(`a lock ${name}`, fault);
};
await Promise.all(left.filter(([, , , exit]) => exit !== 0).map(tryLock));
for (const one of left.filter(([, , , exit]) => exit === 0)) await tryLock(one);

// A holder that lets go in time is waited for, and then the entry is saved.
{
  const place = await desk();
  const path = place.put(lock, living);
  setTimeout(() => {
    rmSync(path);
  }, 2_500);
  const { exit, err } = await place.type(enter);
  part.tried("a lock let go after 2.5 s", exit === 0 && /waiting for process/.test(err) ? undefined : `${String(exit)}: ${err}`);
} // prettier-ignore

// A folder in which no lock can be made: told at once, with the reading. Root may write everywhere, so a folder takes its name.
{
  const place = await desk();
  mkdirSync(join(place.cwd, lock));
  const ended = await place.type(enter);
  part.tried("a folder in the place of the lock", ended.exit === 3 && /not saved: .*150 149/.test(flat(ended.err)) ? undefined : `${String(ended.exit)}: ${ended.err}`);
  const free = await desk();
  const folder = join(free.cwd, "logbook", "pump");
  chmodSync(folder, 0o555);
  const { exit, err } = await free.type(enter);
  chmodSync(folder, 0o755);
  const isRoot = process.getuid?.() === 0;
  if (isRoot) process.stdout.write("left out: a folder without the right to write, which does not stop root; see disk-faults.mjs\n");
  else part.tried("a folder that cannot be written to", exit === 3 && /may not write/.test(flat(err)) ? undefined : err);
} // prettier-ignore

// Litter of every stage, young and old: the next command works; what is older than an hour is swept, what is younger may still
// be somebody's.
{
  const stages = [
    "logbook/pump/.tests.csv.lock.4a8f0c9e-1111-4222-8333-444455556666.4194999.tmp",
    `logbook/.sealtrend.4194999.n.pending.4194999.tmp`,
    "logbook/pump/.tests.csv.4194999.tmp",
    "logbook/pump/tests.csv.lock-0123456789ab.lock",
    "logbook/.gauges.csv.4194999.tmp",
  ];
  for (const [age, isSwept] of [[2 * 60 * minutes, true], [minutes, false]]) {
    const place = await desk();
    for (const name of stages) place.put(name, owner({}), age);
    place.put(lock, owner({}), age);
    place.put("logbook/.sealtrend.4194999.n2.pending", JSON.stringify({ schema: "sealtrend/pending@1", owner: JSON.parse(owner({})), command: "enter pump", deltas: [], folders: [] }), age);
    const { exit, err } = await place.type(enter);
    const left = place.litter();
    const fault = exit !== 0 ? err : !/was interrupted and is taken back/.test(flat(err)) ? `does not tell of the note: ${err}` : isSwept && left.length > 0 ? `leaves ${left.join(", ")}` : left.some((name) => /\.pending$|tests\.csv\.lock$/.test(name)) ? `leaves ${left.join(", ")}` : undefined;
    part.tried(`litter of every stage, ${String(age / minutes)} minutes old`, fault);
  }
  const place = await desk();
  place.put("logbook/.sealtrend.4194999.n3.pending", '{"schema":"sealtrend/pend', 0);
  const ended = await place.type(enter);
  part.tried("a torn note", ended.exit === 0 && /is damaged.*look at the last lines/i.test(flat(ended.err)) ? undefined : `${String(ended.exit)}: ${ended.err}`);
  const state = join(scratch, "state", "sealtrend", "undo");
  const [first] = readdirSync(state);
  for (const name of ["junk.json", "00000099.json.tmp", ".00000001.json.4194999.tmp"]) writeFileSync(join(state, first, name), "{");
  const undone = await plain.type(["undo"]);
  part.tried("litter in the state folder", undone.exit === 0 ? undefined : undone.err);
} // prettier-ignore

idle.kill();
part.end({ locks: left.length + 2, litter: 4 });
