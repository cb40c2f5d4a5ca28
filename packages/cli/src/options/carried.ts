// The options that a printed command must repeat to work when it is typed: `--logbook`, wherever it was typed.

import type { Command } from "../command.ts";
import { displayWidth } from "../render/width.ts";
import { quoted } from "./quote.ts";
import { beforeDashes } from "./scan.ts";

export interface Carried {
  /** On a screen: a line that gets too long for it is broken before the command, which stays whole. */
  text(text: string, width: number): string;
  /** The same in every text of a document. */
  inDocument(value: unknown): unknown;
}

/** Puts what must be repeated behind the name of every command in a text; undefined where nothing must be.
 *  @param typed - the words after the program's name  @param table - the commands there are */
export const carriedOf = (typed: readonly string[], table: readonly Command[]): Carried | undefined => {
  const folder = folderTyped(beforeDashes(typed));
  if (folder === undefined) return undefined;
  const option = folder.startsWith("-") ? `--logbook=${quoted(folder)}` : `--logbook ${quoted(folder)}`;
  const names = table.map(({ name }) => name).sort((a, b) => b.length - a.length);
  const words = names.map((name) => name.replaceAll(" ", "\\s+")).join("|");
  const command = new RegExp(`\\bsealtrend\\s+(?:${words})(?![\\w-])(?![^\\n;]*--logbook)`, "g");
  const carry = (text: string): string => text.replace(command, (begins) => `${begins} ${option}`);
  const inDocument = (value: unknown): unknown => {
    if (typeof value === "string") return carry(value);
    if (Array.isArray(value)) return value.map(inDocument);
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, inDocument(one)]));
  };
  return {
    text: (text, width) =>
      carry(text)
        .split("\n")
        .map((line) => (line.includes(option) ? fitted(line, width) : line))
        .join("\n"),
    inDocument,
  };
};

const folderTyped = (words: readonly string[]): string | undefined => {
  const at = words.findIndex((word) => /^--logbook(?:=|$)/.test(word));
  const folder = words[at]?.startsWith("--logbook=") === true ? words[at].slice(10) : words[at + 1];
  return at < 0 || folder === "" ? undefined : folder;
};

/** Blanks between columns give way first; then the command gets a line of its own. */
const fitted = (line: string, width: number): string => {
  if (displayWidth(line) <= width) return line;
  const [, lead = "", gap = "", command = ""] = /^(.*?\S)(\s+)(\(?sealtrend\s.*)$/.exec(line) ?? [];
  if (command === "") return line;
  const room = width - displayWidth(lead) - displayWidth(command);
  if (gap.length > 2 && room >= 2) return lead + " ".repeat(room) + command;
  const indent = " ".repeat(Math.max(2, displayWidth(/^\s*/.exec(line)?.[0] ?? "")));
  return `${lead}\n${indent}${command}`;
};
