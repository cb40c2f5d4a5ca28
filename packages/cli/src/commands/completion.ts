// completion: teaches a shell to finish words, and tells it what can stand next on a line.

import { nearest } from "@sealtrend/core/parts";
import type { Answer, Args, Command } from "../command.ts";
import type { Io } from "../io.ts";
import { knownNames } from "../logbook/known-names.ts";
import { nodeWorld } from "../logbook/world.ts";
import { candidates } from "../options/candidates.ts";
import { commonOptions } from "../options/common.ts";
import { lookupOf } from "../options/lookup.ts";
import { scan } from "../options/scan.ts";
import { clean } from "../render/clean.ts";
import { completionScript, shells } from "../render/completion.ts";
import { usage } from "./usage.ts";

/** @param table - every command, this one too, once all are known */
export const completionOf = (table: () => readonly Command[]): Command => ({
  name: "completion",
  summary: "lines that teach your shell to finish commands, options and names of engines",
  examples: [
    "sealtrend completion bash",
    "sealtrend completion zsh",
    "sealtrend completion fish",
    "sealtrend completion powershell",
  ],
  positionals: [
    {
      name: "SHELL",
      help: `${shells.slice(0, -1).join(", ")} or ${shells.at(-1) ?? ""}; the first lines printed say where they go`,
      need: "any",
      choices: shells,
    },
  ],
  options: [{ name: "line", help: "what the shell asks: what can come next after the words behind --" }],
  run: (args, io) => (args.flag("line") ? next(args.positionals, io, table()) : script(args)),
});

const next = (words: readonly string[], io: Io, table: readonly Command[]): Promise<Answer> => {
  const found = candidates(words, table, knownNames(nodeWorld(io), typedLogbook(words)));
  const lines = found.map(({ word, about }) => (about === "" ? word : `${word}\t${clean(about)}`));
  return Promise.resolve({
    exit: 0,
    text: lines.map((line) => `${line}\n`).join(""),
    json: { schema: "sealtrend/completion@1", candidates: found },
  });
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

const typedLogbook = (words: readonly string[]): string | undefined =>
  scan(words, lookupOf(commonOptions)).uses.find(({ option }) => option?.name === "logbook")?.words[0];
