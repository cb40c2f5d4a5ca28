// The name of an engine is the name of its folder, on every system.

import { join } from "node:path";

import type { Fault } from "../command.ts";
import { insideRoot, isFolder, isThere } from "./inside.ts";
import { codeOf, type World } from "./world.ts";
import { asSaid, fileFault, shown } from "./words.ts";

const rule = /^[a-z][a-z][a-z0-9_-]{0,38}$/;
const devices = /^(con|prn|aux|nul|com[0-9]|lpt[0-9])$/;

/** What is wrong with the name of an engine; undefined where it is good. */
export const engineIdFault = (id: string): Fault | undefined => {
  const code = !rule.test(id) ? "engine-id" : devices.test(id) ? "engine-id-device" : undefined;
  if (code === undefined) return undefined;
  const { file: _, ...fault } = fileFault(code, { file: "", detail: id });
  return fault;
};

/** The engines of a logbook: folders with a good name and an engine.json, in order. @param root - may be missing */
export const engineIds = (world: World, root: string): readonly string[] =>
  names(world, root).filter(
    (name) => engineIdFault(name) === undefined && isThere(world, join(root, name, "engine.json")),
  );

/** Folders with an engine.json whose name cannot be that of an engine: with the fault of each. */
export const refusedFolders = (
  world: World,
  root: string,
): readonly { readonly name: string; readonly fault: Fault }[] =>
  names(world, root)
    .filter((name) => engineIdFault(name) !== undefined && isFolder(world, join(root, name)))
    .filter((name) => isThere(world, join(root, name, "engine.json")))
    .map((name) => {
      const { file: _, ...fault } = fileFault("folder-refused", {
        file: shown(world.cwd, join(root, name)),
        detail: name,
      });
      return { name, fault };
    });

/** What is said of folders with an engine.json that are not read: the first few, then their count and the rule. */
export const refusedAsides = (refused: ReturnType<typeof refusedFolders>): readonly string[] => {
  const told = refused.slice(0, mostRefused).map(({ fault }) => asSaid(fault));
  const [first] = refused;
  if (first === undefined) return [];
  const more = refused.length - told.length;
  const rest = more === 0 ? "" : `${more.toLocaleString("en-US")} more such folders are not read; `;
  return [...told, `${rest}the name of an engine's folder: ${first.fault.expected}`];
};

/** More are only counted: a logbook kept under numbers has hundreds. */
const mostRefused = 3;

/** Folders that an engine could have, with files of one but no engine.json: with the fault of each. */
export const bareFolders = (
  world: World,
  root: string,
): readonly { readonly name: string; readonly fault: Fault }[] =>
  names(world, root)
    .filter((name) => engineIdFault(name) === undefined && !isThere(world, join(root, name, "engine.json")))
    .filter((name) => engineTables.some((table) => isThere(world, join(root, name, table))))
    .map((name) => ({ name, fault: engineMissing(shown(world.cwd, join(root, name))) }));

/** @param folder - as messages name it */
export const engineMissing = (folder: string): Fault => ({
  code: "engine-missing",
  severity: "error",
  file: `${folder}/engine.json`,
  found: `there is no ${folder}/engine.json, so the files beside it are not read`,
  expected: "an engine.json that names the cylinders",
  mend: `write {"cylinders": ["1", "2"], "ignition": "spark"} into ${folder}/engine.json, with its own cylinders`,
});

/** The tables of an engine's folder. */
export const engineTables: readonly string[] = [
  "tests.csv",
  "services.csv",
  "notes.csv",
  "measurements.csv",
  "amendments.csv",
];

/** What stands in the way of a new engine: a folder or a file of that name, be it in capitals or written differently. */
export const newEngineFault = (world: World, root: string, id: string): Fault | undefined => {
  const bad = engineIdFault(id);
  if (bad !== undefined) return bad;
  const twin = names(world, root).find((name) => folded(name) === folded(id));
  if (twin === undefined) return undefined;
  const file = shown(world.cwd, join(root, twin));
  if (!isFolder(world, join(root, twin))) return fileFault("engine-id-file", { file });
  if (twin === id && !isThere(world, join(root, id, "engine.json"))) return undefined;
  return fileFault("engine-id-taken", { file, detail: id });
};

/** The real folder of an engine, existing or not. @param root - real path  @throws Stop 3 where it leads out of the logbook,
 *  RangeError for a bad name */
export const engineFolder = (world: World, root: string, id: string): string => {
  if (engineIdFault(id) !== undefined) throw new RangeError(`engineFolder: bad name ${JSON.stringify(id)}`);
  return insideRoot(world, root, id);
};

const names = ({ fs }: World, root: string): readonly string[] => {
  try {
    return [...fs.readdirSync(root)].sort();
  } catch (error) {
    if (codeOf(error) === "ENOENT") return [];
    throw error;
  }
};

const folded = (name: string): string => name.normalize("NFC").toLowerCase();
