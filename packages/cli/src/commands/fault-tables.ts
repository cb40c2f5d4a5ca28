// Tables of causes and chances of the user's own: the sheets of a folder in place of the shipped ones.

import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { type Faults, type Problem, faultSheets, readFaults } from "@sealtrend/core";
import { type Fault, Stop } from "../command.ts";
import { isThere } from "../logbook/inside.ts";
import { readFile } from "../logbook/read-file.ts";
import { fileFault, shown, systemFault } from "../logbook/words.ts";
import { type World, codeOf } from "../logbook/world.ts";
import { faultText } from "../render/faults.ts";
import { usage } from "./usage.ts";

export interface FaultTablesRead {
  readonly faults: Faults;
  /** Said on stderr: which sheets are the user's own, and what is odd about them. */
  readonly aside: string;
}

/** The shipped sheets: beside the bundle (dist/faults), or in the sources (data/faults). */
const places = ["./faults/", "../../../../data/faults/"].map((path) =>
  fileURLToPath(new URL(path, import.meta.url)),
);

/** Sheets that a folder does not hold are taken as shipped.
 *  @param dir - as typed
 *  @throws Stop 1 with every fault of every sheet, 2 where the folder holds no sheet, 3 when something cannot be read */
export const readFaultTables = (world: World, dir: string, width: number): FaultTablesRead => {
  const folder = resolve(world.cwd, dir);
  const tables = namesIn(world, folder).filter((name) => name.endsWith(".csv"));
  const own = faultSheets.filter((name) => tables.includes(name));
  const shipped = shippedPlace(world);
  if (own.length === 0) throw noSheet(shown(world.cwd, folder), shipped);
  const files = tables.map((name) => ({ name, ...readFile(world, join(folder, name)) }));
  const rest = faultSheets.filter((name) => !own.includes(name));
  const outcome = readFaults({
    ...Object.fromEntries(rest.map((name) => [name, readFile(world, join(shipped, name)).text])),
    ...Object.fromEntries(files.map(({ name, text }) => [name, text])),
  });
  const placed = (problems: readonly Problem[]): readonly Fault[] =>
    problems.map((problem) => ({ ...problem, file: placeOf(problem.file ?? "") }));
  const placeOf = (name: string): string =>
    rest.includes(name) ? `${name} (as shipped)` : shown(world.cwd, join(folder, name));
  if (!outcome.ok) throw new Stop(1, placed(outcome.problems));
  const cautions = [...files.flatMap((file) => file.cautions), ...placed(outcome.cautions)];
  const others = rest.length === 0 ? "" : `; the other ${String(rest.length)} as shipped`;
  const said = `causes by the tables in ${shown(world.cwd, folder)}: ${own.join(", ")}${others}\n`;
  return { faults: outcome.value, aside: faultText(cautions, width) + said };
};

const namesIn = (world: World, folder: string): readonly string[] => {
  const file = shown(world.cwd, folder);
  try {
    return [...world.fs.readdirSync(folder)].sort();
  } catch (error) {
    const code = codeOf(error);
    if (code === undefined) throw error;
    throw new Stop(3, [systemFault(file, "read", code)]);
  }
};

/** @throws Stop 3 where this installation lacks them */
const shippedPlace = (world: World): string => {
  const place = places.find((path) => isThere(world, join(path, "causes.csv")));
  if (place === undefined) throw new Stop(3, [fileFault("file-missing", { file: "faults/causes.csv" })]);
  return place;
};

const noSheet = (folder: string, shipped: string): Stop =>
  usage(
    "faults-no-sheet",
    `none of the sheets of causes and chances is in ${folder}`,
    `some of: ${faultSheets.join(", ")}`,
    `copy the sheets that you want to change from ${shipped} into it`,
  );
