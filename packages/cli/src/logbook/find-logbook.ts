// Which logbook is meant: --logbook, SEALTREND_LOGBOOK, ./logbook, the folder of this user; the demo only to read.

import { isAbsolute, join, resolve } from "node:path";

import { type Fault, Stop } from "../command.ts";
import { codeOf, type World } from "./world.ts";
import { fileFault, shown, systemFault } from "./words.ts";

export interface LogbookPlace {
  /** Absolute; may not exist yet when it is to be written. */
  readonly root: string;
  readonly by: "option" | "environment" | "here" | "user" | "demo";
  readonly state: "there" | "new";
  /** To be said on stderr: that the demo is shown. */
  readonly aside?: string;
}

/** @param option - the value of --logbook  @throws Stop 3 where there is nothing to read, or a file where a folder should be */
export const findLogbook = (world: World, purpose: "read" | "write", option?: string): LogbookPlace => {
  const named =
    fromName(world, option, "option") ?? fromName(world, world.env.SEALTREND_LOGBOOK, "environment");
  if (named !== undefined) {
    const said = named.by === "option" ? "--logbook" : "SEALTREND_LOGBOOK";
    if (kindAt(world, named.root) === "file" || (named.state === "new" && purpose === "read"))
      throw new Stop(3, [fileFault("logbook-missing", { file: shown(world.cwd, named.root), detail: said })]);
    return named;
  }
  const here = join(world.cwd, "logbook");
  if (kindAt(world, here) === "folder") return { root: here, by: "here", state: "there" };
  const user = userFolder(world);
  if (kindAt(world, user) === "folder") return { root: user, by: "user", state: "there" };
  if (purpose === "write") return { root: user, by: "user", state: "new" };
  const demo = join(world.cwd, "sealtrend-demo");
  if (kindAt(world, demo) !== "folder") throw new Stop(3, [noLogbook()]);
  const aside = "no logbook of yours yet: this is the demo in ./sealtrend-demo, with invented engines";
  return { root: demo, by: "demo", state: "there", aside };
};

/** It names no file: the folder of this user need not be known to begin one. */
const noLogbook = (): Fault => {
  const { file: _, ...fault } = fileFault("logbook-none", { file: "" });
  return fault;
};

/** The user's data folder: the system's own place for it; a relative value of XDG_DATA_HOME is ignored. */
export const userFolder = ({ env, home, platform }: World): string => {
  const [own, usual] =
    platform === "win32"
      ? [env.APPDATA, join(home, "AppData", "Roaming")]
      : platform === "darwin"
        ? [undefined, join(home, "Library", "Application Support")]
        : [env.XDG_DATA_HOME, join(home, ".local", "share")];
  return join(own !== undefined && isAbsolute(own) ? own : usual, "sealtrend");
};

const fromName = (
  world: World,
  name: string | undefined,
  by: "option" | "environment",
): LogbookPlace | undefined => {
  if (name === undefined || name === "") return undefined;
  const root = resolve(world.cwd, name);
  return { root, by, state: kindAt(world, root) === "none" ? "new" : "there" };
};

const kindAt = ({ fs, cwd }: World, path: string): "folder" | "file" | "none" => {
  try {
    return fs.statSync(path).isDirectory() ? "folder" : "file";
  } catch (error) {
    const code = codeOf(error) ?? "";
    if (["ENOENT", "ENOTDIR"].includes(code)) return "none";
    // One that is there and cannot be looked at must not let another one be written to.
    throw new Stop(3, [systemFault(shown(cwd, path), "read", code)]);
  }
};
