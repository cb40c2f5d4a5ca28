// From the words typed to the command to run, the help to show, or every fault there is.

import type { Args, Command, Fault } from "../command.ts";
import { argsOf } from "./args.ts";
import { scanFaults, valueFaults, wordFaults } from "./check.ts";
import { commonOptions } from "./common.ts";
import { findCommand, type Found } from "./find-command.ts";
import { kindOf, lookupOf } from "./lookup.ts";
import { parse } from "./parse.ts";
import { scan, type Scan, type Use } from "./scan.ts";
import { usageFault } from "./usage-words.ts";

export type Line =
  | { readonly kind: "run"; readonly command: Command; readonly args: Args }
  | { readonly kind: "help"; readonly command: Command }
  | { readonly kind: "help-group"; readonly group: string; readonly commands: readonly Command[] }
  | { readonly kind: "help-all" }
  | { readonly kind: "welcome" }
  | { readonly kind: "faults"; readonly faults: readonly Fault[] };

export const readLine = (line: readonly string[], table: readonly Command[]): Line => {
  if (line.length === 0) return { kind: "welcome" };
  const lookup = lookupOf([...commonOptions, ...table.flatMap(({ options }) => options)]);
  const first = scan(line, lookup);
  const topic = first.words[0]?.word === "help" ? "help" : "command";
  const found = findCommand(topic === "help" ? first.words.slice(1) : first.words, line, table);
  if (topic === "help") return helpOn(found);
  if (found.kind === "command") return readCommand(found, line);
  if (asksHelp(first)) return helpOn(found);
  return { kind: "faults", faults: [...scanFaults(first, lookup, "sealtrend help"), notFound(found)] };
};

const asksHelp = ({ uses }: Scan): boolean => uses.some(({ option }) => option?.name === "help");

const helpOn = (found: Found): Line => {
  switch (found.kind) {
    case "command":
      return { kind: "help", command: found.command };
    case "group":
      return { kind: "help-group", group: found.group, commands: found.commands };
    case "nothing":
      return { kind: "help-all" };
    case "fault":
      return { kind: "faults", faults: [found.fault] };
  }
};

const notFound = (found: Exclude<Found, { readonly kind: "command" }>): Fault => {
  switch (found.kind) {
    case "fault":
      return found.fault;
    case "group":
      return usageFault(
        "command-unfinished",
        found.group,
        found.commands.map(({ name }) => name.replace(/^\S+ /, "")),
      );
    case "nothing":
      return usageFault("command-missing");
  }
};

/** Reads the line again by the options of the command alone, its name taken out. */
const readCommand = (
  { command, name }: Extract<Found, { readonly kind: "command" }>,
  line: readonly string[],
): Line => {
  const options = [...command.options, ...commonOptions];
  const lookup = lookupOf(options);
  const rest = line.filter((_, at) => !name.some((word) => word.at === at));
  const scanned = scan(rest, lookup);
  if (asksHelp(scanned)) return { kind: "help", command };
  const parsed = parse(
    scanned.uses.filter(isWhole),
    scanned.words.map(({ word }) => word),
    options,
  );
  const faults = [
    ...scanFaults(scanned, lookup, `sealtrend ${command.name} --help`),
    ...valueFaults(parsed, options),
    ...wordFaults(command, scanned.words, scanned.uses),
  ];
  return faults.length > 0
    ? { kind: "faults", faults }
    : { kind: "run", command, args: argsOf(parsed, options, command.positionals) };
};

const isWhole = ({ option, words }: Use): boolean =>
  option !== undefined && (kindOf(option) === "flag") === (words.length === 0);
