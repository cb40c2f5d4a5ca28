// Help pages, all made from the table of commands: what to type first, then what it means.

import type { Command, Option } from "../command.ts";
import { commonOptions } from "../options/common.ts";
import { explained } from "../options/explained.ts";
import { usageLine } from "../options/usage-line.ts";
import { wrapText } from "./table.ts";
import { wholeSentence } from "./words.ts";
import { displayWidth, padEnd } from "./width.ts";

const indent = "  ";
/** Below this many columns an explanation stands under what it explains. */
const sideBySide = 60;
const what = "How well does each cylinder of your engine still seal? Told from your own gauge readings.";

const more = "All commands: sealtrend\u00a0help.";

interface Entry {
  readonly term: string;
  readonly text: string;
}

/** What a bare `sealtrend` says. */
export const welcome = (commands: readonly Command[], width: number): string =>
  page([
    wrapText(what, width),
    commands.slice(0, 2).flatMap(({ examples }) => examplesOf(examples.slice(0, 1), width)),
    wrapText("All commands: sealtrend\u00a0help. One of them: sealtrend\u00a0help\u00a0COMMAND.", width),
  ]);

/** Every command in a line. */
export const overview = (commands: readonly Command[], width: number): string =>
  page([
    commands.slice(0, 2).flatMap(({ examples }) => examplesOf(examples.slice(0, 1), width)),
    wrapText(what, width),
    ["Commands", ...entries(commands.map(summarised), width)],
    ["Common options", ...entries(commonOptions.map(optionEntry), width)],
    wrapText("One command: sealtrend\u00a0help\u00a0COMMAND. This program: sealtrend\u00a0--version.", width),
  ]);

/** The commands that share their first word. */
export const groupHelp = (group: string, commands: readonly Command[], width: number): string =>
  page([
    commands.flatMap(({ examples }) => examplesOf(examples.slice(0, 1), width)),
    ["Commands", ...entries(commands.map(summarised), width)],
    wrapText(
      `One of them: sealtrend\u00a0help\u00a0${group}\u00a0WORD. All commands: sealtrend\u00a0help.`,
      width,
    ),
  ]);

export const commandHelp = (command: Command, width: number): string => {
  const options = [...command.options, ...commonOptions];
  const left = termWidth(options.map(optionEntry), width);
  const groups = [...new Set(options.map(groupOf))];
  const lists = options.some(({ value }) => value === "LIST");
  return page([
    examplesOf(command.examples, width),
    wrapText(wholeSentence(command.summary), width),
    wrapText(`Usage: ${usageLine(command)}`, width),
    entries(
      command.positionals.map(({ name, help }) => ({ term: name, text: help })),
      width,
      left,
    ),
    ...groups.map((group) => [
      group,
      ...entries(options.filter((option) => groupOf(option) === group).map(optionEntry), width, left),
    ]),
    command.terms === undefined ? [] : [command.terms.title, ...entries(command.terms.list, width)],
    wrapText(
      `${lists ? "A LIST needs no quotes; given again, it is a repeat of the readings. " : ""}${more}`,
      width,
    ),
  ]);
};

const page = (parts: readonly (readonly string[])[]): string =>
  `${parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")}\n`;

const groupOf = ({ group }: Option): string => group ?? "Options";

const summarised = ({ name, summary }: Command): Entry => ({ term: name, text: summary });

const optionEntry = (option: Option): Entry => {
  const { name, alias, value } = option;
  const long = [`--${name}`, ...(alias !== undefined && alias.length > 1 ? [`--${alias}`] : [])];
  const names = [...(alias?.length === 1 ? [`-${alias}`] : []), ...long].join(", ");
  const term = value === undefined ? names : `${names} ${value}`;
  return { term, text: explained(option) };
};

/** Columns for what is explained: at most a third of the page. */
const termWidth = (rows: readonly Entry[], width: number): number => {
  const widths = rows.map(({ term }) => displayWidth(term)).filter((wide) => wide <= width / 3);
  return Math.max(0, ...widths);
};

/** What is explained on the left, the explanation beside it; a long one on the left has it on the next line. */
const entries = (rows: readonly Entry[], width: number, left = termWidth(rows, width)): readonly string[] => {
  const narrow = width < sideBySide;
  const column = narrow ? indent.length * 3 : indent.length + left + indent.length;
  return rows.flatMap(({ term, text }) => {
    const lines = wrapText(text, width, " ".repeat(column));
    if (narrow || displayWidth(term) > left) return [indent + term, ...lines];
    return [padEnd(indent + term, column) + (lines[0] ?? "").slice(column), ...lines.slice(1)];
  });
};

/** The lines to type; one too long goes on after a backslash, as a shell reads it. */
const examplesOf = (examples: readonly string[], width: number): readonly string[] =>
  examples.flatMap((example) => {
    const typed = example.includes("sealtrend") ? example : `sealtrend ${example}`;
    const lines = wrapText(unbroken(typed), width - 2, indent);
    return lines.map((line, i) => `${i === 0 ? "" : indent}${line}${i === lines.length - 1 ? "" : " \\"}`);
  });

/** The line with no break inside quotes, nor between an option and its value. */
const unbroken = (line: string): string =>
  line
    .replace(/"[^"]*"/g, (text) => text.replaceAll(" ", "\u00a0"))
    .replace(/(--?[a-z][\w-]*) (?!-)/g, "$1\u00a0");
