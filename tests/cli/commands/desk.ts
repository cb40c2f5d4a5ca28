// A working folder of its own, where command lines are typed one after the other.

import {
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  writeFileSync,
  existsSync,
  readdirSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, isAbsolute, join } from "node:path";
import { run } from "sealtrend";
import { onTestFinished } from "vitest";
import { fakeIo } from "../fake-io.ts";

export interface Said {
  readonly exit: number;
  readonly out: string;
  readonly err: string;
  readonly asked: readonly string[];
}

export interface Desk {
  readonly folder: string;
  /** Runs a command line in this folder; `answers` makes it a terminal. */
  type(
    line: readonly string[],
    given?: {
      answers?: readonly string[];
      env?: Record<string, string>;
      width?: number;
      /** Standard input. */
      input?: string;
    },
  ): Promise<Said>;
  /** The document of a command line under --json. */
  json(...line: readonly string[]): Promise<Record<string, unknown>>;
  put(name: string, content: string | Uint8Array): void;
  text(name: string): string;
  has(name: string): boolean;
  names(name?: string): readonly string[];
}

export const newDesk = (): Desk => {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "sealtrend-desk-")));
  onTestFinished(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  const at = (name: string): string => join(folder, name);
  const home = { HOME: at("home"), XDG_DATA_HOME: at("data"), XDG_STATE_HOME: at("state") };
  const type: Desk["type"] = async (typed, { answers, env = {}, width = 80, input = "" } = {}) => {
    const asked = answers === undefined ? {} : { answers, interactive: true, terminal: true };
    const { line, far } = farAway(typed);
    const io = fakeIo({ cwd: folder, env: { ...home, ...env, ...far }, width, input, ...asked });
    const exit = await run(line, io);
    return { exit, out: io.stdout(), err: io.stderr(), asked: io.asked() };
  };
  return {
    folder,
    type,
    json: async (...line) => JSON.parse((await type([...line, "--json"])).out) as Record<string, unknown>,
    put: (name, content) => {
      mkdirSync(dirname(at(name)), { recursive: true });
      writeFileSync(at(name), content);
    },
    text: (name) => readFileSync(at(name), "utf8"),
    has: (name) => existsSync(at(name)),
    names: (name = ".") => readdirSync(at(name)).sort(),
  };
};

/** A logbook by its whole path is told by the environment: what is printed would repeat a path that nobody types. */
const farAway = (
  typed: readonly string[],
): { readonly line: readonly string[]; readonly far: Record<string, string> } => {
  const at = typed.indexOf("--logbook");
  const path = at < 0 ? "" : (typed[at + 1] ?? "");
  if (!isAbsolute(path)) return { line: typed, far: {} };
  return { line: typed.filter((_, i) => i !== at && i !== at + 1), far: { SEALTREND_LOGBOOK: path } };
};

/** A logbook with one engine, four cylinders and spark. */
export const deskWithPump = async (): Promise<Desk> => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "pump", "--cylinders", "4", "--ignition", "spark"]);
  return desk;
};
