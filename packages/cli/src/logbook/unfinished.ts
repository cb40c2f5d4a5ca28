// Entries that were begun on a terminal and not saved, in the user's state folder, a file each: what was typed outlives a closed
// window and a flat battery. Nothing here is a record; losing it costs the typing, so it is not flushed, but it is never torn.

import { dirname, join } from "node:path";
import { sha256, uniqueName } from "./fingerprint.ts";
import { newOwner, standing } from "./owner.ts";
import { readRaw } from "./read-file.ts";
import { stateFolder } from "./state-folder.ts";
import { type EntryCommand, type Unfinished, readUnfinished, unfinishedText } from "./unfinished-text.ts";
import { shown } from "./words.ts";
import { codeOf, type World } from "./world.ts";
import { forget, sweep, temporaryPath, writeAll } from "./write-bytes.ts";

/** What an entry is of. */
export interface EntryPlace {
  readonly root: string;
  readonly command: EntryCommand;
  readonly engine: string;
}

export interface KeptEntry {
  readonly path: string;
  readonly entry: Unfinished;
}

export interface KeptEntries {
  /** Newest first. */
  readonly entries: readonly KeptEntry[];
  /** Files that could not be made out. */
  readonly unreadable: readonly string[];
  /** Files that a later version of the program wrote. */
  readonly otherVersion: readonly string[];
  /** How many are being typed in another window. */
  readonly open: number;
}

const largest = 1024 * 1024;

/** All that is kept for a place. Never throws. */
export const keptEntries = (world: World, place: EntryPlace): KeptEntries => {
  const folder = folderOf(world, place);
  const names = folder === undefined ? [] : namesIn(world, folder);
  if (folder !== undefined && names.length > 0) sweep(world, folder);
  const read = names.map((name) => lookAt(world, join(folder ?? "", name)));
  const of = (kind: Look["kind"]): readonly string[] =>
    read.flatMap((one) => (one.kind === kind ? [one.path] : []));
  return {
    entries: read
      .flatMap((one) => (one.kind === "entry" ? [one] : []))
      .toSorted((a, b) => (a.entry.begun < b.entry.begun ? 1 : -1)),
    unreadable: of("unreadable"),
    otherVersion: of("other-version"),
    open: of("open").length,
  };
};

type Look =
  | { readonly kind: "entry"; readonly path: string; readonly entry: Unfinished }
  | { readonly kind: "unreadable" | "other-version" | "open" | "gone"; readonly path: string };

const lookAt = (world: World, path: string): Look => {
  try {
    const raw = readRaw(world, path, largest);
    if (raw === undefined) return { kind: "gone", path };
    const read = readUnfinished(Buffer.from(raw.bytes).toString("utf8"));
    if (read.kind !== "entry") return { kind: read.kind, path };
    const { owner, entry } = read;
    const isOwn = owner.pid === world.pid && owner.host === world.host;
    const isOpen = !isOwn && standing(world, owner, raw.mtimeMs) === "held";
    return isOpen ? { kind: "open", path } : { kind: "entry", path, entry };
  } catch {
    return { kind: "unreadable", path };
  }
};

const folderOf = (world: World, { root, command, engine }: EntryPlace): string | undefined => {
  const state = stateFolder(world);
  return state === undefined
    ? undefined
    : join(state, "unfinished", sha256([root, command, engine].join("\n")).slice(0, 16));
};

const namesIn = ({ fs }: World, folder: string): readonly string[] => {
  try {
    return fs.readdirSync(folder).filter((name) => /^[0-9T]+-[0-9a-f]+\.json$/.test(name));
  } catch {
    return [];
  }
};

/** A name for a new entry; undefined where no folder is known. */
export const newEntryPath = (world: World, place: EntryPlace, begun: string): string | undefined => {
  const folder = folderOf(world, place);
  const time = begun.replace(/\D/g, "");
  return folder === undefined ? undefined : join(folder, `${time}-${uniqueName().slice(0, 8)}.json`);
};

/** Writes an entry, whole or not at all. @returns why it could not be kept; undefined where it was */
export const keepEntry = (world: World, path: string, entry: Unfinished): string | undefined => {
  const { fs } = world;
  const temporary = temporaryPath(world, path);
  try {
    fs.mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
    forget(world, temporary); // left by a process of the same number
    const fd = fs.openSync(temporary, "wx", 0o600);
    try {
      writeAll(world, fd, Buffer.from(unfinishedText(entry, newOwner(world))), 0);
    } finally {
      fs.closeSync(fd);
    }
    fs.renameSync(temporary, path);
    return undefined;
  } catch (error) {
    const code = codeOf(error);
    if (code === undefined) throw error;
    forget(world, temporary);
    return `${shown(world.cwd, dirname(path))}: ${code}`;
  }
};

/** Drops entries, and their folder with the last of them. */
export const dropEntries = (world: World, paths: readonly string[]): void => {
  for (const path of paths) forget(world, path);
  const [first] = paths;
  if (first === undefined) return;
  try {
    world.fs.rmdirSync(dirname(first));
  } catch {
    // others are kept there
  }
};
