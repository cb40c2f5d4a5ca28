// Does one delta to one file, or takes one back however far it came.

import { Stop } from "../command.ts";
import { appendBytes, truncate } from "./append.ts";
import { createFile, removeFile } from "./create.ts";
import { changed, inverse, kindOf, type Delta } from "./delta.ts";
import { isThere } from "./inside.ts";
import { sha256 } from "./fingerprint.ts";
import { largestFile, readRaw } from "./read-file.ts";
import { replaceBytes } from "./replace.ts";
import type { World } from "./world.ts";
import { forget, temporaryPath } from "./write-bytes.ts";
import { fileFault, shown, type FileCode } from "./words.ts";

/** Does it; the file must be as it was. @throws Stop 3, or the system's own error, with the file as it was */
export const apply = async (world: World, delta: Delta): Promise<void> => {
  const { path, at, added, before } = delta;
  const refuse = (code: FileCode, detail = ""): Stop =>
    new Stop(3, [fileFault(code, { file: shown(world.cwd, path), detail })]);
  if (before === undefined) {
    if (isThere(world, path) || !createFile(world, path, added)) throw refuse("file-exists");
    return;
  }
  const current = readRaw(world, path, largestFile);
  if (current === undefined || sha256(current.bytes) !== before) throw refuse("file-changed");
  const kind = kindOf(delta, current.size);
  const { mode, nlink } = world.fs.statSync(path);
  if ((mode & 0o222) === 0) throw refuse("file-read-only");
  if (kind === "remove") {
    removeFile(world, path);
  } else if (kind === "append") {
    if (!appendBytes(world, path, at, added)) throw refuse("file-changed");
  } else if (kind === "truncate") {
    if (!truncate(world, path, current.size, at)) throw refuse("file-changed");
  } else {
    // Writing in place would keep both names together, but could leave half a file after a kill; parting them silently
    // would leave an old copy that looks current. The owner decides.
    if (nlink > 1) throw refuse("file-hard-linked", String(nlink));
    if (!(await replaceBytes(world, path, before, changed(current.bytes, delta))))
      throw refuse("file-changed");
  }
};

/** `back`: the file is as it was before. `foreign`: somebody else has changed it, and it was left alone. */
export type Rollback = "back" | "foreign";

/** Takes a delta back, whether it was done, half done or not begun, with the unfinished file of who began it: a folder that was
 *  made for it could not go otherwise. @throws Stop 3, or the system's own error */
export const rollBack = async (world: World, delta: Delta, by: Pick<World, "pid">): Promise<Rollback> => {
  const { path, at, before, after } = delta;
  forget(world, temporaryPath(by, path));
  const bytes = readRaw(world, path, 2 * largestFile)?.bytes;
  const print = bytes === undefined ? undefined : sha256(bytes);
  if (print === before) return "back";
  if (print === after) {
    await apply(world, inverse(delta));
    return "back";
  }
  if (bytes === undefined || !isPartOf(bytes, delta)) return "foreign";
  if (before === undefined) removeFile(world, path);
  else if (!truncate(world, path, bytes.length, at)) return "foreign";
  return "back";
};

/** Whether a file is the old one with only a part of the bytes at its end written; a power cut may leave zeros there. */
const isPartOf = (bytes: Uint8Array, { at, removed, added, before }: Delta): boolean => {
  if (removed.length > 0 || bytes.length < at || bytes.length > at + added.length) return false;
  if (before !== undefined && sha256(bytes.subarray(0, at)) !== before) return false;
  return bytes.subarray(at).every((byte, index) => byte === added[index] || byte === 0);
};
