// The manual page, made from the table of commands, in the language of man pages (man(7)).

import type { Command, Option } from "../command.ts";
import { commonOptions } from "../options/common.ts";
import { explained } from "../options/explained.ts";
import { dashed } from "../options/lookup.ts";
import { usageLine } from "../options/usage-line.ts";
import { wholeSentence } from "./words.ts";

/** @param commands - in the order of the help */
export const manualPage = (commands: readonly Command[]): string =>
  `${[
    `.\\" Made from the table of commands by: sealtrend manual`,
    `.TH SEALTREND 1 "" "sealtrend" "User Commands"`,
    // a command that is copied has no hyphens and no wide blanks in it
    ".nh",
    ".ad l",
    ".SH NAME",
    roff("sealtrend - how well each cylinder of an engine still seals, and what to do about it"),
    ".SH SYNOPSIS",
    ".B sealtrend",
    ".I COMMAND",
    roff("[options]"),
    ".SH DESCRIPTION",
    ...description.flatMap((text) => [".PP", roff(text)]),
    ".SH COMMANDS",
    ...commands.flatMap(commandPart),
    ".SH COMMON OPTIONS",
    ...commonOptions.flatMap(optionPart),
    ".SH FILES",
    ...files.flatMap(([name, text]) => tagged(`.I ${roff(name)}`, text)),
    ".SH ENVIRONMENT",
    ...environment.flatMap(([name, text]) => tagged(`.B ${roff(name)}`, text)),
    ".SH EXIT STATUS",
    ...exits.flatMap(([code, text]) => tagged(`.B ${code}`, text)),
    ".SH CAUTIONS",
    roff(cautions),
  ].join("\n")}\n`;

const description = [
  "After each compression or leak-down test, type the gauge readings beside the engine. sealtrend says whether the test can be trusted, which cylinder lags and where it probably leaks, how each cylinder has done over the years, and what to do: leave it, test again, watch it, open the top end, re-ring or rebuild.",
  "The logbook is a folder of plain text files that you own. Every command shows its examples first with --help.",
];

const files: readonly (readonly [string, string])[] = [
  [
    "./logbook",
    "the folder with your engines, where neither --logbook nor SEALTREND_LOGBOOK names one; else the folder below your user data",
  ],
  [
    "~/.local/share/sealtrend",
    "the logbook where there is no ./logbook (on Linux; XDG_DATA_HOME is followed)",
  ],
  ["~/.local/state/sealtrend", "what undo and an unfinished entry need; no saved reading lies there"],
];

const environment: readonly (readonly [string, string])[] = [
  ["SEALTREND_LOGBOOK", "the folder with your engines, where --logbook does not say"],
  ["NO_COLOR, TERM", "plain text where NO_COLOR is set or TERM is dumb"],
  ["COLUMNS", "the width, where the terminal does not tell it"],
];

const exits: readonly (readonly [string, string])[] = [
  ["0", "done; a finding about an engine is no error"],
  ["1", "the data has a fault"],
  ["2", "the command line has a fault"],
  ["3", "a file could not be read or written"],
  ["70", "a fault of sealtrend itself"],
  ["130", "left by Ctrl-C"],
];

const cautions =
  "A compression or leak-down test can hurt: air in a cylinder turns the crank or the propeller, fuel and ignition must be off, hot parts and hot coolant burn, oil in a diesel cylinder can wreck it. sealtrend how dry ENGINE shows the cautions for your engine. The maker's manual, local rules and licensed practice come first; on an aircraft a licensed person decides on airworthiness.";

const commandPart = (command: Command): readonly string[] => [
  `.SS ${roff(command.name)}`,
  roff(wholeSentence(command.summary)),
  ".PP",
  ".nf",
  roff(usageLine(command)),
  ".fi",
  ...command.positionals.flatMap(({ name, help }) => tagged(`.I ${roff(name)}`, help)),
  ...command.options.flatMap(optionPart),
  ...(command.terms === undefined
    ? []
    : [
        ".PP",
        roff(command.terms.title),
        ...command.terms.list.flatMap(({ term, text }) => tagged(`.I ${roff(term)}`, text)),
      ]),
  ".PP",
  command.examples.length === 1 ? "Example:" : "Examples:",
  ".PP",
  ".nf",
  ".RS",
  ...command.examples.map(roff),
  ".RE",
  ".fi",
];

const optionPart = (option: Option): readonly string[] => {
  const { name, alias, value } = option;
  const names = [...(alias === undefined ? [] : [alias]), name]
    .map((one) => `\\fB${roff(dashed(one))}\\fR`)
    .join(", ");
  const term = value === undefined ? names : `${names} \\fI${roff(value)}\\fR`;
  return [".TP", term, roff(explained(option))];
};

const tagged = (tag: string, text: string): readonly string[] => [".TP", tag, roff(text)];

/** Text as it is, whatever its first sign: backslashes and hyphens are written out, a blank that is
 *  not to be broken stays one, a leading dot or quote is none. */
const roff = (text: string): string =>
  text
    .replaceAll("\\", "\\e")
    .replaceAll("-", "\\-")
    .replaceAll("'", "\\(aq")
    .replaceAll("\u00a0", "\\ ")
    .replace(
      /[^\x20-\x7e]/gu,
      (letter) => `\\[u${(letter.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, "0")}]`,
    )
    .replace(/^\./, "\\&.");
