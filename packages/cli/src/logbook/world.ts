// What the file layer needs of the machine. Tests stand in for any part of it: a disk that fills up, a clock, a process that died.

import * as nodeFs from "node:fs";
import { homedir, hostname } from "node:os";

import type { Io } from "../io.ts";

/** The calls of node:fs that are used; all synchronous, so that nothing else of ours runs in between. */
export type FileSystem = Pick<
  typeof nodeFs,
  | "closeSync"
  | "constants"
  | "fchmodSync"
  | "fchownSync"
  | "fstatSync"
  | "fsyncSync"
  | "ftruncateSync"
  | "linkSync"
  | "lstatSync"
  | "mkdirSync"
  | "openSync"
  | "readdirSync"
  | "readSync"
  | "realpathSync"
  | "renameSync"
  | "rmdirSync"
  | "statSync"
  | "unlinkSync"
  | "writeSync"
>;

/** Whether a process runs; `start` tells two processes with the same number apart, where the system says it. */
export interface ProcessState {
  readonly alive: boolean;
  readonly start?: string;
}

export interface World {
  readonly fs: FileSystem;
  readonly env: Io["env"];
  readonly cwd: string;
  readonly home: string;
  readonly platform: string;
  readonly host: string;
  readonly pid: number;
  /** Now, local, `YYYY-MM-DDTHH:MM:SS`. */
  stamp(): string;
  /** Milliseconds since 1970, to compare with the times of files. */
  clock(): number;
  sleep(milliseconds: number): Promise<void>;
  /** Says something at once, on stderr: used only while waiting. */
  say(text: string): void;
  processState(pid: number): ProcessState;
  /** Told when a command's changes are on the disk. */
  saved(command: string): void;
}

/** The machine this runs on. */
export const nodeWorld = (
  io: Pick<Io, "env" | "cwd" | "now" | "err" | "saved">,
  fs: FileSystem = nodeFs,
): World => ({
  fs,
  env: io.env,
  cwd: io.cwd,
  home: homeOf(io.env),
  platform: process.platform,
  host: hostname(),
  pid: process.pid,
  stamp: () => io.now(),
  clock: () => Date.now(),
  sleep: async (milliseconds) => {
    await new Promise((resolve) => setTimeout(resolve, milliseconds));
  },
  say: (text) => {
    io.err(text);
  },
  processState,
  saved: (command) => {
    io.saved?.(command);
  },
});

/** An empty name counts as none. */
const homeOf = (env: Io["env"]): string => {
  const named = process.platform === "win32" ? env.USERPROFILE : env.HOME;
  return named === undefined || named === "" ? homedir() : named;
};

const processState = (pid: number): ProcessState => {
  try {
    process.kill(pid, 0);
  } catch (error) {
    if (codeOf(error) !== "EPERM") return { alive: false };
  }
  return fromProc(pid) ?? { alive: true };
};

/** Linux says more: a dead process not yet collected (Z), and the tick at which the process started (field 22). */
const fromProc = (pid: number): ProcessState | undefined => {
  try {
    const stat = nodeFs.readFileSync(`/proc/${String(pid)}/stat`, "latin1");
    const fields = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
    const start = fields[19];
    return { alive: fields[0] !== "Z" && fields[0] !== "X", ...(start === undefined ? {} : { start }) };
  } catch {
    return undefined;
  }
};

/** The system's word for an error, `ENOSPC`; undefined for any other kind of error. */
export const codeOf = (error: unknown): string | undefined => {
  if (!(error instanceof Error) || !("code" in error)) return undefined;
  return typeof error.code === "string" && /^E[A-Z0-9]+$/.test(error.code) ? error.code : undefined;
};
