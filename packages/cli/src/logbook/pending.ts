// The note of a command in the middle of writing: `.sealtrend.<pid>.<nonce>.pending` in the logbook, there from before the
// first byte is written until after the last one is safe. Found later, it tells the next command what to take back.
// A stranger's logbook may hold such a note: nothing in it is believed beyond the logbook's own folder.

import { join, relative, sep } from "node:path";

import type { Delta } from "./delta.ts";
import { insideRoot } from "./inside.ts";
import { parseOwner, type Owner } from "./owner.ts";
import { largestFile, readRaw } from "./read-file.ts";
import type { World } from "./world.ts";
import { flushFolder, writeTemporary } from "./write-bytes.ts";

export interface Pending {
  readonly owner: Owner;
  /** The command line. */
  readonly command: string;
  readonly deltas: readonly Delta[];
  /** Folders that the command makes, from the top. */
  readonly folders: readonly string[];
}

const schema = "sealtrend/pending@1";

/** Where the note of an owner stands. @param root - real path of the logbook */
export const pendingPath = (root: string, { pid, nonce }: Owner): string =>
  join(root, `.sealtrend.${String(pid)}.${nonce}.pending`);

/** Leaves the note; whole and lasting, or the caller removes what there is of it. */
export const writePending = (
  world: World,
  root: string,
  { owner, command, deltas, folders }: Pending,
): void => {
  const path = pendingPath(root, owner);
  const note = {
    schema,
    owner,
    command,
    deltas: deltas.map((delta) => deltaToJson(root, delta)),
    folders: folders.map((folder) => portable(root, folder)),
  };
  const temporary = writeTemporary(world, path, Buffer.from(JSON.stringify(note)));
  world.fs.renameSync(temporary, path);
  flushFolder(world, root);
};

/** The paths of all notes in a logbook. */
export const pendingPaths = ({ fs }: World, root: string): readonly string[] =>
  fs
    .readdirSync(root)
    .filter((name) => /^\.sealtrend\..+\.pending$/.test(name))
    .map((name) => join(root, name))
    .sort();

export interface Found {
  /** Undefined where the note cannot be made out. */
  readonly note: Pending | undefined;
  readonly writtenAt: number;
}

/** Reads a note; undefined if it is gone. @throws Stop 3 */
export const readPending = (world: World, root: string, path: string): Found | undefined => {
  const raw = readRaw(world, path, 8 * largestFile);
  return raw && { note: parse(world, root, Buffer.from(raw.bytes).toString("utf8")), writtenAt: raw.mtimeMs };
};

const parse = (world: World, root: string, text: string): Pending | undefined => {
  try {
    const note = JSON.parse(text) as Record<string, unknown>;
    const owner = parseOwner(JSON.stringify(note.owner));
    if (note.schema !== schema || owner === undefined || typeof note.command !== "string") return undefined;
    if (!Array.isArray(note.deltas) || !Array.isArray(note.folders)) return undefined;
    return {
      owner,
      command: note.command,
      deltas: note.deltas.map((delta) => deltaFromJson(world, root, delta as Record<string, unknown>)),
      folders: note.folders.map((folder) => insideRoot(world, root, String(folder))),
    };
  } catch {
    return undefined;
  }
};

/** A path below the root with `/`, so that a logbook moved to another place still knows its files. */
export const portable = (root: string, path: string): string => relative(root, path).split(sep).join("/");

const deltaToJson = (root: string, { path, at, removed, added, before, after }: Delta): object => ({
  path: portable(root, path),
  at,
  removed: Buffer.from(removed).toString("base64"),
  added: Buffer.from(added).toString("base64"),
  before,
  after,
});

/** @throws TypeError for anything but a delta, Stop for one that leads out of the logbook */
const deltaFromJson = (world: World, root: string, json: Record<string, unknown>): Delta => {
  const { path, at, removed, added, before, after } = json;
  if (typeof path !== "string" || typeof removed !== "string" || typeof added !== "string")
    throw new TypeError("deltaFromJson: text expected");
  if (typeof at !== "number" || !Number.isSafeInteger(at) || at < 0)
    throw new TypeError("deltaFromJson: place expected");
  return {
    path: insideRoot(world, root, path),
    at,
    removed: Buffer.from(removed, "base64"),
    added: Buffer.from(added, "base64"),
    ...(typeof before === "string" ? { before } : {}),
    ...(typeof after === "string" ? { after } : {}),
  };
};
