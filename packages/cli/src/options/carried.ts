// The options that a printed command must repeat to work when it is typed: `--logbook`, wherever it was typed. A command that a
// person quotes in a note is none: it is told apart since it came in (as-theirs.ts).

import { relative, resolve } from "node:path";

import { firstCommand } from "../render/commands-whole.ts";
import { displayWidth } from "../render/width.ts";
import { quoted } from "./quote.ts";
import { beforeDashes } from "./scan.ts";

export interface Carried {
  /** On a screen: a line that gets too long for it is broken before the command, which stays whole. */
  text(text: string, width: number): string;
  /** The same in every text of a document. */
  inDocument(value: unknown): unknown;
}

/** Lines of a screen, the last of them empty. */
const screenful = 25;

/** Puts what must be repeated behind the name of every command in a text; undefined where nothing must be.
 *  @param typed - the words after the program's name  @param names - of the commands there are */
export const carriedOf = (
  typed: readonly string[],
  names: readonly string[],
  cwd: string,
): Carried | undefined => {
  const long = folderTyped(beforeDashes(typed));
  if (long === undefined) return undefined;
  const folder = shorter(long, cwd);
  const option = folder.startsWith("-") ? `--logbook=${quoted(folder)}` : `--logbook ${quoted(folder)}`;
  const longestFirst = names.toSorted((a, b) => b.length - a.length);
  const words = longestFirst.map((name) => name.replaceAll(" ", "\\s+")).join("|");
  const command = new RegExp(`\\bsealtrend\\s+(?:${words})(?![\\w-])(?![^\\n;]*--logbook)`, "g");
  const carry = (text: string): string => text.replace(command, (begins) => `${begins} ${option}`);
  const inDocument = (value: unknown): unknown => {
    if (typeof value === "string") return carry(value);
    if (Array.isArray(value)) return value.map(inDocument);
    if (typeof value !== "object" || value === null) return value;
    return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, inDocument(one)]));
  };
  return {
    text: (text, width) => {
      const lines = carry(text).split("\n");
      const fit = lines.flatMap((line) => (line.includes(option) ? fitted(line, width) : [line]));
      return onOneScreen(fit, lines.length).join("\n");
    },
    inDocument,
  };
};

/** The folder as it is typed from here, where that is shorter. */
const shorter = (folder: string, cwd: string): string => {
  const near = relative(cwd, resolve(cwd, folder)) || ".";
  return near.length < folder.length ? near : folder;
};

const folderTyped = (words: readonly string[]): string | undefined => {
  const at = words.findIndex((word) => /^--logbook(?:=|$)/.test(word));
  const folder = words[at]?.startsWith("--logbook=") === true ? words[at].slice(10) : words[at + 1];
  return at < 0 || folder === "" ? undefined : folder;
};

/** Blanks between columns give way first; then the command gets a line of its own, and what stands behind it another. */
const fitted = (line: string, width: number): readonly string[] => {
  const found = displayWidth(line) <= width ? undefined : firstCommand(line);
  if (found === undefined) return [line];
  const { before, command, after } = found;
  const lead = before.trimEnd();
  const room = width - displayWidth(lead) - displayWidth(command);
  if (after === "" && before.length > lead.length + 2 && room >= 2)
    return [lead + " ".repeat(room) + command];
  const indent = " ".repeat(Math.max(2, displayWidth(/^\s*/.exec(line)?.[0] ?? "")));
  const own = displayWidth(indent + command + after) <= width ? [command + after] : [command, after.trim()];
  const [first = "", rest = ""] = own;
  return [
    ...(lead === "" ? [] : [lead]),
    indent + first,
    ...(rest === "" ? [] : fitted(indent + rest, width)),
  ];
};

/** The lines of a screen that grew; blank ones give way as far as it needs. */
const onOneScreen = (lines: readonly string[], before: number): readonly string[] => {
  let over = before <= screenful ? lines.length - screenful : 0;
  return lines.filter((line, i) => {
    const goes = over > 0 && line === "" && i < lines.length - 1;
    if (goes) over -= 1;
    return !goes;
  });
};
