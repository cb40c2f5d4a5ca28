// What `undo` needs of the last 20 commands, in the user's state folder, a file a command.
// Losing it costs no reading: a torn or missing entry only means that the command cannot be taken back. So it is not flushed.

import { isAbsolute, join } from "node:path";

import type { Delta } from "./delta.ts";
import { insideRoot } from "./inside.ts";
import { portable } from "./pending.ts";
import { readRaw } from "./read-file.ts";
import { codeOf, type World } from "./world.ts";
import { forget, writeAll } from "./write-bytes.ts";
import { sha256 } from "./fingerprint.ts";

/** A delta without the bytes it added: they stand in the file itself, and `after` proves it. */
export interface Done extends Omit<Delta, "added"> {
  readonly addedLength: number;
}

export interface Entry {
  /** The nonce of the write. */
  readonly id: string;
  readonly command: string;
  /** Local time, `YYYY-MM-DDTHH:MM:SS`. */
  readonly when: string;
  readonly files: readonly Done[];
  /** Folders that the command made, from the top. */
  readonly folders: readonly string[];
}

const schema = "sealtrend/undo@1";
const kept = 20;
const largestEntry = 64 * 1024 * 1024;

/** Keeps an entry. @returns why it could not be kept; undefined where it was */
export const remember = (world: World, root: string, entry: Entry): string | undefined => {
  const folder = journalFolder(world, root);
  if (folder === undefined) return "no folder for it is known";
  const text = JSON.stringify({
    schema,
    id: entry.id,
    command: entry.command,
    when: entry.when,
    files: entry.files.map((file) => ({
      ...file,
      path: portable(root, file.path),
      removed: Buffer.from(file.removed).toString("base64"),
    })),
    folders: entry.folders.map((path) => portable(root, path)),
  });
  try {
    world.fs.mkdirSync(folder, { recursive: true, mode: 0o700 });
    const names = entryNames(world, folder);
    writeNumbered(world, folder, Number.parseInt(names.at(-1) ?? "0", 10) + 1, Buffer.from(text));
    for (const name of names.slice(0, Math.max(0, names.length + 1 - kept)))
      forget(world, join(folder, name));
    return undefined;
  } catch (error) {
    const code = codeOf(error);
    if (code === undefined) throw error;
    return `${folder}: ${code}`;
  }
};

/** The last command that was kept, or undefined. Entries that cannot be made out are passed over. */
export const lastEntry = (world: World, root: string): Entry | undefined => {
  for (const path of entryPaths(world, root)) {
    const entry = readEntry(world, root, path);
    if (entry !== undefined) return entry;
  }
  return undefined;
};

/** Drops the entry with this id, if it is there. */
export const dropEntry = (world: World, root: string, id: string): void => {
  for (const path of entryPaths(world, root))
    if (readEntry(world, root, path)?.id === id) forget(world, path);
};

/** Newest first. */
const entryPaths = (world: World, root: string): readonly string[] => {
  const folder = journalFolder(world, root);
  if (folder === undefined) return [];
  try {
    return entryNames(world, folder)
      .map((name) => join(folder, name))
      .reverse();
  } catch {
    return [];
  }
};

/** `$XDG_STATE_HOME/sealtrend/undo/<logbook>`; a relative value is ignored, as its standard asks. */
const journalFolder = ({ env, home, platform }: World, root: string): string | undefined => {
  const own = platform === "win32" ? env.LOCALAPPDATA : env.XDG_STATE_HOME;
  const usual = platform === "win32" ? join(home, "AppData", "Local") : join(home, ".local", "state");
  const state = own !== undefined && isAbsolute(own) ? own : usual;
  if (!isAbsolute(state)) return undefined;
  return join(state, "sealtrend", "undo", sha256(root).slice(0, 16));
};

const entryNames = ({ fs }: World, folder: string): readonly string[] =>
  fs
    .readdirSync(folder)
    .filter((name) => /^\d{8}\.json$/.test(name))
    .sort();

/** Two commands on different files may end together: each takes the next free number. */
const writeNumbered = (world: World, folder: string, first: number, bytes: Uint8Array): void => {
  const { fs } = world;
  for (let number = first; ; number += 1) {
    const path = join(folder, `${String(number).padStart(8, "0")}.json`);
    let fd: number;
    try {
      fd = fs.openSync(path, "wx", 0o600);
    } catch (error) {
      if (codeOf(error) !== "EEXIST") throw error;
      continue;
    }
    try {
      writeAll(world, fd, bytes, 0);
    } catch (error) {
      forget(world, path);
      throw error;
    } finally {
      fs.closeSync(fd);
    }
    return;
  }
};

const readEntry = (world: World, root: string, path: string): Entry | undefined => {
  try {
    const raw = readRaw(world, path, largestEntry);
    const json = JSON.parse(Buffer.from(raw?.bytes ?? []).toString("utf8")) as Record<string, unknown>;
    const { id, command, when, files, folders } = json;
    if (json.schema !== schema || typeof id !== "string" || typeof command !== "string") return undefined;
    if (typeof when !== "string" || !Array.isArray(files) || !Array.isArray(folders)) return undefined;
    return {
      id,
      command,
      when,
      files: files.map((file) => doneFromJson(world, root, file as Record<string, unknown>)),
      folders: folders.map((folder) => insideRoot(world, root, String(folder))),
    };
  } catch {
    return undefined;
  }
};

/** @throws TypeError for anything but a delta, Stop for one that leads out of the logbook */
const doneFromJson = (world: World, root: string, json: Record<string, unknown>): Done => {
  const { path, at, removed, addedLength, before, after } = json;
  if (typeof path !== "string" || typeof removed !== "string")
    throw new TypeError("doneFromJson: text expected");
  if (typeof at !== "number" || typeof addedLength !== "number")
    throw new TypeError("doneFromJson: places expected");
  return {
    path: insideRoot(world, root, path),
    at,
    removed: Buffer.from(removed, "base64"),
    addedLength,
    ...(typeof before === "string" ? { before } : {}),
    ...(typeof after === "string" ? { after } : {}),
  };
};
