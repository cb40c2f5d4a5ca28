// Writes a page, whole or not at all: beside its place first, then under its name.

import { dirname } from "node:path";
import { Stop } from "../../command.ts";
import { utf8 } from "../../logbook/encoding.ts";
import { isThere } from "../../logbook/inside.ts";
import { fileFault, shown, systemFault } from "../../logbook/words.ts";
import { type World, codeOf } from "../../logbook/world.ts";
import { flushFolder, forget, linkNew, sweep, writeTemporary } from "../../logbook/write-bytes.ts";
import { quoted } from "../../options/quote.ts";
import { usage } from "../usage.ts";

/** @param over - whether an existing page may be replaced  @throws Stop 2 where the name is taken, 3 where it cannot be written */
export const writePage = (world: World, path: string, text: string, over: "refused" | "allowed"): number => {
  const bytes = utf8(text);
  const file = shown(world.cwd, path);
  try {
    const entry = world.fs.lstatSync(path, { throwIfNoEntry: false });
    if (entry?.isSymbolicLink() === true) throw linked(file);
    if (entry !== undefined && !entry.isFile()) throw new Stop(3, [fileFault("file-not-regular", { file })]);
    if (over === "refused" && entry !== undefined) throw taken(file);
    if (!isThere(world, dirname(path))) throw folderless(shown(world.cwd, dirname(path)), file);
    sweep(world, dirname(path)); // what a kill left of an earlier page
    const temporary = writeTemporary(world, path, bytes);
    try {
      if (over === "allowed") world.fs.renameSync(temporary, path);
      else if (!linkNew(world, temporary, path, bytes)) throw taken(file);
    } finally {
      forget(world, temporary);
    }
  } catch (error) {
    const code = codeOf(error);
    if (code === undefined) throw error;
    throw new Stop(3, [systemFault(file, "written", code)]);
  }
  makeLasting(world, dirname(path));
  return bytes.length;
};

/** A page is no record and can be made again: it is there, whether its name outlives a power cut or not. */
const makeLasting = (world: World, folder: string): void => {
  try {
    flushFolder(world, folder);
  } catch (error) {
    if (codeOf(error) === undefined) throw error;
  }
};

const taken = (file: string): Stop =>
  usage(
    "page-there",
    `${file} is already there`,
    "a new name: no page is written over a file unasked",
    "choose another name, or add --force",
  );

const linked = (file: string): Stop =>
  usage(
    "page-link",
    `${file} is a link to another file`,
    "a name of its own: no page is written through a link, and none takes its place",
    `choose another name, or remove the link first: rm ${quoted(file)}`,
    3,
  );

const folderless = (folder: string, file: string): Stop =>
  usage(
    "page-no-folder",
    `${file} could not be written: there is no folder ${folder}`,
    "a folder that is there",
    `make it, then run the command again: mkdir -p ${quoted(folder)}`,
    3,
  );
