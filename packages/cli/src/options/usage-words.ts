// Sentences for faults of the command line.

import { type Problem, nearest } from "@sealtrend/core/parts";

const code = (text: string): string => `\`${text}\``;
const meant = (near: readonly string[]): string =>
  near.length === 0 ? "" : `; did you mean ${near.map(code).join(" or ")}?`;
const oneOf = (words: readonly string[]): string => `one of: ${words.join(", ")}`;

export const usageWords = {
  "command-unknown": (typed: string, near: readonly string[], line: string) => ({
    found: `no command ${code(typed)}${meant(near)}`,
    expected: "a command that `sealtrend help` lists",
    mend: line,
  }),
  "command-missing": () => ({
    found: "no command",
    expected: "a command that `sealtrend help` lists",
    mend: "sealtrend help",
  }),
  "command-unfinished": (group: string, words: readonly string[]) => ({
    found: `${code(group)} needs one word more`,
    expected: oneOf(words),
    mend: `sealtrend help ${group}`,
  }),
  "option-unknown": (typed: string, words: readonly string[], known: readonly string[], help: string) => {
    const near = nearest(typed, known);
    const held = words.length === 0 ? "" : ` (with ${words.map(code).join(" ")})`;
    return {
      found: `no option ${code(typed)}${held}${meant(near)}`,
      expected: `an option that ${code(help)} lists`,
      mend: near[0] === undefined ? help : `write ${near[0]}`,
    };
  },
  "option-value-missing": (typed: string, sample: string, next: string | undefined) => ({
    found: `${code(typed)} stands without a value`,
    expected: `a value after it, such as ${sample}`,
    mend:
      next === undefined
        ? `write ${typed} ${sample}`
        : `write ${typed}=${next} if ${code(next)} is the value`,
  }),
  "option-value-empty": (typed: string, sample: string) => ({
    found: `the value of ${code(typed)} is empty`,
    expected: `a value such as ${sample}`,
    mend: `write ${typed} ${sample}, or do without ${typed}`,
  }),
  "option-takes-no-value": (typed: string, value: string) => ({
    found: `${code(typed)} takes no value, but has ${code(value)}`,
    expected: `${typed} alone`,
    mend: `write ${typed}`,
  }),
  "option-twice": (typed: string, values: readonly string[]) => ({
    found: `${code(typed)} is given ${String(values.length)} times${values[0] === "" ? "" : `: ${values.map(code).join(", ")}`}`,
    expected: `${typed} once`,
    mend: `keep one ${typed}`,
  }),
  "option-choice": (typed: string, value: string, choices: readonly string[]) => {
    const near = nearest(value, choices);
    return {
      found: `${code(typed)} has ${code(value)}${meant(near)}`,
      expected: oneOf(choices),
      mend: `write ${typed} ${near[0] ?? choices[0] ?? ""}${near[0] === undefined ? ", or another of these" : ""}`,
    };
  },
  "word-too-many": (typed: string, line: string | undefined, usage: string) => ({
    found: `${code(typed)} is more than this command takes`,
    expected: usage,
    mend: line === undefined ? "take it out" : `take it out, or write ${line} if it belongs to the value`,
  }),
  "word-missing": (name: string, help: string, example: string) => ({
    found: `no ${name}`,
    expected: help,
    mend: example,
  }),
  "word-empty": (usage: string) => ({
    found: 'an empty word: ""',
    expected: usage,
    mend: "take the empty quotes out, or write what belongs in them",
  }),
  "as-of-bad": (value: string, ways: readonly string[]) => ({
    found: `${code("--as-of")} has ${code(value)}, which is no day of the years 1900 to 2100`,
    expected: "a day written year-month-day",
    mend:
      ways.length === 0
        ? "write --as-of YYYY-MM-DD"
        : `write ${ways.map((way) => `--as-of ${way}`).join(" or ")}`,
  }),
} as const;

export type LineCode = keyof typeof usageWords;

/** A fault of the shell's own; command.ts, which brings all kinds together, stands above this file. */
type LineFault = Omit<Problem, "code"> & { readonly code: LineCode };

/** A fault of the command line, from its code and the facts its sentence needs. */
export const usageFault = <C extends LineCode>(
  named: C,
  ...facts: Parameters<(typeof usageWords)[C]>
): LineFault => {
  const words = usageWords[named] as (
    ...facts: Parameters<(typeof usageWords)[C]>
  ) => Omit<Problem, "code" | "severity">;
  return { code: named, severity: "error", ...words(...facts) };
};
