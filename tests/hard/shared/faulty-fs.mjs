// The program with a disk between it and the real one, in which any single call can fail, fall short or be the last.

import { closeSync, cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { buildProgram, root } from "./program.mjs";

/** Calls that change a disk. `openSync` counts only where it is to write. */
export const changing = [
  "fchmodSync",
  "fchownSync",
  "fsyncSync",
  "ftruncateSync",
  "linkSync",
  "mkdirSync",
  "openSync",
  "renameSync",
  "rmdirSync",
  "unlinkSync",
  "writeSync",
];
/** Calls that only look. */
const looking = [
  "closeSync",
  "fstatSync",
  "lstatSync",
  "readSync",
  "readdirSync",
  "realpathSync",
  "statSync",
];

const shim = [
  'export * from "fs";',
  'import * as real from "fs";',
  "const through = (name) => (...given) => (globalThis.sealtrendDisk ?? ((_, call, all) => call(...all)))(name, real[name], given);",
  ...[...changing, ...looking, "readFileSync"].map((name) => `export const ${name} = through("${name}");`),
].join("\n");

const between = {
  name: "disk-between",
  setup(build) {
    build.onResolve({ filter: /^node:fs$/ }, ({ path, kind }) =>
      kind === "import-statement" ? { path, namespace: "disk-between" } : undefined,
    );
    build.onLoad({ filter: /.*/, namespace: "disk-between" }, () => ({ contents: shim }));
  },
};

/** The program over that disk, with the demo beside it; both go when this process ends. */
export const loadFaulty = async () => {
  const folder = mkdtempSync(join(tmpdir(), "sealtrend-faulty-"));
  process.on("exit", () => {
    rmSync(folder, { recursive: true, force: true });
  });
  cpSync(join(root, "data", "demo"), join(folder, "demo"), { recursive: true });
  return import(pathToFileURL(await buildProgram(folder, [between])).href);
};

/** What a killed process throws at its own code: no error of the system, so nobody takes it for one. */
class Killed extends Error {}

const systemError = (code) => Object.assign(new Error(`${code}: injected`), { code });
const opensToWrite = (flags) => flags !== "r" && flags !== 0;
const realNow = Date.now;

/** Counts the calls on the disk and lets a plan decide what becomes of each: `kill`, `one byte` (written, no more), `one byte,
 *  kill`, the code of an error, or nothing. There is one disk in a process.
 *  @param isOurs - whether a path is one that counts */
export const newDisk = (isOurs) => {
  const open = new Map();
  let [life, plan, calls, nth, listed, dead] = [1, () => undefined, [], 0, false, false];

  const die = () => {
    dead = true;
    Date.now = () => realNow() + 600_000; // whatever waits for a lock gives up
    throw new Killed();
  };
  /** A process that died and its successor have the same number here; what tells them apart is when they started. */
  const restarted = (text) =>
    typeof text === "string" ? text.replace(/(\) [A-Z] (?:\S+ ){18})(\d+)/, `$1$2${String(life)}`) : text;
  const through = (name, real, given) => {
    const result = real(...given);
    if (name === "openSync") open.set(result, String(given[0]));
    if (name === "closeSync") open.delete(given[0]);
    return result;
  };

  globalThis.sealtrendDisk = (name, real, given) => {
    if (name === "readFileSync") return restarted(real(...given));
    if (dead) throw new Killed();
    const [first] = given;
    const path = typeof first === "number" ? open.get(first) : String(first);
    if (path === undefined || !isOurs(path)) return real(...given);
    const kind = name === "openSync" && !opensToWrite(given[1]) ? "openSync to read" : name;
    nth += 1;
    if (listed) calls.push({ name: kind, path });
    const act = plan({ name: kind, path, nth });
    if (act === undefined) return through(name, real, given);
    if (act === "kill") return die();
    if (act.startsWith("one byte")) {
      const [fd, bytes, offset, , position] = given;
      const count = real(fd, bytes, offset, 1, position);
      return act === "one byte" ? count : die();
    }
    if (name === "closeSync") through(name, real, given); // it reports an error and is closed all the same
    throw systemError(act);
  };

  return {
    /** Runs `act` under a plan. @param list - `listed`, to have the calls  @returns what it gave, the calls it made, whether it was killed; a new life begins */
    under: async (rule, act, list = "not listed") => {
      [plan, calls, nth, listed, dead] = [rule, [], 0, list === "listed", false];
      const result = await act();
      const killed = dead;
      life += 1;
      [plan, dead] = [() => undefined, false];
      Date.now = realNow;
      for (const fd of open.keys()) closeSync(fd); // as the system does for a dead process
      open.clear();
      return { result, calls, killed };
    },
  };
};
