// One writer at a time: `<file>.lock`, made whole in one step, naming its process.
// A dead owner's lock is removed only under a second lock named after that owner, so that of several waiters exactly one
// removes it and none can remove the lock of the next owner by mistake.

import { basename, dirname, join } from "node:path";

import { Stop } from "../command.ts";
import { newOwner, ownerText, parseOwner, standing, type Owner } from "./owner.ts";
import { forget, linkNew, writeAll } from "./write-bytes.ts";
import { codeOf, type World } from "./world.ts";
import { fileFault, shown, systemFault } from "./words.ts";
import { sha256 } from "./fingerprint.ts";

export interface Lock {
  /** The file or folder that is locked. */
  readonly target: string;
  /** Whether the lock is still ours; it may be lost if this process stood still for long. */
  held(): boolean;
  release(): void;
}

/** A holder that does not change for 8 s stops the wait; so does a minute of one holder after another. */
const patience = { oneHolder: 8_000, all: 60_000, sayAfter: 1_000 };

/** Locks a file (which need not exist; its folder must). @throws Stop 3 */
export const acquire = async (world: World, target: string): Promise<Lock> => {
  const path = `${target}.lock`;
  const file = shown(world.cwd, target);
  const begun = world.clock();
  let holder = { text: "", since: begun, said: false };
  for (;;) {
    const seen = lookFor(world, path, file);
    if (seen === undefined) {
      const owner = tryOnce(world, path, file);
      if (owner !== undefined) return lockOf(world, target, JSON.stringify(owner));
      continue;
    }
    const now = world.clock();
    if (seen.text !== holder.text) holder = { text: seen.text, since: now, said: holder.said };
    const state = standing(world, seen.owner, seen.writtenAt);
    const who = ownerText(world, seen.owner);
    if (state !== "held") {
      if (state === "stale") world.say(`removed an old lock of ${who}: ${shown(world.cwd, path)}\n`);
      await takeOver(world, path, seen);
      continue;
    }
    if (now - holder.since > patience.oneHolder || now - begun > patience.all)
      throw new Stop(3, [fileFault("file-locked", { file, detail: who })]);
    if (!holder.said && now - begun > patience.sayAfter) {
      world.say(`waiting for ${who} to finish with ${file}\n`);
      holder = { ...holder, said: true };
    }
    await world.sleep(4 + Math.random() * 16);
  }
};

/** Locks several in the order of their names, so that two commands never wait for each other. @throws Stop 3 */
export const acquireAll = async (world: World, targets: readonly string[]): Promise<readonly Lock[]> => {
  const locks: Lock[] = [];
  try {
    for (const target of [...new Set(targets)].sort()) locks.push(await acquire(world, target));
  } catch (error) {
    releaseAll(locks);
    throw error;
  }
  return locks;
};

/** Releases in the opposite order; `before` is called ahead of each release. */
export const releaseAll = (
  locks: readonly Lock[],
  before: (target: string) => void = () => undefined,
): void => {
  for (const lock of [...locks].reverse()) {
    before(lock.target);
    lock.release();
  }
};

interface Seen {
  readonly text: string;
  readonly owner: Owner | undefined;
  readonly writtenAt: number;
}

const tryOnce = (world: World, path: string, file: string): Owner | undefined => {
  const owner = newOwner(world);
  const bytes = Buffer.from(JSON.stringify(owner));
  const temporary = join(dirname(path), `.${basename(path)}.${owner.nonce}.${String(world.pid)}.tmp`);
  try {
    const fd = world.fs.openSync(temporary, "wx");
    try {
      writeAll(world, fd, bytes, 0);
    } finally {
      world.fs.closeSync(fd);
    }
    return linkNew(world, temporary, path, bytes) ? owner : undefined;
  } catch (error) {
    const code = codeOf(error);
    if (code === undefined) throw error;
    throw new Stop(3, [systemFault(file, "locked for writing", code)]);
  } finally {
    forget(world, temporary);
  }
};

/** What stands in a lock now; undefined if there is none. A lock that cannot be read has an unknown owner.
 *  @throws the system's error where it cannot even be told whether there is one */
const look = ({ fs }: World, path: string): Seen | undefined => {
  const entry = fs.lstatSync(path, { throwIfNoEntry: false });
  if (entry === undefined) return undefined;
  try {
    const fd = fs.openSync(path, "r");
    try {
      const start = new Uint8Array(4096);
      const count = fs.readSync(fd, start, 0, start.length, 0);
      const text = Buffer.from(start.subarray(0, count)).toString("utf8");
      return { text, owner: parseOwner(text), writtenAt: fs.fstatSync(fd).mtimeMs };
    } finally {
      fs.closeSync(fd);
    }
  } catch (error) {
    return codeOf(error) === "ENOENT" ? undefined : { text: "", owner: undefined, writtenAt: entry.mtimeMs };
  }
};

/** @throws Stop 3 */
const lookFor = (world: World, path: string, file: string): Seen | undefined => {
  try {
    return look(world, path);
  } catch (error) {
    const code = codeOf(error);
    throw code === undefined ? error : new Stop(3, [systemFault(file, "locked for writing", code)]);
  }
};

const takeOver = async (world: World, path: string, seen: Seen): Promise<void> => {
  const name = sha256(`${seen.text} ${String(seen.writtenAt)}`).slice(0, 12);
  const guard = await acquire(world, `${path}-${name}`);
  try {
    const now = look(world, path);
    if (now?.text === seen.text && now.writtenAt === seen.writtenAt) world.fs.unlinkSync(path);
  } catch (error) {
    const code = codeOf(error);
    if (code === undefined) throw error;
    throw new Stop(3, [systemFault(shown(world.cwd, path), "removed", code)]);
  } finally {
    guard.release();
  }
};

const lockOf = (world: World, target: string, text: string): Lock => {
  const held = (): boolean => {
    try {
      return look(world, `${target}.lock`)?.text === text;
    } catch {
      return false;
    }
  };
  return {
    target,
    held,
    release: () => {
      if (held()) forget(world, `${target}.lock`);
    },
  };
};
