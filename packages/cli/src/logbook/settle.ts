// Puts a logbook in order after a command that was killed, or a computer that went off, in the middle of writing:
// what it had begun is taken back whole. Every command calls this first; where nothing happened it only lists a folder.

import { dirname } from "node:path";

import { Stop } from "../command.ts";
import { rollBack } from "./apply.ts";
import { removeEmptyFolder } from "./create.ts";
import { isThere, realPath } from "./inside.ts";
import { dropEntry } from "./journal.ts";
import { acquireAll, releaseAll, type Lock } from "./lock.ts";
import { standing } from "./owner.ts";
import { pendingPaths, readPending, type Pending } from "./pending.ts";
import { codeOf, type World } from "./world.ts";
import { flushFolder } from "./write-bytes.ts";
import { shown, systemFault } from "./words.ts";

/** @returns what is worth saying, a sentence each; nothing where all was in order or the folder does not exist.
 *  @throws Stop 3, to write only, where something has to be taken back and cannot; a reader is told and reads on */
export const settle = async (
  world: World,
  logbook: string,
  purpose: "read" | "write",
): Promise<readonly string[]> => {
  const said: string[] = [];
  try {
    if (!isThere(world, logbook)) return [];
    const root = realPath(world, logbook);
    for (const path of pendingPaths(world, root)) said.push(...(await settleOne(world, root, path)));
  } catch (error) {
    const code = codeOf(error);
    const file = shown(world.cwd, logbook);
    const stop = code === undefined ? error : new Stop(3, [systemFault(file, "put in order", code)]);
    if (!(stop instanceof Stop) || purpose === "write") throw stop;
    said.push(...stop.faults.map((fault) => `an interrupted command is not taken back yet: ${fault.found}`));
  }
  return said;
};

/** The files and folders to lock; those in a folder that does not exist are covered by the lock on the folder. */
export const lockSites = (
  world: World,
  note: Pick<Pending, "folders">,
  paths: readonly string[],
): readonly string[] => [...note.folders, ...paths].filter((site) => isThere(world, dirname(site)));

/** Releases; the folders given go with it where they are empty by now. */
export const releaseWith = (world: World, locks: readonly Lock[], folders: readonly string[]): void => {
  releaseAll(locks, (target) => {
    if (folders.includes(target)) removeEmptyFolder(world, target);
  });
};

const settleOne = async (world: World, root: string, path: string): Promise<readonly string[]> => {
  const found = readPending(world, root, path);
  if (found === undefined) return [];
  const name = shown(world.cwd, path);
  if (found.note === undefined)
    return [
      `${name} is damaged: a command was interrupted here. Look at the last lines of the files, then delete it.`,
    ];
  const { note } = found;
  if (standing(world, note.owner, found.writtenAt) === "held") return [];
  const sites = lockSites(
    world,
    note,
    note.deltas.map((delta) => delta.path),
  );
  const locks = await acquireAll(world, sites);
  try {
    if (readPending(world, root, path) === undefined) return []; // another command was faster
    const foreign: string[] = [];
    for (const delta of [...note.deltas].reverse())
      if ((await rollBack(world, delta, note.owner)) === "foreign")
        foreign.push(shown(world.cwd, delta.path));
    dropEntry(world, root, note.owner.nonce);
    world.fs.unlinkSync(path);
    flushFolder(world, root);
    return [
      `a command was interrupted and is taken back, nothing of it was saved: ${note.command}`,
      ...foreign.map(
        (file) => `${file} was changed since by hand and was left as it is: look at its last lines`,
      ),
    ];
  } finally {
    releaseWith(world, locks, note.folders);
  }
};
