// Locks all files of one command, with the folders it will make, and makes sure that nothing half done lies on them.

import { Stop } from "../command.ts";
import { missingFolders } from "./create.ts";
import { acquireAll, releaseAll, type Lock } from "./lock.ts";
import { ownerText } from "./owner.ts";
import { pendingPaths, readPending, type Pending } from "./pending.ts";
import { lockSites, settle } from "./settle.ts";
import type { World } from "./world.ts";
import { fileFault, shown } from "./words.ts";

export interface Locked {
  readonly locks: readonly Lock[];
  /** Folders on the way to the files that do not exist yet, from the top. */
  readonly missing: readonly string[];
  /** What is worth saying. */
  readonly asides: readonly string[];
}

/** @param root - real path of the logbook  @param folders - existing folders to lock too  @throws Stop 3 */
export const lockFiles = async (
  world: World,
  root: string,
  paths: readonly string[],
  folders: readonly string[] = [],
): Promise<Locked> => {
  const begun = world.clock();
  const asides: string[] = [];
  for (;;) {
    asides.push(...(await settle(world, root, "write")));
    const missing = [...new Set(paths.flatMap((path) => missingFolders(world, root, path)))];
    const locks = await acquireAll(world, lockSites(world, { folders: [...folders, ...missing] }, paths));
    try {
      const still = new Set(paths.flatMap((path) => missingFolders(world, root, path)));
      const other = pendingOn(world, root, [...paths, ...missing]);
      if (other === undefined && still.size === missing.length) return { locks, missing, asides };
      if (other !== undefined && world.clock() - begun > 10_000) {
        const file = shown(world.cwd, paths[0] ?? root);
        throw new Stop(3, [fileFault("file-locked", { file, detail: ownerText(world, other.owner) })]);
      }
    } catch (error) {
      releaseAll(locks);
      throw error;
    }
    releaseAll(locks);
    await world.sleep(10 + Math.random() * 20);
  }
};

/** A command in the middle of writing to one of these: one that began while a folder did not exist yet, or died. */
const pendingOn = (world: World, root: string, paths: readonly string[]): Pending | undefined => {
  for (const path of pendingPaths(world, root)) {
    const note = readPending(world, root, path)?.note;
    const touched = [...(note?.folders ?? []), ...(note?.deltas.map((delta) => delta.path) ?? [])];
    if (touched.some((one) => paths.includes(one))) return note;
  }
  return undefined;
};
