// The small steps every safe write is made of.

import { basename, dirname, join } from "node:path";

import { codeOf, type World } from "./world.ts";

/** Writes all bytes at a position; a disk that is nearly full writes less than asked without an error. */
export const writeAll = ({ fs }: World, fd: number, bytes: Uint8Array, position: number): void => {
  let done = 0;
  while (done < bytes.length) {
    const count = fs.writeSync(fd, bytes, done, bytes.length - done, position + done);
    if (count === 0) throw Object.assign(new Error("nothing was written"), { code: "ENOSPC" });
    done += count;
  }
};

/** Makes the names in a folder lasting. Windows has no such call; some network disks refuse it. */
export const flushFolder = ({ fs, platform }: World, folder: string): void => {
  if (platform === "win32") return;
  const fd = fs.openSync(folder, "r");
  try {
    fs.fsyncSync(fd);
  } catch (error) {
    if (!["EINVAL", "ENOTSUP", "EOPNOTSUPP"].includes(codeOf(error) ?? "")) throw error;
  } finally {
    fs.closeSync(fd);
  }
};

/** A name for the unfinished file, in the same folder so that it can be renamed: `.tests.csv.4711.tmp`. */
export const temporaryPath = ({ pid }: Pick<World, "pid">, path: string): string =>
  join(dirname(path), `.${basename(path)}.${String(pid)}.tmp`);

export interface Rights {
  readonly mode: number;
  readonly uid: number;
  readonly gid: number;
}

/** Writes a flushed temporary file beside `path`, with the rights of the file it will replace. Gives back its path. */
export const writeTemporary = (world: World, path: string, bytes: Uint8Array, rights?: Rights): string => {
  const { fs } = world;
  const temporary = temporaryPath(world, path);
  forget(world, temporary); // left by a process of the same number
  const fd = fs.openSync(temporary, "wx", rights?.mode ?? 0o666);
  try {
    try {
      writeAll(world, fd, bytes, 0);
      if (rights !== undefined) copyRights(world, fd, rights);
      fs.fsyncSync(fd);
    } finally {
      fs.closeSync(fd);
    }
  } catch (error) {
    forget(world, temporary);
    throw error;
  }
  return temporary;
};

/** Gives a file a name that must be free; true if it has it now, false if the name is taken. */
export const linkNew = (world: World, from: string, to: string, bytes: Uint8Array): boolean => {
  const { fs } = world;
  try {
    fs.linkSync(from, to);
    return true;
  } catch (error) {
    const code = codeOf(error) ?? "";
    if (code === "EEXIST") return false;
    if (!["EPERM", "EACCES", "ENOTSUP", "EOPNOTSUPP", "ENOSYS", "EMLINK", "EINVAL"].includes(code))
      throw error;
  }
  return writeExclusive(world, to, bytes); // disks without hard links: memory sticks, some network folders
};

/** Removes a file if it can; for what is only litter. */
export const forget = ({ fs }: World, path: string): void => {
  try {
    fs.unlinkSync(path);
  } catch {
    // the sweep finds it later
  }
};

const anHour = 60 * 60 * 1000;

const litter = [
  /^\..+\.(csv|json|lock|pending|html?|txt)\.(?:[0-9a-f-]{36}\.)?\d+\.tmp$/,
  /\.lock-[0-9a-f]{12}\.lock$/, // of a process killed while it removed a dead one's lock
];

/** Whether a name is that of an unfinished file of ours. */
export const isLitter = (name: string): boolean => litter.some((shape) => shape.test(name));

/** Removes unfinished files of ours older than an hour, left by a kill or a power cut. Never stands in the way. */
export const sweep = (world: World, folder: string): void => {
  const { fs } = world;
  try {
    for (const name of fs.readdirSync(folder).filter(isLitter)) {
      const path = join(folder, name);
      const { mtimeMs } = fs.lstatSync(path);
      if (world.clock() - mtimeMs > anHour) fs.unlinkSync(path);
    }
  } catch {
    // another command was faster; the next one sweeps again
  }
};

const writeExclusive = (world: World, path: string, bytes: Uint8Array): boolean => {
  const { fs } = world;
  let fd: number;
  try {
    fd = fs.openSync(path, "wx");
  } catch (error) {
    if (codeOf(error) === "EEXIST") return false;
    throw error;
  }
  try {
    writeAll(world, fd, bytes, 0);
    fs.fsyncSync(fd);
  } catch (error) {
    forget(world, path);
    throw error;
  } finally {
    fs.closeSync(fd);
  }
  return true;
};

const copyRights = ({ fs, platform }: World, fd: number, { mode, uid, gid }: Rights): void => {
  if (platform === "win32") return;
  const own = fs.fstatSync(fd);
  if (own.uid !== uid || own.gid !== gid) {
    try {
      fs.fchownSync(fd, uid, gid);
    } catch (error) {
      if (codeOf(error) !== "EPERM") throw error; // only root gives a file away
    }
  }
  fs.fchmodSync(fd, mode & 0o7777);
};
