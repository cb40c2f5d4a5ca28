// The engines of one logbook, or of a folder of logbooks, one after the other.

import { basename, dirname, join } from "node:path";
import { type Problem, type YardChoices, readEngineRecord, yardRow } from "@sealtrend/core/parts";
import { type Fault, Stop } from "../command.ts";
import { bareFolders, engineIds, refusedFolders } from "../logbook/engine-id.ts";
import { type Logbook, engineFiles, openLogbook } from "../logbook/open-logbook.ts";
import { recordAsOf } from "../logbook/record-as-of.ts";
import { isThere } from "../logbook/inside.ts";
import { asSaid, shown } from "../logbook/words.ts";
import { typedLine } from "../options/quote.ts";
import { usageFault } from "../commands/usage.ts";
import type { World } from "../logbook/world.ts";
import type { YardAnswer } from "./answer-job.ts";
import { type Shard, isOfShard } from "./shard.ts";

export interface YardBooks {
  /** Of the engines that are answered for, in order. */
  readonly engines: readonly { readonly name: string; answer(): YardAnswer }[];
  /** Faults of logbooks that cannot be opened at all. */
  readonly problems: readonly (Problem | Fault)[];
  readonly asides: readonly string[];
}

export interface BookChoices extends YardChoices {
  readonly asOf?: string;
  readonly shard?: Shard;
}

/** @param folder - of the logbook, or of logbooks; absent: the logbook that is found as usual */
export const yardBooks = async (
  world: World,
  folder: string | undefined,
  choices: BookChoices,
  option?: string,
): Promise<YardBooks> => {
  if (folder !== undefined && isThere(world, join(folder, "engine.json"))) throw oneEngine(world, folder);
  const books = folder === undefined ? [] : bookFolders(world, folder);
  if (books.length === 0) {
    const logbook = await openLogbook(world, "read", folder ?? option);
    return { engines: enginesOf(logbook, "", choices), problems: [], asides: asidesOf(logbook) };
  }
  const all: YardBooks[] = [];
  for (const name of books) all.push(await oneOf(world, join(folder ?? "", name), name, choices));
  return {
    engines: all.flatMap(({ engines }) => engines),
    problems: all.flatMap(({ problems }) => problems),
    asides: [...new Set(all.flatMap(({ asides }) => asides))],
  };
};

/** The folder of an engine is no logbook of one. */
const oneEngine = (world: World, folder: string): Stop => {
  const mend = typedLine(["show", basename(folder), "--logbook", shown(world.cwd, dirname(folder))]);
  const found = `${shown(world.cwd, folder)} is the folder of one engine`;
  return new Stop(2, [usageFault("yard-one-engine", found, "a logbook, or a folder of logbooks", mend)]);
};

const oneOf = async (
  world: World,
  folder: string,
  name: string,
  choices: BookChoices,
): Promise<YardBooks> => {
  try {
    const logbook = await openLogbook(world, "read", folder);
    return { engines: enginesOf(logbook, `${name}/`, choices), problems: [], asides: asidesOf(logbook) };
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    return { engines: [], problems: error.faults, asides: [] };
  }
};

/** The logbooks in a folder that is none itself. */
const bookFolders = (world: World, folder: string): readonly string[] => {
  if (isBook(world, folder)) return [];
  return world.fs
    .readdirSync(folder)
    .filter((name) => isFolder(world, join(folder, name)) && isBook(world, join(folder, name)))
    .sort();
};

const isFolder = ({ fs }: World, path: string): boolean =>
  fs.statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;

const isBook = (world: World, folder: string): boolean =>
  isThere(world, join(folder, "logbook.json")) || engineIds(world, folder).length > 0;

const asidesOf = ({ asides, world, root }: Logbook): readonly string[] => [
  ...asides,
  ...refusedFolders(world, root).map(({ fault }) => asSaid(fault)),
];

const enginesOf = (logbook: Logbook, before: string, { asOf, shard, ...choices }: BookChoices) => {
  const bare = new Map(
    bareFolders(logbook.world, logbook.root).map(({ name, fault }) => [name, fault] as const),
  );
  return [...logbook.ids, ...bare.keys()]
    .sort()
    .filter((id) => isOfShard(before + id, shard))
    .map((id) => {
      const name = before + id;
      const fault = bare.get(id);
      const answer = (): YardAnswer =>
        fault === undefined
          ? answerOf(logbook, id, name, { asOf, choices })
          : { engine: name, problems: [fault] };
      return { name, answer };
    });
};

const answerOf = (
  logbook: Logbook,
  id: string,
  name: string,
  { asOf, choices }: { readonly asOf: string | undefined; readonly choices: YardChoices },
): YardAnswer => {
  try {
    const cautions: Fault[] = [];
    const { record, problems } = readEngineRecord(
      engineFiles(logbook, id, cautions),
      logbook.gauges,
      logbook.facts,
    );
    const all = [...cautions, ...problems];
    const isFaulty = all.some(({ severity }) => severity === "error");
    if (record === undefined || isFaulty) return { engine: name, problems: all };
    return {
      engine: name,
      row: { ...yardRow(recordAsOf(record, asOf), choices), engine: name },
      problems: all,
    };
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    return { engine: name, problems: error.faults };
  }
};
