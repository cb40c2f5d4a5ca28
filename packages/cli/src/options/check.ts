// Every fault of a command line, all at once, before anything runs.

import { datesMeant, isIsoDate } from "@sealtrend/core/parts";
import type { Command, Fault, Option } from "../command.ts";
import { kindOf, type Lookup } from "./lookup.ts";
import type { Parsed } from "./parse.ts";
import { typedLine } from "./quote.ts";
import type { Scan, Use, Word } from "./scan.ts";
import { usageFault } from "./usage-words.ts";
import { usageLine } from "./usage-line.ts";

/** The options that are not known, lack their value, or have one too many. */
export const scanFaults = ({ uses }: Scan, lookup: Lookup, help: string): readonly Fault[] =>
  uses.flatMap(({ typed, option, words, instead }) => {
    if (option === undefined) return [usageFault("option-unknown", typed, words, [...lookup.keys()], help)];
    if (kindOf(option) !== "flag") {
      // what starts with dashes is no choice of any option
      const meant = option.choices === undefined ? instead : undefined;
      return words.length === 0 ? [usageFault("option-value-missing", typed, sampleOf(option), meant)] : [];
    }
    return words.length === 0 ? [] : [usageFault("option-takes-no-value", typed, words.join(" "))];
  });

/** The values that are empty, given twice or no choice of the option, and a day that is none. */
export const valueFaults = ({ values, flags }: Parsed, options: readonly Option[]): readonly Fault[] =>
  options.flatMap((option) => {
    const typed = `--${option.name}`;
    const given = values.get(option.name) ?? Array.from({ length: flags.get(option.name) ?? 0 }, () => "");
    if (given.length > 1 && kindOf(option) !== "list") return [usageFault("option-twice", typed, given)];
    if (kindOf(option) === "flag") return [];
    return given.flatMap((value) => valueFault(option, typed, value));
  });

const valueFault = (option: Option, typed: string, value: string): readonly Fault[] => {
  if (value.trim() === "") return [usageFault("option-value-empty", typed, sampleOf(option))];
  if (option.name === "as-of" && !isIsoDate(value))
    return [usageFault("as-of-bad", value, datesMeant(value))];
  const { choices, also = {} } = option;
  if (choices === undefined || Object.hasOwn(also, value)) return [];
  return (kindOf(option) === "list" ? value.trim().split(/\s+/) : [value])
    .filter((one) => !choices.includes(one))
    .map((one) => usageFault("option-choice", typed, one, choices));
};

/** The words a command lacks, those it has no place for, and the empty ones. */
export const wordFaults = (
  command: Command,
  words: readonly Word[],
  uses: readonly Use[],
): readonly Fault[] => {
  const usage = usageLine(command);
  const takesAny = command.positionals.some(({ need }) => need === "any");
  if (takesAny) return [];
  const taken = command.positionals.length;
  const missing = command.positionals.filter(({ need }, i) => need === "must" && words[i] === undefined);
  return [
    ...missing.map(({ name, help }) => usageFault("word-missing", name, help, command.examples[0] ?? usage)),
    ...words.filter(({ word }) => word.trim() === "").map(() => usageFault("word-empty", usage)),
    ...runsOf(words.slice(taken).filter(({ word }) => word.trim() !== "")).map((run) =>
      usageFault("word-too-many", run.map(({ word }) => word).join(" "), joined(run, uses), usage),
    ),
  ];
};

/** Words that stand side by side are one slip. */
const runsOf = (words: readonly Word[]): readonly (readonly Word[])[] => {
  const runs: Word[][] = [];
  for (const word of words) {
    const last = runs.at(-1);
    if (last?.at(-1)?.at === word.at - 1) last.push(word);
    else runs.push([word]);
  }
  return runs;
};

/** The option as it is typed when the words after its value belong to it: `--note "wrong adapter"`. */
const joined = (run: readonly Word[], uses: readonly Use[]): string | undefined => {
  const use = uses.find(
    ({ end, option }) => end === run[0]?.at && option !== undefined && kindOf(option) === "one",
  );
  if (use === undefined) return undefined;
  const value = [...use.words, ...run.map(({ word }) => word)].join(" ");
  return typedLine([use.typed, value]).replace(/^sealtrend /, "");
};

/** What can stand where the help has a name for the value. */
const samples: Readonly<Record<string, string>> = {
  DATE: "2026-05-03",
  DIR: "./logbook",
  FILE: "my-file.csv",
  ID: "2026-05-03a",
  LABELS: '"1 2"',
  N: "1412",
  NAME: "red",
  TEXT: '"in my own words"',
  WHO: "shop",
};

const sampleOf = ({ value = "", choices, example }: Option): string =>
  example ?? choices?.[0] ?? samples[value] ?? value;
