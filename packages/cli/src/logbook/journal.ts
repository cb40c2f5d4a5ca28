// What `undo` needs of the last 20 commands, in the user's state folder, a file a command.
// Losing it costs no reading: a torn or missing entry only means that the command cannot be taken back. So it is not flushed.

import { join } from "node:path";

import { Stop } from "../command.ts";
import type { Delta } from "./delta.ts";
import { insideRoot, isThere } from "./inside.ts";
import { portable } from "./pending.ts";
import { readRaw } from "./read-file.ts";
import { stateFolder } from "./state-folder.ts";
import { codeOf, type World } from "./world.ts";
import { forget, writeAll } from "./write-bytes.ts";
import { fileFault, shown } from "./words.ts";
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
    const number = Number.parseInt(names.at(-1) ?? "0", 10) + 1;
    writeNew(world, join(folder, entryName(number, entry.id)), Buffer.from(text));
    for (const name of names.slice(0, Math.max(0, names.length + 1 - kept)))
      forget(world, join(folder, name));
    return undefined;
  } catch (error) {
    const code = codeOf(error);
    if (code === undefined) throw error;
    return `${folder}: ${code}`;
  }
};

/** The last command that was kept, or undefined.
 *  @throws Stop 3 where it cannot be made out: what is before it is not the last, and is not taken back unasked */
export const lastEntry = (world: World, root: string): Entry | undefined => {
  for (const path of entryPaths(world, root)) {
    const entry = readEntry(world, root, path);
    if (entry !== undefined) return entry;
    if (isThere(world, path))
      throw new Stop(3, [fileFault("undo-unreadable", { file: shown(world.cwd, root) })]);
  }
  return undefined;
};

/** Drops the entry with this id, if it is there. */
export const dropEntry = (world: World, root: string, id: string): void => {
  for (const path of entryPaths(world, root))
    if (path.endsWith(`-${id}.json`) || readEntry(world, root, path)?.id === id) forget(world, path);
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

const journalFolder = (world: World, root: string): string | undefined => {
  const state = stateFolder(world);
  return state === undefined ? undefined : join(state, "undo", sha256(root).slice(0, 16));
};

/** `00000012-<id>.json`; of an earlier version without the id. */
const entryNames = ({ fs }: World, folder: string): readonly string[] =>
  fs
    .readdirSync(folder)
    .filter((name) => /^\d{8}(?:-[0-9a-f-]{36})?\.json$/.test(name))
    .sort();

const entryName = (number: number, id: string): string => `${String(number).padStart(8, "0")}-${id}.json`;

/** Two commands on different files may end together and take the same number. What could not be written whole is left there:
 *  it tells `undo` that there was a command later than those before it. */
const writeNew = (world: World, path: string, bytes: Uint8Array): void => {
  const { fs } = world;
  const fd = fs.openSync(path, "wx", 0o600);
  try {
    writeAll(world, fd, bytes, 0);
  } finally {
    fs.closeSync(fd);
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
