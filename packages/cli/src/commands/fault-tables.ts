// Tables of causes and chances of the user's own: the sheets of a folder in place of the shipped ones.

import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { type Faults, type Problem, faultSheets, readFaults } from "@sealtrend/core/parts";
import { type Fault, Stop } from "../command.ts";
import { isThere } from "../logbook/inside.ts";
import { readFile } from "../logbook/read-file.ts";
import { fileFault, shown, systemFault } from "../logbook/words.ts";
import { type World, codeOf } from "../logbook/world.ts";
import { faultText } from "../render/faults.ts";
import { usage } from "./usage.ts";

export interface FaultTablesRead {
  readonly faults: Faults;
  /** The sheets that are the user's own. */
  readonly from: readonly string[];
  /** Said on stderr: which sheets are the user's own, and what is odd about them. */
  readonly aside: string;
}

/** The shipped sheets: beside the bundle (dist/faults), or in the sources (data/faults). */
const places = (): readonly string[] =>
  ["./faults/", "../../../../data/faults/"].map((path) => fileURLToPath(new URL(path, import.meta.url)));

/** Sheets that a folder does not hold are taken as shipped.
 *  @param dir - as typed
 *  @throws Stop 1 with every fault of every sheet, 2 where the folder holds no sheet, 3 when something cannot be read */
export const readFaultTables = (world: World, dir: string, width: number): FaultTablesRead => {
  const folder = resolve(world.cwd, dir);
  const tables = namesIn(world, folder).filter((name) => /\.csv$/i.test(name));
  const from = faultSheets.filter((name) => tables.includes(name));
  const place = shippedPlace(world);
  if (from.length === 0) throw noSheet(shown(world.cwd, folder), place);
  const files = tables.map((name) => ({ name, ...readFile(world, join(folder, name)) }));
  const rest = faultSheets.filter((name) => !from.includes(name));
  const outcome = readFaults({
    ...Object.fromEntries(rest.map((name) => [name, readFile(world, join(place, name)).text])),
    ...Object.fromEntries(files.map(({ name, text }) => [name, text])),
  });
  const placeOf = (name: string): string =>
    rest.includes(name) ? `${name} (as shipped)` : shown(world.cwd, join(folder, name));
  const placed = (problems: readonly Problem[]): readonly Fault[] =>
    problems.map((problem) => ({
      ...problem,
      file: placeOf(problem.file ?? ""),
      mend: problem.mend + whereShipped(problem, { rest, place }),
    }));
  if (!outcome.ok) throw new Stop(1, placed(outcome.problems));
  const cautions = [...files.flatMap((file) => file.cautions), ...placed(outcome.cautions)];
  const said = `causes by the tables in ${shown(world.cwd, folder)}: ${ownSheets(from, rest)}\n`;
  return { faults: outcome.value, from, aside: faultText(cautions, width) + said };
};

/** Where the shipped sheets stand, behind a mend that asks for them. */
const whereShipped = (
  { code, mend }: Problem,
  { rest, place }: { readonly rest: readonly string[]; readonly place: string },
): string => {
  if (mend.includes("from the shipped")) return ` (it is in ${place})`;
  const isNeeded = code === "cause-rows-missing" && rest.length > 0;
  return isNeeded ? `; first copy the sheets that your folder lacks from ${place}` : "";
};

/** The shorter of two lists: what is the user's own, or what is not. */
const ownSheets = (own: readonly string[], rest: readonly string[]): string => {
  if (rest.length === 0) return `all ${String(own.length)} sheets`;
  return own.length <= rest.length
    ? `${own.join(", ")}; the other ${String(rest.length)} as shipped`
    : `all sheets but ${rest.join(", ")}, as shipped`;
};

const namesIn = (world: World, folder: string): readonly string[] => {
  const file = shown(world.cwd, folder);
  try {
    return [...world.fs.readdirSync(folder)].sort();
  } catch (error) {
    const code = codeOf(error);
    if (code === undefined) throw error;
    throw code === "ENOENT"
      ? noFolder(`there is no folder ${file}`, "look at its spelling")
      : code === "ENOTDIR"
        ? noFolder(`${file} is not a folder`, `name the folder it is in: --faults ${parentOf(world, folder)}`)
        : new Stop(3, [systemFault(file, "read", code)]);
  }
};

const noFolder = (found: string, mend: string): Stop =>
  usage("faults-no-folder", found, "a folder with sheets of causes and chances in it", mend, 3);

const parentOf = (world: World, path: string): string => {
  const parent = dirname(path);
  return parent === world.cwd ? "." : shown(world.cwd, parent);
};

/** @throws Stop 3 where this installation lacks them */
const shippedPlace = (world: World): string => {
  const place = places().find((path) => isThere(world, join(path, "causes.csv")));
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
