// A logbook in a folder of its own, and a world that can be made to fail.

import * as nodeFs from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { onTestFinished } from "vitest";

import { nodeWorld, type FileSystem, type World } from "../../../packages/cli/src/logbook/world.ts";

export interface Place {
  readonly folder: string;
  readonly root: string;
  readonly state: string;
  readonly said: string[];
  world(changes?: Partial<World>): World;
  /** A world whose file system differs in the calls given. */
  failing(calls: Partial<FileSystem>): World;
  put(name: string, content: string | Uint8Array): string;
  text(name: string): string;
  bytes(name: string): Buffer;
  /** Names in a folder of the logbook, to see what is left behind. */
  names(folder?: string): string[];
}

export const newPlace = (): Place => {
  const folder = nodeFs.realpathSync(nodeFs.mkdtempSync(join(tmpdir(), "sealtrend é ' ")));
  onTestFinished(() => {
    nodeFs.rmSync(folder, { recursive: true, force: true });
  });
  const root = join(folder, "logbook");
  const state = join(folder, "state");
  nodeFs.mkdirSync(root);
  const said: string[] = [];
  const env = { XDG_STATE_HOME: state, XDG_DATA_HOME: join(folder, "data"), HOME: folder };
  const io = {
    env,
    cwd: folder,
    now: () => "2026-05-02T10:00:00",
    err: (text: string) => void said.push(text),
  };
  const at = (name: string): string => join(root, name);
  const world = (changes: Partial<World> = {}): World => ({ ...nodeWorld(io), ...changes });
  return {
    folder,
    root,
    state,
    said,
    world,
    failing: (calls) => world({ fs: { ...nodeFs, ...calls } }),
    put: (name, content) => {
      nodeFs.mkdirSync(dirname(at(name)), { recursive: true });
      nodeFs.writeFileSync(at(name), content);
      return at(name);
    },
    text: (name) => nodeFs.readFileSync(at(name), "utf8"),
    bytes: (name) => nodeFs.readFileSync(at(name)),
    names: (below = ".") => nodeFs.readdirSync(at(below)).sort(),
  };
};

/** An error as the system gives it. */
export const systemError = (code: string): Error => Object.assign(new Error(`${code}: injected`), { code });

/** What a call threw, as `exit: code of its faults, ...`. */
export const stopOf = async (act: () => unknown): Promise<string> => {
  try {
    await act();
  } catch (error) {
    if (error instanceof Error && "exit" in error && "faults" in error) {
      const faults = error.faults as readonly { code: string }[];
      return `${String(error.exit)}: ${faults.map(({ code }) => code).join(", ")}`;
    }
    throw error;
  }
  return "nothing was thrown";
};
