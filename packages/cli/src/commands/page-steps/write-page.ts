// Writes a page, whole or not at all: beside its place first, then under its name.

import { dirname } from "node:path";
import { Stop } from "../../command.ts";
import { isThere } from "../../logbook/inside.ts";
import { fileFault, shown, systemFault } from "../../logbook/words.ts";
import { type World, codeOf } from "../../logbook/world.ts";
import { flushFolder, forget, linkNew, writeTemporary } from "../../logbook/write-bytes.ts";
import { usage } from "../usage.ts";

/** @param over - whether an existing page may be replaced  @throws Stop 2 where the name is taken, 3 where it cannot be written */
export const writePage = (world: World, path: string, text: string, over: "refused" | "allowed"): number => {
  const bytes = Buffer.from(text);
  const file = shown(world.cwd, path);
  try {
    if (over === "refused" && isThere(world, path)) throw taken(file);
    if (isThere(world, path) && !world.fs.lstatSync(path).isFile())
      throw new Stop(3, [fileFault("file-not-regular", { file })]);
    const temporary = writeTemporary(world, path, bytes);
    try {
      if (over === "allowed") world.fs.renameSync(temporary, path);
      else if (!linkNew(world, temporary, path, bytes)) throw taken(file);
    } finally {
      forget(world, temporary);
    }
    flushFolder(world, dirname(path));
  } catch (error) {
    const code = codeOf(error);
    if (code === undefined) throw error;
    throw new Stop(3, [systemFault(file, "written", code)]);
  }
  return bytes.length;
};

const taken = (file: string): Stop =>
  usage(
    "page-there",
    `${file} is already there`,
    "a new name: no page is written over a file unasked",
    "choose another name, or add --force",
  );
