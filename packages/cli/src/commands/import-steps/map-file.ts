// The map as a file: read where it is there, laid down where it is not, and never written over.

import { dirname, resolve } from "node:path";
import { type ImportMap, type Place, readImportMap, writeImportMap } from "@sealtrend/core/parts";
import { Stop } from "../../command.ts";
import { type Encoding, encodings, utf8 } from "../../logbook/encoding.ts";
import { createFile } from "../../logbook/create.ts";
import { isThere } from "../../logbook/inside.ts";
import { readFile } from "../../logbook/read-file.ts";
import { asSaid, fileFault, shown, systemFault } from "../../logbook/words.ts";
import { type World, codeOf } from "../../logbook/world.ts";
import { usageFault } from "../usage.ts";

export interface MapFile {
  /** As messages name it. */
  readonly file: string;
  readonly map: ImportMap;
  /** Where an entry of it stands. */
  readonly place: (path: string) => Place;
  readonly encoding: Encoding | undefined;
  readonly asides: readonly string[];
}

/** The map of an existing file; undefined where the name is free. @throws Stop 1 with every fault in it, 3 where it cannot be read */
export const mapFile = (world: World, typed: string | undefined): MapFile | undefined => {
  if (typed === undefined) return undefined;
  const path = resolve(world.cwd, typed);
  if (!isThere(world, path)) return undefined;
  const { text, cautions } = readFile(world, path);
  const file = shown(world.cwd, path);
  const read = readImportMap(text, file);
  if (!read.ok) throw new Stop(1, read.problems);
  const { map } = read.value;
  const place = (entry: string): Place => read.value.place(entry);
  const asides = [...cautions, ...read.cautions].map(asSaid);
  return { file, map, place, encoding: encodingOf(map, place), asides };
};

const encodingOf = ({ encoding }: ImportMap, place: MapFile["place"]): Encoding | undefined => {
  if (encoding === undefined) return undefined;
  const known = encodings.find((name) => name === encoding);
  if (known !== undefined) return known;
  const fault = usageFault(
    "sheet-encoding",
    `the encoding "${encoding}" is not known`,
    `one of: ${encodings.join(", ")}`,
    "write one of these, or leave the entry out",
  );
  throw new Stop(1, [{ ...fault, ...place("encoding") }]);
};

/** Lays a map down under a name that is free. @returns its name as messages print it  @throws Stop 3 where it cannot be written */
export const layDown = (world: World, typed: string, map: ImportMap): string => {
  const path = resolve(world.cwd, typed);
  const file = shown(world.cwd, path);
  try {
    if (!isThere(world, dirname(path))) throw new Stop(3, [systemFault(file, "written", "ENOENT")]);
    if (!createFile(world, path, utf8(writeImportMap(map))))
      throw new Stop(3, [fileFault("file-exists", { file })]);
  } catch (error) {
    const code = codeOf(error);
    if (code === undefined) throw error;
    throw new Stop(3, [systemFault(file, "written", code)]);
  }
  return file;
};
