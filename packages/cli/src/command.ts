// What a command is: its words on the command line, its help, and what it answers.

import type { Problem } from "@sealtrend/core";
import type { FaultCode } from "./fault-codes.ts";
import type { Io } from "./io.ts";

/** A fault to print: one of the core's problems, or one of the shell's own with the same shape. */
export type Fault = Omit<Problem, "code"> & { readonly code: FaultCode };

/** 0 done, 1 the data has a fault, 2 the command line has a fault, 3 a file could not be read or written. */
export type Exit = 0 | 1 | 2 | 3;

export interface Answer {
  readonly exit: Exit;
  /** The answer for a person, ends with a newline. */
  readonly text: string;
  /** The answer for a script: the whole document, `schema` first. */
  readonly json: unknown;
  /** Said beside the answer, on stderr. */
  readonly aside?: string;
}

/** Stops a command: faults to print and the exit code; thrown anywhere in the shell, caught once in run.ts. */
export class Stop extends Error {
  readonly exit: Exit;
  readonly faults: readonly Fault[];
  /** Printed after the faults, such as the reading that could not be saved. */
  readonly after: string;
  constructor(exit: Exit, faults: readonly Fault[], after = "") {
    super(faults[0]?.found ?? "stopped");
    this.exit = exit;
    this.faults = faults;
    this.after = after;
  }
}

/** @param told - what was typed for an option, or at a place, by its name */
export type WordsBy = (told: (name: string) => string | undefined) => readonly string[];

export interface Option {
  readonly name: string;
  /** What stands for the value in the help, `350m`; absent = a flag without a value. */
  readonly value?: string;
  readonly help: string;
  readonly alias?: string;
  /** `list`: unquoted values that follow are taken too (`--dry 152 150 149`), and a second use is a repeat. */
  readonly takes?: "one" | "list";
  /** What it may be: anything else is refused before the command runs. */
  readonly choices?: readonly string[];
  /** Words it takes where it takes other things or spellings too, which the command reads. */
  readonly words?: readonly string[];
  /** What some of its words mean. */
  readonly means?: Readonly<Record<string, string>>;
  /** What it takes beside its words, told behind them. */
  readonly orElse?: string;
  /** Words that hang on what else stands on the line; offered by completion alone. */
  readonly wordsBy?: WordsBy;
  /** What is taken too, and the choice it stands for: a diesel is compression. */
  readonly also?: Readonly<Record<string, string>>;
  /** A value as it can be typed, where `value` is a name for it such as LIST. */
  readonly example?: string;
  /** Heading in the help. */
  readonly group?: string;
}

export interface Positional {
  readonly name: string;
  readonly help: string;
  /** `any`: any number of words, empty ones too. */
  readonly need: "must" | "may" | "any";
  /** What it may be; offered by completion, checked by the command. */
  readonly choices?: readonly string[];
  readonly wordsBy?: WordsBy;
}

/** What was typed: every value is text; nothing is turned into a number here. */
export interface Args {
  readonly positionals: readonly string[];
  /** The value of an option given at most once. */
  text(name: string): string | undefined;
  /** The uses of a list option, in order; each use is the text of its values, joined by a space. */
  list(name: string): readonly string[];
  flag(name: string): boolean;
}

export interface Command {
  /** `show`, or two words: `engine add`. */
  readonly name: string;
  readonly summary: string;
  /** Lines a reader can type, first in the help. */
  readonly examples: readonly string[];
  readonly positionals: readonly Positional[];
  /** What is typed is a record: the line is given back where it could not be saved. */
  readonly enters?: true;
  readonly options: readonly Option[];
  /** Words of a file that it reads, told behind its options. */
  readonly terms?: {
    readonly title: string;
    readonly list: readonly { readonly term: string; readonly text: string }[];
  };
  run(args: Args, io: Io): Promise<Answer>;
}
