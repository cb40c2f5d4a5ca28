// New files and folders, whole or not at all and never over something that is there; and their removal.

import { dirname, join, relative, sep } from "node:path";

import { isThere } from "./inside.ts";
import type { World } from "./world.ts";
import { flushFolder, forget, linkNew, writeTemporary } from "./write-bytes.ts";

/** Makes a file with its folders. @returns false if the name is taken */
export const createFile = (world: World, path: string, bytes: Uint8Array): boolean => {
  makeFolder(world, dirname(path));
  const temporary = writeTemporary(world, path, bytes);
  try {
    if (!linkNew(world, temporary, path, bytes)) return false;
  } finally {
    forget(world, temporary);
  }
  try {
    flushFolder(world, dirname(path));
  } catch (error) {
    forget(world, path); // who is told that it failed finds nothing
    throw error;
  }
  return true;
};

export const removeFile = (world: World, path: string): void => {
  world.fs.unlinkSync(path);
  flushFolder(world, dirname(path));
};

/** Makes a folder and those above it, and makes their names lasting. */
export const makeFolder = (world: World, folder: string): void => {
  if (isThere(world, folder)) return;
  makeFolder(world, dirname(folder));
  world.fs.mkdirSync(folder, { recursive: true });
  flushFolder(world, dirname(folder));
};

/** Removes a folder if nothing is in it any more. */
export const removeEmptyFolder = ({ fs }: World, folder: string): void => {
  try {
    fs.rmdirSync(folder);
  } catch {
    // something of the user's is in it, or it is gone
  }
};

/** The folders that are missing on the way to a file, from the top. @param root - an existing folder above it */
export const missingFolders = (world: World, root: string, path: string): readonly string[] => {
  const names = relative(root, dirname(path)).split(sep);
  const folders = names.map((_, index) => join(root, ...names.slice(0, index + 1)));
  return folders.filter((folder) => !isThere(world, folder));
};
