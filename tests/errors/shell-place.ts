// A working folder for one case of the shell's catalogue: its files, the state of its disk, and lines typed in it.

import { execFileSync } from "node:child_process";
import fs from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { run } from "sealtrend";
import { onTestFinished } from "vitest";
import { fakeIo } from "../cli/fake-io.ts";
import { type Case, typedWords, unquoted } from "./shell-case.ts";
import { type Standing, bringAbout, unflushed } from "./shell-state.ts";

export interface Said {
  readonly exit: number;
  readonly out: string;
  readonly err: string;
}

export interface ShellPlace {
  type(line: string, more?: readonly string[], width?: number): Promise<Said>;
  /** A line of the system's own shell. */
  sh(line: string): void;
  /** Lays a folder over the working folder. */
  lay(from: string): void;
  text(name: string): string;
  /** What stood in the way is over. */
  free(): void;
}

const here = import.meta.dirname;

/** @param folder - where cases.txt stands */
export const newShellPlace = async (folder: string, given: Case): Promise<ShellPlace> => {
  const cwd = fs.realpathSync(fs.mkdtempSync(join(tmpdir(), "sealtrend-case-")));
  onTestFinished(() => {
    fs.rmSync(cwd, { recursive: true, force: true });
  });
  const lay = (from: string): void => {
    fs.cpSync(from, cwd, { recursive: true });
  };
  if (given.book !== "none") lay(join(here, "shell-logbooks", given.book));
  for (const layer of given.layers) lay(join(folder, layer));
  const standing: Standing[] = [];
  const env = {
    HOME: join(cwd, "home"),
    XDG_DATA_HOME: join(cwd, "data"),
    XDG_STATE_HOME: join(cwd, "state"),
  };
  const named = Object.fromEntries(
    given.states.flatMap((state) => {
      const [, name, value] = /^env (\w+)=(.*)$/.exec(state) ?? [];
      return name === undefined || value === undefined ? [] : [[name, value]];
    }),
  );
  const place: ShellPlace = {
    type: async (line, more = [], width = 80) => {
      const { answers, input } = given;
      const asked = answers === undefined ? {} : { answers, interactive: true, terminal: true };
      const io = fakeIo({ cwd, env: { ...env, ...named }, width, input, ...asked });
      const broken = [
        unflushed(),
        ...standing.flatMap(({ during }) => (during === undefined ? [] : [during()])),
      ];
      try {
        const exit = await run([...more, ...typedWords(line).slice(1).map(unquoted)], io);
        return { exit, out: io.stdout(), err: io.stderr().replaceAll(cwd, "/somewhere") };
      } finally {
        for (const mend of broken.reverse()) mend();
      }
    },
    sh: (line) => void execFileSync("sh", ["-c", line], { cwd }),
    lay,
    text: (name) => (fs.existsSync(join(cwd, name)) ? fs.readFileSync(join(cwd, name), "utf8") : ""),
    free: () => {
      for (const one of standing.splice(0)) one.free?.();
    },
  };
  for (const state of given.states)
    if (state.startsWith("run ")) await place.type(state.slice(4));
    else standing.push(bringAbout(state, cwd));
  return place;
};
