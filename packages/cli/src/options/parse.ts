// The one place that knows yargs. What it is handed has been put in a form it reads in one way only: each option as
// `--name` or `--name==value`, everything else after `--`. The second `=` is ours: without it a value in quotes of its
// own would lose them. The guards below keep values text, as typed (measured: handbook/tooling.md B.2).

import { Parser } from "yargs/helpers";
import { kindOf } from "./lookup.ts";
import type { Option } from "../command.ts";
import type { Use } from "./scan.ts";

export interface Parsed {
  /** Values by option name, one text a use; a list joins its words by a space. */
  readonly values: ReadonlyMap<string, readonly string[]>;
  /** How often each flag was given. */
  readonly flags: ReadonlyMap<string, number>;
  readonly positionals: readonly string[];
}

const guards = {
  "boolean-negation": false,
  "camel-case-expansion": false,
  "dot-notation": false,
  "duplicate-arguments-array": true,
  "parse-numbers": false,
  "parse-positional-numbers": false,
  "populate--": true,
  "short-option-groups": false,
} as const;

/** yargs hears only of the options that are used: to tell it of one takes longer than to read it.
 *  @throws Error where a word is left over that no option explains: the scan let it through, so the fault is ours */
export const parse = (
  uses: readonly Use[],
  positionals: readonly string[],
  options: readonly Option[],
): Parsed => {
  const used = options.filter((option) => uses.some((use) => use.option?.name === option.name));
  const names = (kinds: "flag" | "value"): string[] =>
    used.filter((option) => (kindOf(option) === "flag") === (kinds === "flag")).map(({ name }) => name);
  const words = [...uses.flatMap(wordsFor), "--", ...positionals];
  const {
    _,
    "--": rest,
    ...seen
  } = Parser(words, {
    configuration: guards,
    count: names("flag"),
    string: names("value"),
  });
  const strange = [..._, ...Object.keys(seen).filter((name) => !used.some((option) => option.name === name))];
  if (strange.length > 0) throw new Error(`no option explains ${strange.join(", ")}`);
  const flags = new Map(names("flag").map((name) => [name, Number(seen[name])]));
  const values = new Map(
    names("value").map((name) => [name, texts(seen[name]).map((text) => text.slice(1))]),
  );
  return { values, flags, positionals: texts(rest) };
};

const wordsFor = ({ option, words }: Use): readonly string[] => {
  if (option === undefined) return [];
  return kindOf(option) === "flag" ? [`--${option.name}`] : [`--${option.name}==${words.join(" ")}`];
};

const texts = (value: unknown): readonly string[] =>
  (value === undefined ? [] : Array.isArray(value) ? value : [value]).map(String);
