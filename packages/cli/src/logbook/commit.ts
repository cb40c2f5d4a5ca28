// All deltas of one command, or none: note first, then the files, then the note loses its name, which is the moment of
// saving. It is renamed before it is removed, so that it can have its name back if even that does not reach the disk.

import { sep } from "node:path";

import { Stop, type Fault } from "../command.ts";
import { apply, rollBack } from "./apply.ts";
import type { Delta } from "./delta.ts";
import { dropEntry } from "./journal.ts";
import type { Lock } from "./lock.ts";
import { pendingPath, writePending, type Pending } from "./pending.ts";
import { codeOf, type World } from "./world.ts";
import { flushFolder, forget, temporaryPath } from "./write-bytes.ts";
import { fileFault, shown, systemFault } from "./words.ts";

export interface Work {
  readonly pending: Pending;
  readonly locks: readonly Lock[];
  /** Called when all files are written, before that counts. */
  readonly keep: () => void;
}

/** @param root - real path of the logbook  @returns what is to be said of a disk that failed when all was saved
 *  @throws Stop 3, with every file as it was (or a fault that says which is not) */
export const commit = async (
  world: World,
  root: string,
  { pending, locks, keep }: Work,
): Promise<readonly string[]> => {
  const begun: Delta[] = [];
  const note = pendingPath(root, pending.owner);
  const closed = temporaryPath(world, note);
  let isClosed = false;
  try {
    writePending(world, root, pending);
    for (const delta of pending.deltas) {
      checkHeld(
        world,
        locks.filter((lock) => covers(lock, delta)),
      );
      begun.push(delta);
      await apply(world, delta).catch((error: unknown) => {
        // Refused, and so not touched: what stands there is another's, and may be the same to the byte.
        if (error instanceof Stop) begun.pop();
        throw error;
      });
    }
    checkHeld(world, locks);
    keep();
    world.fs.renameSync(note, closed);
    isClosed = true;
    flushFolder(world, root);
  } catch (error) {
    // Where the note cannot have its name back, nobody would take anything back later: then it is saved.
    if (!giveBack(world, closed, note) && isClosed) return [atTheEnd(error)];
    const unmended = await takeBack(world, begun);
    dropEntry(world, root, pending.owner.nonce);
    if (unmended.length === 0) forget(world, note);
    throw asStop(world, error, begun.at(-1), root, unmended);
  }
  forget(world, closed);
  return [];
};

const atTheEnd = (error: unknown): string =>
  `saved, but the disk failed at the end (${codeOf(error) ?? String(error)}): copy the logbook to another disk at once`;

/** A file in a folder that the command makes is covered by the lock on the folder. */
const covers = ({ target }: Lock, { path }: Delta): boolean =>
  path === target || path.startsWith(`${target}${sep}`);

/** @returns whether the note has its name back; one that never lost it has not */
const giveBack = ({ fs }: World, closed: string, note: string): boolean => {
  try {
    fs.renameSync(closed, note);
    return true;
  } catch {
    return false;
  }
};

/** A process that stood still for ten minutes may find its lock taken, and must not write any more. */
const checkHeld = (world: World, locks: readonly Lock[]): void => {
  const lost = locks.find((lock) => !lock.held());
  if (lost !== undefined)
    throw new Stop(3, [fileFault("lock-lost", { file: shown(world.cwd, lost.target) })]);
};

/** Takes back what was done. @returns a fault for each file that is not as it was */
const takeBack = async (world: World, begun: readonly Delta[]): Promise<readonly Fault[]> => {
  const faults: Fault[] = [];
  const last = begun.at(-1);
  for (const delta of [...begun].reverse()) {
    const file = shown(world.cwd, delta.path);
    try {
      // The last one may have stopped because the file is another one: then it was not touched.
      if ((await rollBack(world, delta, world)) === "foreign" && delta !== last)
        faults.push(fileFault("not-put-back", { file, detail: "somebody else has changed it meanwhile" }));
    } catch (error) {
      const detail = error instanceof Stop ? error.message : (codeOf(error) ?? String(error));
      faults.push(fileFault("not-put-back", { file, detail }));
    }
  }
  return faults;
};

const asStop = (
  world: World,
  error: unknown,
  delta: Delta | undefined,
  root: string,
  more: readonly Fault[],
): unknown => {
  if (error instanceof Stop)
    return more.length === 0 ? error : new Stop(error.exit, [...error.faults, ...more]);
  const code = codeOf(error);
  if (code === undefined) return error;
  const doing = delta?.before === undefined ? "created" : delta.after === undefined ? "removed" : "written";
  const fault =
    delta === undefined
      ? systemFault(shown(world.cwd, root), "written to", code)
      : systemFault(shown(world.cwd, delta.path), doing, code);
  return new Stop(3, [fault, ...more]);
};
