// What can stand next on a command line, from the same table that reads it: commands, options, choices, and names that
// only a logbook knows.

import type { Command, Option, Positional, WordsBy } from "../command.ts";
import { commonOptions } from "./common.ts";
import { findCommand } from "./find-command.ts";
import { dashed, kindOf, lookupOf } from "./lookup.ts";
import { type Scan, scan } from "./scan.ts";

export interface Candidate {
  readonly word: string;
  /** What it means, in a line; empty for a name of the user's own. */
  readonly about: string;
}

export type Known = "engines" | "gauges" | "tests" | "cylinders" | "fields";

/** The names of a kind. @param engine - the engine that was named before, if any */
export type NamesOf = (kind: Known, engine: string | undefined) => readonly string[];

/** What stands for a name in the help, and where it is looked up. */
const byPlaceholder: Readonly<Record<string, Known>> = {
  ENGINE: "engines",
  ID: "tests",
  PATH: "fields",
  LABEL: "cylinders",
  LABELS: "cylinders",
};
const byOption: Readonly<Record<string, Known>> = {
  gauge: "gauges",
  "to-gauge": "gauges",
  "of-gauge": "gauges",
  cylinder: "cylinders",
};

/** The words that could stand in place of the last one, which may be empty. None = a file, or something of one's own.
 *  @param words - after the program's name; the last is the one being typed */
export const candidates = (
  words: readonly string[],
  table: readonly Command[],
  names: NamesOf,
): readonly Candidate[] => {
  const begun = (words.at(-1) ?? "").trim(); // a shell that drops empty words sends a blank
  const before = words.slice(0, -1);
  const [, option] = /^(--[^=]+)=/.exec(begun) ?? [];
  const next =
    option === undefined || before.includes("--")
      ? nextTo(before, begun, table, names)
      : nextTo([...before, option], "", table, names).map((one) => ({
          ...one,
          word: `${option}=${one.word}`,
        }));
  const seen = new Set<string>();
  return next.filter(({ word }) => word.startsWith(begun) && !seen.has(word) && seen.add(word));
};

const nextTo = (
  before: readonly string[],
  begun: string,
  table: readonly Command[],
  names: NamesOf,
): readonly Candidate[] => {
  if (before.includes("--")) return [];
  const every = lookupOf([...commonOptions, ...table.flatMap(({ options }) => options)]);
  const { words } = scan(before, every);
  const isHelp = words[0]?.word === "help";
  const found = findCommand(isHelp ? words.slice(1) : words, before, table);
  if (found.kind === "nothing") return beforeCommand(before, begun, table, { names, isHelp });
  if (found.kind === "group")
    return found.commands.map(({ name, summary }) => ({ word: name.replace(/^\S+ /, ""), about: summary }));
  if (found.kind === "fault" || isHelp) return [];
  const { command, name } = found;
  const rest = before.filter((_, at) => !name.some((word) => word.at === at));
  return afterCommand(command, rest, begun, names);
};

/** Options may stand before the command, and one of them may wait for its value. */
const beforeCommand = (
  before: readonly string[],
  begun: string,
  table: readonly Command[],
  { names, isHelp }: { readonly names: NamesOf; readonly isHelp: boolean },
): readonly Candidate[] => {
  const open = openOption(scan(before, lookupOf(commonOptions)), before.length);
  if (open !== undefined) return valuesOf(open, { names, engine: undefined, told: () => undefined });
  return begun.startsWith("-") ? options(commonOptions) : firstWords(table, isHelp);
};

/** The option at the end of what was typed that has no value yet. */
const openOption = ({ uses }: Scan, end: number): Option | undefined => {
  const last = uses.at(-1);
  const isOpen = last?.end === end && last.words.length === 0 && last.option !== undefined;
  return isOpen && kindOf(last.option) !== "flag" ? last.option : undefined;
};

