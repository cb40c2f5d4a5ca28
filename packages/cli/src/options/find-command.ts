// The command among the words that belong to no option: one word, or two (`engine add`).

import { nearest } from "@sealtrend/core/parts";
import type { Command, Fault } from "../command.ts";
import { typedLine } from "./quote.ts";
import type { Word } from "./scan.ts";
import { usageFault } from "./usage-words.ts";

export type Found =
  | { readonly kind: "command"; readonly command: Command; readonly name: readonly Word[] }
  /** `engine` alone: the first word of several commands. */
  | { readonly kind: "group"; readonly group: string; readonly commands: readonly Command[] }
  | { readonly kind: "nothing" }
  | { readonly kind: "fault"; readonly fault: Fault };

export const findCommand = (
  words: readonly Word[],
  line: readonly string[],
  table: readonly Command[],
): Found => {
  const [first, second] = words;
  if (first === undefined) return { kind: "nothing" };
  const named = (name: string): Command | undefined => table.find((command) => command.name === name);
  const two = second === undefined ? undefined : named(`${first.word} ${second.word}`);
  if (two !== undefined && second !== undefined)
    return { kind: "command", command: two, name: [first, second] };
  const one = named(first.word);
  if (one !== undefined) return { kind: "command", command: one, name: [first] };
  const commands = table.filter(({ name }) => name.startsWith(`${first.word} `));
  if (commands.length > 0 && second === undefined) return { kind: "group", group: first.word, commands };
  return { kind: "fault", fault: unknown({ first, second }, line, table) };
};

const unknown = (
  { first, second }: { readonly first: Word; readonly second: Word | undefined },
  line: readonly string[],
  table: readonly Command[],
): Fault => {
  const names = table.map(({ name }) => name);
  const groups = names.filter((name) => name.includes(" ")).map((name) => name.replace(/ .*/, ""));
  const both = second === undefined ? [] : nearest(`${first.word} ${second.word}`, names);
  const isGroup = groups.includes(first.word);
  const near = both.length > 0 || isGroup ? both : nearest(first.word, [...new Set([...names, ...groups])]);
  const typed = second !== undefined && (both.length > 0 || isGroup) ? [first, second] : [first];
  const [meant] = near;
  const mend = meant === undefined ? "sealtrend help" : typedLine(replaced(line, typed, meant));
  return usageFault("command-unknown", typed.map(({ word }) => word).join(" "), near, mend);
};

/** The line with the words typed taken out, and those meant in place of the first. */
const replaced = (line: readonly string[], typed: readonly Word[], meant: string): readonly string[] =>
  line.flatMap((word, at) => {
    if (at === typed[0]?.at) return meant.split(" ");
    return at === typed[1]?.at ? [] : [word];
  });
