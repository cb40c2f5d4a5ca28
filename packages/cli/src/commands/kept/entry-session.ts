// What is typed on a terminal, kept after every answer until it is saved.

import type { Args, Option } from "../../command.ts";
import type { Io } from "../../io.ts";
import {
  type EntryPlace,
  type KeptEntry,
  dropEntries,
  keepEntry,
  newEntryPath,
} from "../../logbook/unfinished.ts";
import type { Unfinished } from "../../logbook/unfinished-text.ts";
import type { World } from "../../logbook/world.ts";
import { prose } from "../../render/prose.ts";
import { optionsTyped } from "./kept-options.ts";

export interface Session {
  /** The command line, with the options of the entry that is gone on with. */
  readonly args: Args;
  /** What was answered before; empty where the entry is new. */
  readonly answers: Unfinished["answers"];
  /** Keeps what is answered so far. */
  keep(answers: Unfinished["answers"]): void;
  /** Whether something is kept. */
  isKept(): boolean;
  /** Runs what writes the logbook; once it has, nothing is kept any more. */
  save<T>(write: () => Promise<T>): Promise<T>;
  /** Drops what is kept: the person ended without anything to save. */
  drop(): void;
}

export interface Begun {
  readonly world: World;
  readonly place: EntryPlace;
  readonly cylinders: readonly string[];
  /** The options that are kept with the entry. */
  readonly options: readonly Option[];
  readonly say: (lines: readonly string[]) => void;
}

interface Opened {
  readonly io: Io;
  readonly args: Args;
  readonly day: string;
  /** The entry that is gone on with. */
  readonly chosen: KeptEntry | undefined;
  /** What is dropped once this entry is saved. */
  readonly passed: readonly string[];
}

export const sessionOf = (
  { world, place, cylinders, options, say }: Begun,
  { io, args, day, chosen, passed }: Opened,
): Session => {
  const begun = chosen?.entry.begun ?? io.now();
  const path = chosen?.path ?? newEntryPath(world, place, begun);
  const own = path === undefined ? [] : [path];
  let answers = chosen?.entry.answers ?? [];
  let why = path === undefined ? "no folder for it is known" : undefined;
  let isSaid = false;
  const write = (stage: Unfinished["stage"]): void => {
    if (answers.length === 0 || path === undefined) return;
    why = keepEntry(world, path, { cylinders, begun, day, ...optionsTyped(args, options), answers, stage });
  };
  // from now on it is this process's own
  if (chosen !== undefined) write("typing");
  return {
    args,
    answers,
    isKept: () => answers.length > 0 && why === undefined,
    keep: (given) => {
      answers = given;
      if (given.length === 0) dropEntries(world, own);
      write("typing");
      if (why === undefined || isSaid) return;
      isSaid = true;
      say(prose(`should you leave before the end, what you type cannot be kept: ${why}`, io.width));
    },
    save: async (toLogbook) => {
      write("saving");
      try {
        const written = await toLogbook();
        dropEntries(world, [...own, ...passed]);
        return written;
      } catch (error) {
        write("typing");
        throw error;
      }
    },
    drop: () => dropEntries(world, [...own, ...passed]),
  };
};
