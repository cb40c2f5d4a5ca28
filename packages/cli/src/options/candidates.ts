// What can stand next on a command line, from the same table that reads it: commands, options, choices, and names that
// only a logbook knows.

import type { Command, Option } from "../command.ts";
import { commonOptions } from "./common.ts";
import { findCommand } from "./find-command.ts";
import { dashed, kindOf, lookupOf } from "./lookup.ts";
import { scan } from "./scan.ts";

export interface Candidate {
  readonly word: string;
  /** What it means, in a line; empty for a name of the user's own. */
  readonly about: string;
}

export type Known = "engines" | "gauges" | "tests" | "cylinders" | "fields";

/** The names of a kind. @param engine - the engine that was named before, if any */
export type NamesOf = (kind: Known, engine: string | undefined) => readonly string[];

/** What stands for a name in the help, and where it is looked up. */
const byPlaceholder: Readonly<Record<string, Known>> = { ENGINE: "engines", ID: "tests", PATH: "fields" };
const byOption: Readonly<Record<string, Known>> = {
  gauge: "gauges",
  "to-gauge": "gauges",
  "of-gauge": "gauges",
  cylinder: "cylinders",
  cylinders: "cylinders",
};

/** The words that could stand in place of the last one, which may be empty. None = a file, or something of one's own.
 *  @param words - after the program's name; the last is the one being typed */
export const candidates = (
  words: readonly string[],
  table: readonly Command[],
  names: NamesOf,
): readonly Candidate[] => {
  const typed = words.filter((word) => word !== "="); // bash takes --gauge=red for three words
  const begun = (typed.at(-1) ?? "").trim(); // a shell that drops empty words sends a blank
  const before = typed.slice(0, -1);
  return nextTo(before, begun, table, names).filter(({ word }) => word.startsWith(begun));
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
  if (found.kind === "nothing")
    return begun.startsWith("-") ? options(commonOptions) : firstWords(table, isHelp);
  if (found.kind === "group")
    return found.commands.map(({ name, summary }) => ({ word: name.replace(/^\S+ /, ""), about: summary }));
  if (found.kind === "fault" || isHelp) return [];
  const { command, name } = found;
  const rest = before.filter((_, at) => !name.some((word) => word.at === at));
  return afterCommand(command, rest, begun, names);
};

const afterCommand = (
  command: Command,
  rest: readonly string[],
  begun: string,
  names: NamesOf,
): readonly Candidate[] => {
  const table = [...command.options, ...commonOptions];
  const scanned = scan(rest, lookupOf(table));
  const places = scanned.words.map(({ word }) => word);
  const engine = places[command.positionals.findIndex(({ name }) => name === "ENGINE")];
  const own = (kind: Known | undefined): readonly Candidate[] =>
    kind === undefined ? [] : names(kind, engine).map((word) => ({ word, about: "" }));
  const last = scanned.uses.at(-1);
  const isOpen = last?.end === rest.length && last.option !== undefined;
  if (isOpen && last.words.length === 0 && kindOf(last.option) !== "flag") return valuesOf(last.option, own);
  if (begun.startsWith("-")) {
    const used = new Set(scanned.uses.map(({ option }) => option?.name));
    return options(table.filter((option) => kindOf(option) === "list" || !used.has(option.name)));
  }
  const more = isOpen && kindOf(last.option) === "list" ? valuesOf(last.option, own) : [];
  const place = command.positionals[places.length];
  if (place === undefined) return more;
  const choices = place.choices ?? [];
  return [...more, ...choices.map((word) => ({ word, about: "" })), ...own(knownAt(command, place.name))];
};

const valuesOf = (
  { name, value = "", choices }: Option,
  own: (kind: Known | undefined) => readonly Candidate[],
): readonly Candidate[] =>
  choices?.map((word) => ({ word, about: "" })) ?? own(byOption[name] ?? byPlaceholder[value]);

/** A new gauge or engine gets a name that nobody knows yet. */
const knownAt = ({ name }: Command, placeholder: string): Known | undefined =>
  name === "gauge calibrate" && placeholder === "NAME" ? "gauges" : byPlaceholder[placeholder];

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
