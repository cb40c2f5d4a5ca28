// Which word of the command line belongs to which option. The rules, in the order they are tried:
// after `--` every word stands alone; a word that starts with `--`, or with `-` and a letter, is an option;
// a flag takes nothing; `--name=value` takes what follows the sign, whatever it is; any other option takes
// the next word unless that starts with `--` or is a short option of the command, so `--temp -5C` is whole;
// a list goes on for as long as the words look like readings (reading-word.ts).

import { nearest } from "@sealtrend/core/parts";
import type { Option } from "../command.ts";
import { kindOf, type Lookup } from "./lookup.ts";
import { isReadingWord } from "./reading-word.ts";

/** One use of an option. */
export interface Use {
  /** As typed, without `=value`. */
  readonly typed: string;
  /** Absent when no option has this name. */
  readonly option: Option | undefined;
  /** Its values, as typed. */
  readonly words: readonly string[];
  /** The word that stood where a value was due. */
  readonly instead: string | undefined;
  /** Index after its last word. */
  readonly end: number;
}

export interface Word {
  readonly word: string;
  /** Index on the command line. */
  readonly at: number;
}

export interface Scan {
  readonly uses: readonly Use[];
  /** The words that belong to no option, in order. */
  readonly words: readonly Word[];
}

export const scan = (line: readonly string[], lookup: Lookup): Scan => {
  const uses: Use[] = [];
  const words: Word[] = [];
  const open = beforeDashes(line);
  let at = 0;
  while (at < open.length) {
    const word = open[at] ?? "";
    if (isOptionWord(word)) {
      const use = useAt(open, at, lookup);
      uses.push(use);
      at = use.end;
    } else {
      words.push({ word, at });
      at += 1;
    }
  }
  const after = open.length + 1;
  line.slice(after).forEach((word, i) => words.push({ word, at: after + i }));
  return { uses, words };
};

/** The words before `--`, among which options can stand. */
export const beforeDashes = (line: readonly string[]): readonly string[] =>
  line.includes("--") ? line.slice(0, line.indexOf("--")) : line;

const isOptionWord = (word: string): boolean =>
  word.startsWith("--") || (word.startsWith("-") && /^-\p{L}/u.test(word));

const useAt = (line: readonly string[], at: number, lookup: Lookup): Use => {
  const word = line[at] ?? "";
  const sign = word.indexOf("=");
  const typed = sign === -1 ? word : word.slice(0, sign);
  const given = sign === -1 ? [] : [word.slice(sign + 1)];
  const option = lookup.get(typed);
  const taken = wordsTaken(line, at + 1, { given, lookup, kind: kindTyped(typed, option, lookup) });
  const end = at + 1 + taken.length;
  return { typed, option, words: [...given, ...taken], instead: line[end], end };
};

type Taking = "flag" | "one" | "list" | "unknown";

/** An unknown option takes what its nearest namesake would, else only readings. */
const kindTyped = (typed: string, option: Option | undefined, lookup: Lookup): Taking => {
  const meant = option ?? lookup.get(nearest(typed, [...lookup.keys()])[0] ?? "");
  return meant === undefined ? "unknown" : kindOf(meant);
};

const wordsTaken = (
  line: readonly string[],
  from: number,
  {
    given,
    lookup,
    kind,
  }: { readonly given: readonly string[]; readonly lookup: Lookup; readonly kind: Taking },
): readonly string[] => {
  if (kind === "flag" || (kind === "one" && given.length > 0)) return [];
  const isValue = (word: string): boolean => !word.startsWith("--") && !lookup.has(word);
  let to = from;
  for (const word of line.slice(from)) {
    const first = to === from && given.length === 0 && kind !== "unknown";
    if (!isValue(word) || !(first || (kind !== "one" && isReadingWord(word)))) break;
    to += 1;
  }
  return line.slice(from, to);
};