/** What the words typed so far tell. */
interface Told {
  readonly names: NamesOf;
  readonly engine: string | undefined;
  readonly told: Parameters<WordsBy>[0];
}

const afterCommand = (
  command: Command,
  rest: readonly string[],
  begun: string,
  names: NamesOf,
): readonly Candidate[] => {
  const table = [...command.options, ...commonOptions];
  const scanned = scan(rest, lookupOf(table));
  const open = openOption(scanned, rest.length);
  const places = placesOf(command, scanned, names);
  const told: Told["told"] = (name) =>
    scanned.uses.findLast(({ option }) => option?.name === name)?.words.join(" ") ?? places.typed.get(name);
  const all: Told = { names, engine: told("ENGINE") ?? told("engine"), told };
  if (open !== undefined) return valuesOf(open, all);
  if (begun.startsWith("-")) {
    const used = new Set(scanned.uses.map(({ option }) => option?.name));
    return options(table.filter((option) => kindOf(option) === "list" || !used.has(option.name)));
  }
  const last = scanned.uses.at(-1);
  const goesOn = last?.end === rest.length && last.option !== undefined && kindOf(last.option) === "list";
  return [
    ...(goesOn ? valuesOf(last.option, all) : []),
    ...places.next.flatMap((at) => wordsAt(command, at, all)),
  ];
};

/** The words typed by the name of their place, and the places that the next one can take: an engine may be left out where there
 *  is only one. */
const placesOf = (
  { positionals }: Command,
  { words }: Scan,
  names: NamesOf,
): { readonly typed: ReadonlyMap<string, string>; readonly next: readonly Positional[] } => {
  const [first, second] = positionals;
  const mayLeaveOut = first?.name === "ENGINE" && first.need === "may" && second !== undefined;
  const engines = mayLeaveOut ? names("engines", undefined) : [];
  const left = words[0] !== undefined && engines.length === 1 && words[0].word !== engines[0];
  const own = left ? positionals.slice(1) : positionals;
  const typed = new Map(words.map(({ word }, i) => [own[i]?.name ?? "", word]));
  const next = own.slice(words.length, words.length + (words.length === 0 && engines.length === 1 ? 2 : 1));
  return { typed, next };
};

const wordsAt = (
  { name }: Command,
  place: Positional,
  { names, engine, told }: Told,
): readonly Candidate[] => {
  // a new gauge or engine gets a name that nobody knows yet
  const kind = name === "gauge calibrate" && place.name === "NAME" ? "gauges" : byPlaceholder[place.name];
  return plain([
    ...(place.choices ?? []),
    ...(place.wordsBy?.(told) ?? []),
    ...(kind === undefined ? [] : names(kind, engine)),
  ]);
};

const valuesOf = (option: Option, { names, engine, told }: Told): readonly Candidate[] => {
  const kind = byOption[option.name] ?? byPlaceholder[option.value ?? ""];
  const words = option.choices ?? option.words ?? [];
  return [
    ...words.map((word) => ({ word, about: option.means?.[word] ?? "" })),
    ...plain(option.wordsBy?.(told) ?? []),
    ...plain(kind === undefined ? [] : names(kind, engine)),
  ];
};

const plain = (words: readonly string[]): readonly Candidate[] => words.map((word) => ({ word, about: "" }));

const firstWords = (table: readonly Command[], isHelp: boolean): readonly Candidate[] => {
  const seen = new Map<string, string>();
  for (const { name, summary } of table) {
    const [first = name, second] = name.split(" ");
    if (!seen.has(first)) seen.set(first, second === undefined ? summary : `${first}: ${second}, and more`);
  }
  const help: Candidate[] = isHelp ? [] : [{ word: "help", about: "how a command is used" }];
  return [...[...seen].map(([word, about]) => ({ word, about })), ...help];
};

const options = (table: readonly Option[]): readonly Candidate[] =>
  table.map(({ name, help }) => ({ word: dashed(name), about: help }));
