// The whole program but for the process around it and its commands: words in, exit code out.

import { asTheirs, asWritten } from "./as-theirs.ts";
import { Stop, type Answer, type Args, type Command, type Fault } from "./command.ts";
import type { Io } from "./io.ts";
import { jsonText } from "./json-text.ts";
import { savedFault, shown, systemFault } from "./logbook/words.ts";
import { codeOf } from "./logbook/world.ts";
import { type Carried, carriedOf } from "./options/carried.ts";
import { typedLine } from "./options/quote.ts";
import { readLine, type Line } from "./options/read-line.ts";
import { beforeDashes } from "./options/scan.ts";
import { escaped, shownOn } from "./render/ascii.ts";
import { asideText } from "./render/aside.ts";
import { clean } from "./render/clean.ts";
import { faultDocument, faultText } from "./render/faults.ts";
import { commandHelp, groupHelp, overview, welcome } from "./render/help.ts";

const ourFault = 70;
/** Of what was typed and is given back: more than anybody types. */
const longestLine = 10_000;

/** The commands that a line may begin with, and the names of all there are: what is printed names them. */
export interface Known {
  readonly table: readonly Command[];
  readonly names: readonly string[];
}

/** Runs one command line. The functions of `io` are called without their object.
 *  @param words - what was typed after the program's name
 *  @returns the exit code: 0 done, 1 data, 2 command line, 3 files, 70 a fault of ours; never throws */
export const runLine = async (
  words: readonly string[],
  given: Io,
  { table, names }: Known,
): Promise<number> => {
  const typed = words.map(asTheirs);
  const json = beforeDashes(typed).includes("--json");
  const carried = carriedOf(typed, names, given.cwd);
  const letters = inLetters(given, beforeDashes(typed).includes("--ascii") ? "ascii" : "as told");
  const io =
    carried === undefined ? letters : carrying(letters, carried, isScreen(typed) ? "screen" : "data");
  const answering = { io, json, carried };
  try {
    return await follow(readLine(typed, table), { ...answering, table, typed });
  } catch (error) {
    if (error instanceof Stop) return stopped(error, answering);
    const fault = refusal(error, io);
    if (fault !== undefined) return stopped(new Stop(3, [fault], typedBack(typed)), answering);
    io.err(`this is a fault of sealtrend itself: please report these two lines (${clean(String(error))})\n`);
    io.err(typedBack(typed));
    return ourFault;
  }
};

interface Answering {
  readonly io: Io;
  readonly json: boolean;
  readonly carried: Carried | undefined;
}

interface Around extends Answering {
  readonly table: readonly Command[];
  readonly typed: readonly string[];
}

const follow = async (line: Line, around: Around): Promise<number> => {
  const { io, table } = around;
  switch (line.kind) {
    case "welcome":
      return said(welcome(table, io.width), io);
    case "help-all":
      return said(overview(table, io.width), io);
    case "help-group":
      return said(groupHelp(line.group, line.commands, io.width), io);
    case "help":
      return said(commandHelp(line.command, io.width), io);
    case "faults":
      throw new Stop(2, line.faults);
    case "run":
      return followed(line, around);
  }
};

/** Runs a command. Where it stops, what was saved is not told as lost, nor what was typed for a record lost in silence. */
const followed = async (
  { command, args }: Extract<Line, { readonly kind: "run" }>,
  around: Around,
): Promise<number> => {
  const { io, typed } = around;
  const saves: string[] = [];
  const saved = (what: string): void => {
    saves.push(what);
    io.saved?.(what);
  };
  try {
    return answered(await command.run(args, { ...told(io, args), saved }), around);
  } catch (error) {
    const fault = refusal(error, io);
    const stop = fault === undefined ? error : new Stop(3, [fault], typedBack(typed));
    if (!(stop instanceof Stop)) throw error;
    if (saves.length > 0) throw new Stop(3, stop.faults.map(savedFault));
    const isLost = command.enters === true && stop.exit === 3 && stop.after === "";
    throw isLost ? new Stop(3, stop.faults, notSaved(typed)) : stop;
  }
};

/** The world with every text put into letters that it can show, whoever writes it; a person's own text comes in marked. */
const inLetters = (io: Io, letters: "ascii" | "as told"): Io => {
  const unicode = io.unicode && letters !== "ascii";
  const shows = (text: string): string => shownOn({ unicode }, asWritten(text));
  return {
    ...io,
    unicode,
    out: (text) => {
      io.out(shows(text));
    },
    err: (text) => {
      io.err(shows(text));
    },
    ask: async (question, ifLeft = "", takes = "typed ahead") => {
      const line = await io.ask(shows(question), shows(ifLeft), takes);
      return line === undefined ? undefined : asTheirs(line);
    },
  };
};

/** The world with each command that is printed made to work when it is typed. */
const carrying = (io: Io, carried: Carried, kind: "screen" | "data"): Io => {
  const carry = (text: string): string => carried.text(text, io.width);
  return {
    ...io,
    out: (text) => {
      io.out(kind === "screen" ? carry(text) : text);
    },
    err: (text) => {
      io.err(carry(text));
    },
    ask: (question, ifLeft = "", takes = "typed ahead") => io.ask(carry(question), carry(ifLeft), takes),
  };
};

/** Whether the answer is for a person: a document has its commands made so before it is text. */
const isScreen = (typed: readonly string[]): boolean =>
  !beforeDashes(typed).some((word) => /^(?:--json|(?:--format=)?(?:csv|jsonl))$/.test(word));

/** The world as the common options tell it. */
const told = (io: Io, args: Args): Io => ({
  ...io,
  today: args.text("as-of") ?? io.today,
  interactive: io.interactive && !args.flag("no-input"),
});

const said = (text: string, io: Io): number => {
  io.out(text);
  return 0;
};

const answered = ({ exit, text, json: document, aside }: Answer, answering: Answering): number => {
  const { io, json } = answering;
  if (!json) io.out(text);
  else if (document !== undefined) io.out(jsonFor(answering, document));
  if (aside !== undefined) io.err(asideText(aside, io.width));
  return exit;
};

/** The document; where only ASCII can be shown its other letters are written out, so that no data is lost. */
const jsonFor = ({ io, carried }: Answering, document: unknown): string => {
  const text = asWritten(jsonText(carried === undefined ? document : carried.inDocument(document)));
  return io.unicode ? text : escaped(text);
};

const stopped = ({ exit, faults, after }: Stop, answering: Answering): number => {
  const { io, json } = answering;
  if (json) io.out(jsonFor(answering, faultDocument(faults)));
  else io.err(faultText(faults, io.width));
  if (after !== "")
    io.err(
      after
        .split("\n")
        .map((line) => clean(line, longestLine))
        .join("\n"),
    );
  return exit;
};

/** What the system refused, as a fault; undefined where the error is something else. */
const refusal = (error: unknown, { cwd }: Io): Fault | undefined => {
  const code = codeOf(error);
  if (code === undefined) return undefined;
  const path = error instanceof Error && "path" in error ? error.path : undefined;
  return systemFault(typeof path === "string" ? shown(cwd, path) : "a file", "read or written", code);
};

const notSaved = (typed: readonly string[]): string => `not saved: ${clean(typedLine(typed), longestLine)}\n`;

const typedBack = (typed: readonly string[]): string => `typed: ${clean(typedLine(typed), longestLine)}\n`;
