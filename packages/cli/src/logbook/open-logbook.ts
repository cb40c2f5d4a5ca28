// A logbook found and read: its own facts, its gauges, its engines. What is faulty stops the command with every fault named.

import { join } from "node:path";
import {
  type EngineFiles,
  type EngineRecord,
  type Gauge,
  type LogbookFacts,
  type NamedText,
  type Problem,
  nearest,
  readEngineRecord,
  readGauges,
  readLogbook,
} from "@sealtrend/core/parts";
import { type Fault, Stop } from "../command.ts";
import { bareFolders, engineIdFault, engineIds, refusedFolders } from "./engine-id.ts";
import { type LogbookPlace, findLogbook } from "./find-logbook.ts";
import { readFileIfThere } from "./read-file.ts";
import { asSaid, shown } from "./words.ts";
import { settle } from "./settle.ts";
import type { World } from "./world.ts";

export interface Logbook {
  readonly world: World;
  readonly root: string;
  readonly place: LogbookPlace;
  readonly facts: LogbookFacts;
  readonly gauges: readonly Gauge[];
  /** Names of the engines, in order. */
  readonly ids: readonly string[];
  /** Said on stderr with whatever the command answers. */
  readonly asides: readonly string[];
}

/** One file of a logbook as text, with the name that messages print; undefined where there is none. */
export const textOf = (world: World, path: string, cautions: Fault[]): NamedText | undefined => {
  const file = readFileIfThere(world, path);
  if (file === undefined) return undefined;
  cautions.push(...file.cautions);
  return { file: shown(world.cwd, path), text: file.text };
};

/** Finds and opens the logbook; what a killed command left half-done is taken back first. @param option - the value of --logbook
 *  @throws Stop 1 for faults in logbook.json or gauges.csv, 3 when there is nothing to read */
export const openLogbook = async (
  world: World,
  purpose: "read" | "write",
  option: string | undefined,
): Promise<Logbook> => {
  const place = findLogbook(world, purpose, option);
  const settled = await settle(world, place.root, purpose);
  const cautions: Fault[] = [];
  const own = textOf(world, join(place.root, "logbook.json"), cautions);
  const gaugeText = textOf(world, join(place.root, "gauges.csv"), cautions);
  const book =
    own === undefined ? { logbook: { demo: false }, problems: [] } : readLogbook(own.text, own.file);
  const gauges =
    gaugeText === undefined ? { gauges: [], problems: [] } : readGauges(gaugeText.text, gaugeText.file);
  stopOnErrors([...book.problems, ...gauges.problems]);
  return {
    world,
    root: place.root,
    place,
    facts: book.logbook,
    gauges: gauges.gauges,
    ids: engineIds(world, place.root),
    asides: [...(place.aside === undefined ? [] : [place.aside]), ...settled, ...cautions.map(asSaid)],
  };
};

/** @throws Stop 1 with every error among the problems; cautions pass */
export const stopOnErrors = (problems: readonly (Problem | Fault)[]): void => {
  const errors = problems.filter(({ severity }) => severity === "error");
  if (errors.length > 0) throw new Stop(1, errors);
};

/** The text of one engine's files. @throws Stop 3 when a file cannot be read */
export const engineFiles = (
  { world, root }: Pick<Logbook, "world" | "root">,
  id: string,
  cautions: Fault[] = [],
): EngineFiles => {
  const named = (name: string): NamedText | undefined => textOf(world, join(root, id, name), cautions);
  const tests = named("tests.csv");
  const services = named("services.csv");
  const notes = named("notes.csv");
  const measurements = named("measurements.csv");
  return {
    id,
    engine: named("engine.json") ?? { file: shown(world.cwd, join(root, id, "engine.json")), text: "{}" },
    ...(tests === undefined ? {} : { tests }),
    ...(services === undefined ? {} : { services }),
    ...(notes === undefined ? {} : { notes }),
    ...(measurements === undefined ? {} : { measurements }),
  };
};

/** Everything of one engine. @param cautions - gets what is worth saying of the files  @throws Stop 1 with every fault of its files */
export const readRecord = (logbook: Logbook, id: string, cautions: Fault[] = []): EngineRecord => {
  const files = engineFiles(logbook, id, cautions);
  const { record, problems } = readEngineRecord(files, logbook.gauges, logbook.facts);
  stopOnErrors(problems);
  if (record === undefined) throw new TypeError(`readRecord: ${id} has no record and no fault`);
  return record;
};

/** The engine a command is about: the one named, or the only one there is.
 *  @throws Stop 2 where none or several could be meant; a near name or a unique beginning is suggested, never taken */
export const pickEngine = (logbook: Logbook, named: string | undefined): string => {
  const { ids } = logbook;
  if (named !== undefined && ids.includes(named)) return named;
  if (named === undefined && ids.length === 1 && ids[0] !== undefined) return ids[0];
  const refused = [refusedFolders, bareFolders].flatMap((of) => of(logbook.world, logbook.root));
  const own = refused.filter(({ name }) => (named === undefined ? ids.length === 0 : name === named));
  if (own.length > 0)
    throw new Stop(
      2,
      own.map(({ fault }) => fault),
    );
  const where = shown(logbook.world.cwd, logbook.root);
  const list = ids.join(", ");
  if (named === undefined) {
    const found =
      ids.length === 0
        ? `there is no engine in ${where}`
        : `which engine: ${where} holds ${String(ids.length)}`;
    const mend =
      ids.length === 0 ? "sealtrend engine add pump --cylinders 4 --ignition spark" : `name one of: ${list}`;
    throw new Stop(2, [{ code: "engine-open", severity: "error", found, expected: "one engine", mend }]);
  }
  const begins = ids.filter((id) => id.startsWith(named.toLowerCase()));
  const near = begins.length === 1 ? begins[0] : nearest(named, ids)[0];
  const mend =
    near !== undefined
      ? `did you mean ${near}?`
      : engineIdFault(named) !== undefined
        ? `${ids.length === 0 ? "add one with sealtrend engine add" : `name one of: ${list}`}; a name begins with two small letters`
        : ids.length === 0
          ? `sealtrend engine add ${named} --cylinders 4 --ignition spark`
          : `name one of: ${list}, or: sealtrend engine add ${named} --cylinders 4 --ignition spark`;
  throw new Stop(2, [
    {
      code: "engine-unknown",
      severity: "error",
      found: `there is no engine "${named}" in ${where}`,
      expected: ids.length === 0 ? "an engine, and none is recorded yet" : `one of: ${list}`,
      mend,
    },
  ]);
};
