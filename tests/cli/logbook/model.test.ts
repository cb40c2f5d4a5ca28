// Any order of commands, undos, hand edits and kills, against a logbook kept in memory: after each the files are what the model says.

import * as nodeFs from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";

import { lastEntry } from "../../../packages/cli/src/logbook/journal.ts";
import { settle } from "../../../packages/cli/src/logbook/settle.ts";
import { undo } from "../../../packages/cli/src/logbook/undo.ts";
import type { FileSystem, World } from "../../../packages/cli/src/logbook/world.ts";
import { write, type Change } from "../../../packages/cli/src/logbook/write.ts";
import { newPlace, type Place } from "./place.ts";

const sequences = Number(process.env.SEALTREND_SEQUENCES ?? 500);

type Files = ReadonlyMap<string, string>;

interface Entry {
  readonly command: string;
  readonly before: Files;
  readonly after: Files;
  /** The files that it changed. */
  readonly paths: readonly string[];
}

interface Model {
  files: Files;
  /** What can be taken back, the last one last. */
  done: Entry[];
}

/** `kill`: the number of the call on the disk that is the last; 0 for none. */
type Act =
  | { readonly kind: "enter" | "amend" | "import"; readonly value: number; readonly kill: number }
  | { readonly kind: "undo"; readonly kill: number }
  | { readonly kind: "edit"; readonly path: string; readonly how: "line" | "line ends" | "cut" };

const kill = fc.oneof(
  { weight: 3, arbitrary: fc.constant(0) },
  { weight: 2, arbitrary: fc.integer({ min: 1, max: 90 }) },
);
const acts: fc.Arbitrary<Act> = fc.oneof(
  { weight: 5, arbitrary: fc.record({ kind: fc.constantFrom("enter" as const, "amend" as const), value: fc.integer({ min: 100, max: 999 }), kill }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("import" as const), value: fc.integer({ min: 1, max: 4 }), kill }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant("undo" as const), kill }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant("edit" as const), path: fc.constantFrom("pump/tests.csv", "gauges.csv", "pump/amendments.csv"), how: fc.constantFrom("line" as const, "line ends" as const, "cut" as const) }) },
); // prettier-ignore

/** The changes of a command, and the files after it as the model has them. */
const planned = (act: Exclude<Act, { readonly kind: "undo" | "edit" }>, files: Files, nth: number): { changes: readonly Change[]; after: Files } => {
  const after = new Map(files);
  const appended = (path: string, row: string): Change => {
    const now = after.get(path);
    // An unfinished last line is ended first, with the line ends of the file.
    const eol = lineEnd(now);
    const open = now === undefined || now === "" || now.endsWith("\n") ? "" : eol;
    after.set(path, now === undefined || now === "" ? `h\n${row}\n` : `${now}${open}${row}${eol}`);
    return { kind: "append", path, header: "h", rows: () => [row] };
  };
  if (act.kind === "enter") return { changes: [appended("pump/tests.csv", `t${String(nth)} ${String(act.value)}`), appended("pump/notes.csv", `n${String(nth)}`)], after };
  if (act.kind === "amend") {
    const text = (now: string): string => now.replace(/^red \d+/m, `red ${String(act.value)}`);
    after.set("gauges.csv", text(after.get("gauges.csv") ?? ""));
    return { changes: [{ kind: "replace", path: "gauges.csv", text: (current) => text(current.text) }, appended("pump/amendments.csv", `a${String(nth)}`)], after };
  }
  const engines = Array.from({ length: act.value }, (_, n) => `e${String(nth)}-${String(n)}`);
  const made = engines.flatMap((id) => ["engine.json", "tests.csv"].map((name): Change => {
    after.set(`${id}/${name}`, `${name}\n`);
    return { kind: "create", path: `${id}/${name}`, text: `${name}\n` };
  }));
  return { changes: [...made, appended("pump/tests.csv", `i${String(nth)}`)], after };
}; // prettier-ignore

const onDisk = (place: Place): Files =>
  new Map(
    nodeFs
      .readdirSync(place.root, { recursive: true, encoding: "utf8" })
      .filter(
        (name) => !/\.(tmp|lock|pending)$/.test(name) && nodeFs.statSync(join(place.root, name)).isFile(),
      )
      .sort()
      .map((name) => [name, place.text(name)]),
  );
const asText = (files: Files): string => JSON.stringify([...files].sort());

const changing = ["openSync", "writeSync", "renameSync", "linkSync", "unlinkSync", "mkdirSync", "rmdirSync", "ftruncateSync", "fchmodSync"] as const; // prettier-ignore

/** A process that is killed at a call: that one and all later ones do nothing and end it. Its number is nobody's afterwards. */
const dying = (place: Place, nth: number, life: number): { readonly world: World; readonly isDead: () => boolean } => {
  let count = 0;
  const names: readonly (keyof FileSystem)[] = [...changing, "closeSync", "lstatSync", "readSync", "readdirSync", "statSync"];
  const calls = Object.fromEntries(
    names.map((name) => [
      name,
      (...given: readonly unknown[]): unknown => {
        if (changing.some((one) => one === name)) count += 1;
        if (count >= nth) {
          if (name === "closeSync") nodeFs.closeSync(Number(given[0])); // the system closes what a dead process held
          throw new Error("killed");
        }
        return (nodeFs[name] as (...all: readonly unknown[]) => unknown)(...given);
      },
    ]),
  );
  const pid = 2 ** 22 + 1 + life;
  const processState: World["processState"] = (asked) => ({ alive: asked === pid });
  const world = { ...place.failing({ ...calls, fsyncSync: () => undefined }), pid, processState, sleep: () => Promise.reject(new Error("killed")) };
  return { world, isDead: () => count >= nth };
}; // prettier-ignore

