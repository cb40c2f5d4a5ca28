// The engines of one logbook, or of a folder of logbooks, one after the other.

import { basename, dirname, join } from "node:path";
import { type Problem, type YardChoices, readEngineRecord, yardRow } from "@sealtrend/core/parts";
import { type Fault, Stop } from "../command.ts";
import { bareFolders, engineIds, refusedAsides, refusedFolders } from "../logbook/engine-id.ts";
import { type Logbook, engineFiles, openLogbook } from "../logbook/open-logbook.ts";
import { recordAsOf } from "../logbook/record-as-of.ts";
import { isFolder, isThere } from "../logbook/inside.ts";
import { shown, systemFault } from "../logbook/words.ts";
import { typedLine } from "../options/quote.ts";
import { usageFault } from "../commands/usage.ts";
import { type World, codeOf } from "../logbook/world.ts";
import type { UnreadBook, YardAnswer } from "./answer-job.ts";
import { type Shard, isOfShard } from "./shard.ts";

export interface YardBooks {
  /** Of the engines that are answered for, in order. */
  readonly engines: readonly { readonly name: string; answer(): YardAnswer }[];
  /** Logbooks of a folder that cannot be read at all. */
  readonly unread: readonly UnreadBook[];
  /** Why there is no engine. */
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
  const { books, asides } = folder === undefined ? { books: [], asides: [] } : bookFolders(world, folder);
  if (books.length === 0) return booksOf(await openLogbook(world, "read", folder ?? option), "", choices);
  const all: YardBooks[] = [{ ...nothing, asides }];
  for (const name of books) all.push(await oneOf(world, join(folder ?? "", name), name, choices));
  return {
    engines: all.flatMap(({ engines }) => engines),
    unread: all.flatMap(({ unread }) => unread),
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
    return booksOf(await openLogbook(world, "read", folder), `${name}/`, choices);
  } catch (error) {
    if (!(error instanceof Stop)) throw error;
    if (!isOfShard(`${name}/`, choices.shard)) return nothing;
    return { ...nothing, unread: [{ logbook: name, problems: error.faults }] };
  }
};

const nothing: YardBooks = { engines: [], unread: [], problems: [], asides: [] };

/** The logbooks in a folder that is none itself; one that nobody may look into is told and passed over. */
const bookFolders = (
  world: World,
  folder: string,
): { readonly books: readonly string[]; readonly asides: readonly string[] } => {
  if (isBook(world, folder)) return { books: [], asides: [] };
  const [books, asides]: [string[], string[]] = [[], []];
  for (const name of [...world.fs.readdirSync(folder)].sort()) {
    const inner = join(folder, name);
    try {
      if (isFolder(world, inner) && (isBook(world, inner) || isStrangeBook(world, inner))) books.push(name);
    } catch (error) {
      const code = codeOf(error);
      if (code === undefined) throw error;
      asides.push(`${systemFault(shown(world.cwd, inner), "read", code).found}; it is passed over`);
    }
  }
  return { books, asides };
};

const isBook = (world: World, folder: string): boolean =>
  isThere(world, join(folder, "logbook.json")) || engineIds(world, folder).length > 0;

/** Whether it holds engines of which none can be read as it stands. */
const isStrangeBook = (world: World, folder: string): boolean =>
  [refusedFolders, bareFolders].some((of) => of(world, folder).length > 0);

const booksOf = (logbook: Logbook, before: string, choices: BookChoices): YardBooks => {
  const { world, root, ids, asides } = logbook;
  const engines = enginesOf(logbook, before, choices);
  const refused = refusedFolders(world, root);
  const isForNames = refused.length > 0 && ids.length === 0 && bareFolders(world, root).length === 0;
  if (isForNames) return { engines, unread: [], problems: refused.map(({ fault }) => fault), asides };
  return { engines, unread: [], problems: [], asides: [...asides, ...refusedAsides(refused)] };
};

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
