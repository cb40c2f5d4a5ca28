// The command line that goes on from an import: what was typed, with what is to be added.

import type { OpenQuestion } from "@sealtrend/core/parts";
import type { Args } from "../../command.ts";
import { typedLine } from "../../options/quote.ts";
import type { EnginePlan } from "./engine-plans.ts";
import { importOptions } from "./import-options.ts";
import type { ImportResult } from "./import-result.ts";

export interface CameTo {
  readonly state: ImportResult["state"];
  readonly open: readonly OpenQuestion[];
  readonly plans: readonly EnginePlan[];
  /** The sheet as messages name it. */
  readonly file: string;
  /** Whether a map was used or laid down. */
  readonly hasMap: boolean;
}

/** "" where nothing goes on. */
export const nextLine = (args: Args, { state, open, plans, file, hasMap }: CameTo): string => {
  if (state === "open") {
    const against = contradicted(args, open);
    const map = needsMap(open) && !hasMap ? ["--map", mapName(file)] : [];
    // a map that is laid down names the engines: an option cannot name another
    const asked = hasMap ? open.filter(({ code }) => code !== "engine") : open;
    return withTyped(args, { without: against, more: [...map, ...openOptions(args, asked)] });
  }
  if (state === "would add") return commandLine(args, "--write");
  const [only, other] = plans;
  if (only === undefined) return "";
  return other === undefined ? `sealtrend history ${only.id}` : "sealtrend engine list";
};

/** The command line as typed, with what is to be added. */
export const commandLine = (args: Args, ...more: readonly string[]): string =>
  withTyped(args, { without: [], more });

const withTyped = (
  args: Args,
  { without, more }: { readonly without: readonly string[]; readonly more: readonly string[] },
): string => {
  const given = importOptions.flatMap(({ name, value }) => {
    const typed = value === undefined || without.includes(name) ? undefined : args.text(name);
    return typed === undefined ? [] : [`--${name}`, typed];
  });
  const flags = ["again", "write"].filter((name) => args.flag(name)).map((name) => `--${name}`);
  return typedLine(["import", args.positionals[0] ?? "", ...given, ...flags, ...more]);
};

const isTyped = (args: Args, name: string): boolean =>
  importOptions.some((option) => option.name === name && option.value !== undefined) &&
  args.text(name) !== undefined;

/** Options that the sheet says otherwise: they are left out. */
const contradicted = (args: Args, open: readonly OpenQuestion[]): readonly string[] =>
  open
    .filter(({ isAgainstTyped }) => isAgainstTyped === true)
    .map(({ code }) => code)
    .filter((name) => isTyped(args, name));

/** Whether a question is settled by the map alone. */
export const needsMap = (open: readonly OpenQuestion[]): boolean =>
  open.some(
    (question) =>
      question.isAgainstTyped !== true &&
      question.readings.every(({ option }) => option === undefined) &&
      question.readings.some(isOfMapOnly),
  );

/** Whether only another sheet settles it. */
export const isOfSheet = ({ readings }: OpenQuestion): boolean =>
  readings.every(({ entry, option }) => option === undefined && !entry.startsWith('"'));

/** Whether no option says what an entry of the map says. */
export const isOfMapOnly = ({ entry, option }: OpenQuestion["readings"][number]): boolean =>
  option === undefined && entry.startsWith('"');

/** The options that settle the questions, by the names of their values: `--unit UNIT`. */
const openOptions = (args: Args, open: readonly OpenQuestion[]): readonly string[] =>
  [...new Set(open.flatMap(({ option }) => option ?? []))].flatMap((typed) => {
    const known = importOptions.find(({ name }) => `--${name}` === typed);
    return known?.value === undefined || isTyped(args, known.name) ? [] : [typed, known.value];
  });

/** `old-map.json` of `old.csv`, in the working folder. */
export const mapName = (file: string): string => {
  const base = /([^/\\]+)$/.exec(file)?.[1] ?? "sheet";
  return `${base.replace(/\.[a-z]{1,5}$/i, "").replaceAll(" ", "-")}-map.json`;
};