const sameIn = (paths: readonly string[], one: Files, other: Files): boolean =>
  paths.every((path) => one.get(path) === other.get(path));

/** What `undo` must do to the model. */
const takenBack = ({ files, done }: Model): { readonly result: string; readonly files: Files } => {
  const last = done.at(-1);
  if (last === undefined) return { result: "undo-nothing", files };
  if (sameIn(last.paths, files, last.before)) return { result: last.command, files };
  if (!sameIn(last.paths, files, last.after)) return { result: "undo-changed", files };
  const back = new Map(files);
  for (const path of last.paths) {
    const text = last.before.get(path);
    if (text === undefined) back.delete(path);
    else back.set(path, text);
  }
  return { result: last.command, files: back };
};

const codeOf = (error: unknown): string => {
  if (!(error instanceof Error) || !("faults" in error)) throw error;
  return (error.faults as readonly { readonly code: string }[])[0]?.code ?? "";
};

const lineEnd = (text = ""): string => (text.includes("\r\n") ? "\r\n" : "\n");

const edited = (text: string, how: "line" | "line ends" | "cut"): string =>
  how === "line"
    ? `${text}by hand${lineEnd(text)}`
    : how === "cut"
      ? text.replace(/(?:\r?\n|.)$/s, "")
      : text.replace(/\r?\n/g, "\r\n");

/** One act on both. */
const step = async (place: Place, model: Model, act: Act, nth: number): Promise<void> => {
  const alive = place.failing({ fsyncSync: () => undefined });
  if (act.kind === "edit") {
    const text = model.files.get(act.path);
    if (text === undefined) return;
    place.put(act.path, edited(text, act.how));
    model.files = new Map(model.files).set(act.path, edited(text, act.how));
    return;
  }
  const { world, isDead } = act.kill === 0 ? { world: alive, isDead: () => false } : dying(place, act.kill, nth);
  /** A dead process may have come to its end here, where what it swept last does not matter to it. */
  const ended = async (work: () => Promise<string>): Promise<string> => {
    try {
      const said = await work();
      return isDead() ? "killed" : said;
    } catch (error) {
      return isDead() ? "killed" : codeOf(error);
    }
  };
  const before = model.files;
  if (act.kind === "undo") {
    const wanted = takenBack(model);
    const said = await ended(async () => (await undo(world, place.root)).command);
    if (said !== "killed") {
      expect(said).toBe(wanted.result);
      if (!said.startsWith("undo-")) model.done.pop();
      model.files = wanted.files;
      return;
    }
    await settle(alive, place.root, "write");
    const now = asText(onDisk(place));
    expect([asText(before), asText(wanted.files)]).toContain(now);
    model.files = now === asText(wanted.files) ? wanted.files : before;
    // Killed after its last file, it may have kept its entry: the next undo finds it done then.
    if (lastEntry(alive, place.root)?.command !== model.done.at(-1)?.command) model.done.pop();
    return;
  }
  const command = `${act.kind} ${String(nth)}`;
  const { changes, after } = planned(act, before, nth);
  const said = await ended(async () => {
    await write(world, { root: place.root, command, changes });
    return "saved";
  });
  if (said === "killed") await settle(alive, place.root, "write");
  else expect(said).toBe("saved");
  const now = asText(onDisk(place));
  if (said === "killed") expect([asText(before), asText(after)]).toContain(now);
  if (said === "killed" && now !== asText(after)) return;
  const paths = [...new Set([...before.keys(), ...after.keys()])].filter((path) => before.get(path) !== after.get(path));
  model.files = after;
  if (paths.length > 0) model.done.push({ command, before, after, paths });
}; // prettier-ignore

test(`${String(sequences)} sequences of up to 20 commands leave what a logbook in memory has`, { timeout: 120_000 }, async () => {
  let killed = 0;
  let steps = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(acts, { minLength: 1, maxLength: 20 }), async (sequence) => {
      const place = newPlace();
      const start: Files = new Map([["gauges.csv", "h\nred 99\nblue 1\n"], ["pump/tests.csv", "h\nt 1\n"]]);
      for (const [path, text] of start) place.put(path, text);
      const model: Model = { files: start, done: [] };
      for (const [nth, act] of sequence.entries()) {
        await step(place, model, act, nth);
        steps += 1;
        if ("kill" in act && act.kill > 0) killed += 1;
        expect(asText(onDisk(place))).toBe(asText(model.files));
      }
      nodeFs.rmSync(place.folder, { recursive: true, force: true });
    }),
    { numRuns: sequences, seed: 1 },
  );
  process.stdout.write(`model: ${String(sequences)} sequences, ${String(steps)} commands, ${String(killed)} of them to be killed\n`);
}); // prettier-ignore
