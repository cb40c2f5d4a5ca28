// completion: teaches a shell to finish words, and tells it what can stand next on a line.

import { engineFields, nearest } from "@sealtrend/core/parts";
import { type Answer, type Args, type Command, Stop } from "../command.ts";
import type { Io } from "../io.ts";
import { type Logbook, openLogbook, pickEngine, readRecord } from "../logbook/open-logbook.ts";
import { nodeWorld } from "../logbook/world.ts";
import { type Known, type NamesOf, candidates } from "../options/candidates.ts";
import { commonOptions } from "../options/common.ts";
import { lookupOf } from "../options/lookup.ts";
import { scan } from "../options/scan.ts";
import { clean } from "../render/clean.ts";
import { completionScript, shells } from "../render/completion.ts";
import { usage } from "./usage.ts";

/** @param table - every command, this one too, once all are known */
export const completionOf = (table: () => readonly Command[]): Command => ({
  name: "completion",
  summary: "what teaches your shell to finish commands, options and names of engines",
  examples: [
    "sealtrend completion bash",
    "sealtrend completion zsh",
    "sealtrend completion fish",
    "sealtrend completion powershell",
    "sealtrend completion --line -- show tra",
  ],
  positionals: [
    {
      name: "SHELL",
      help: `${shells.join(", ")}; the lines that are told say where they go`,
      need: "any",
      choices: shells,
    },
  ],
  options: [{ name: "line", help: "for the shell: what can come next after the words behind --" }],
  run: async (args, io) => (args.flag("line") ? next(args.positionals, io, table()) : script(args)),
});

const next = async (words: readonly string[], io: Io, table: readonly Command[]): Promise<Answer> => {
  const found = candidates(words, table, await namesFor(words, io));
  const lines = found.map(({ word, about }) => (about === "" ? word : `${word}\t${clean(about)}`));
  return {
    exit: 0,
    text: lines.map((line) => `${line}\n`).join(""),
    json: { schema: "sealtrend/completion@1", candidates: found },
  };
};

const script = ({ positionals }: Args): Promise<Answer> => {
  const [typed = "", ...more] = positionals;
  const shell = shells.find((one) => one === typed);
  if (shell === undefined || more.length > 0) {
    const found =
      positionals.length === 0 ? "no shell is named" : `"${positionals.join(" ")}" is no shell known here`;
    const near = nearest(typed, shells)[0] ?? "bash";
    throw usage("word-unknown", found, `one of: ${shells.join(", ")}`, `sealtrend completion ${near}`);
  }
  const text = completionScript(shell);
  return Promise.resolve({ exit: 0, text, json: { schema: "sealtrend/completion@1", shell, script: text } });
};

/** The names a logbook knows; none where it cannot be read, for a key pressed for help is no place for faults. */
const namesFor = async (words: readonly string[], io: Io): Promise<NamesOf> => {
  const logbook = await quietly(() => openLogbook(nodeWorld(io), "read", typedLogbook(words)));
  return (kind, engine) => {
    if (kind === "fields") return Object.keys(engineFields);
    const names = logbook === undefined ? [] : namesOf(logbook, kind, engine);
    return names.filter((name) => clean(name) === name);
  };
};

const typedLogbook = (words: readonly string[]): string | undefined =>
  scan(words, lookupOf(commonOptions)).uses.find(({ option }) => option?.name === "logbook")?.words[0];

const namesOf = (
  logbook: Logbook,
  kind: Exclude<Known, "fields">,
  engine: string | undefined,
): readonly string[] => {
  if (kind === "engines") return logbook.ids;
  if (kind === "gauges") return logbook.gauges.map(({ id }) => id);
  const record = quiet(() => readRecord(logbook, pickEngine(logbook, engine)));
  if (record === undefined) return [];
  if (kind === "cylinders") return record.engine.cylinders;
  return ["latest", ...record.tests.map(({ id }) => id).reverse()];
};

const quiet = <T>(read: () => T): T | undefined => {
  try {
    return read();
  } catch (error) {
    if (error instanceof Stop) return undefined;
    throw error;
  }
};

const quietly = async <T>(read: () => Promise<T>): Promise<T | undefined> => {
  try {
    return await read();
  } catch (error) {
    if (error instanceof Stop) return undefined;
    throw error;
  }
};
