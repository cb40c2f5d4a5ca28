// Puts a new version of a file in the place of the old one, so that at every moment the whole old or the whole new file
// stands there.

import { dirname } from "node:path";

import { sha256 } from "./fingerprint.ts";
import { largestFile, readRaw } from "./read-file.ts";
import { codeOf, type World } from "./world.ts";
import { flushFolder, forget, writeTemporary } from "./write-bytes.ts";

/** @param before - SHA-256 of the file as it was read  @returns false if the file is another one now */
export const replaceBytes = async (
  world: World,
  path: string,
  before: string,
  bytes: Uint8Array,
): Promise<boolean> => {
  const { fs } = world;
  fs.closeSync(fs.openSync(path, "r+")); // a rename would go past the file's own rights
  const temporary = writeTemporary(world, path, bytes, fs.statSync(path));
  try {
    const now = readRaw(world, path, largestFile);
    if (now === undefined || sha256(now.bytes) !== before) {
      forget(world, temporary);
      return false;
    }
    await rename(world, temporary, path);
  } catch (error) {
    forget(world, temporary);
    throw error;
  }
  flushFolder(world, dirname(path));
  return true;
};

/** Windows refuses while a scanner or an indexer looks at the file: tried again for about 2 s, there only. */
const rename = async (world: World, from: string, to: string): Promise<void> => {
  for (let pause = 10; ; pause *= 2) {
    try {
      world.fs.renameSync(from, to);
      return;
    } catch (error) {
      const passing = ["EPERM", "EACCES", "EBUSY"].includes(codeOf(error) ?? "");
      if (world.platform !== "win32" || !passing || pause > 1_280) throw error;
      await world.sleep(pause);
    }
  }
};
