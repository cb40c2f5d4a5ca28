// The whole program but for the process around it: words in, exit code out.

import { Stop, type Answer, type Args, type Command, type Fault } from "./command.ts";
import { commands } from "./commands/index.ts";
import type { Io } from "./io.ts";
import { jsonText } from "./json-text.ts";
import { shown, systemFault } from "./logbook/words.ts";
import { codeOf } from "./logbook/world.ts";
import { typedLine } from "./options/quote.ts";
import { readLine, type Line } from "./options/read-line.ts";
import { beforeDashes } from "./options/scan.ts";
import { escaped, shownOn } from "./render/ascii.ts";
import { asideText } from "./render/aside.ts";
import { clean } from "./render/clean.ts";
import { faultDocument, faultText } from "./render/faults.ts";
import { commandHelp, groupHelp, overview, welcome } from "./render/help.ts";

export { Stop } from "./command.ts";
export { commands } from "./commands/index.ts";
export type { Answer, Args, Command, Exit, Fault, Option, Positional } from "./command.ts";
export type { Io } from "./io.ts";

const ourFault = 70;

/** Runs one command line. The functions of `io` are called without their object.
 *  @param typed - the words after the program's name  @param table - the commands there are
 *  @returns the exit code: 0 done, 1 data, 2 command line, 3 files, 70 a fault of ours; never throws */
export const run = async (
  typed: readonly string[],
  given: Io,
  table: readonly Command[] = commands,
): Promise<number> => {
  const json = beforeDashes(typed).includes("--json");
  const io = inLetters(given, beforeDashes(typed).includes("--ascii") ? "ascii" : "as told");
  try {
    return await follow(readLine(typed, table), { io, table, json });
  } catch (error) {
    if (error instanceof Stop) return stopped(error, io, json);
    const fault = refusal(error, io);
    if (fault !== undefined) return stopped(new Stop(3, [fault], typedBack(typed)), io, json);
    io.err(`this is a fault of sealtrend itself: please report these two lines (${clean(String(error))})\n`);
    io.err(typedBack(typed));
    return ourFault;
  }
};

interface Around {
  readonly io: Io;
  readonly table: readonly Command[];
  readonly json: boolean;
}

const follow = async (line: Line, { io, table, json }: Around): Promise<number> => {
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
      return answered(await line.command.run(line.args, told(io, line.args)), io, json);
  }
};

/** The world with every text put into letters that it can show, whoever writes it. */
const inLetters = (io: Io, letters: "ascii" | "as told"): Io => {
  const unicode = io.unicode && letters !== "ascii";
  const shows = (text: string): string => shownOn({ unicode }, text);
  return {
    ...io,
    unicode,
    out: (text) => {
      io.out(shows(text));
    },
    err: (text) => {
      io.err(shows(text));
    },
    ask: (question, ifLeft = "") => io.ask(shows(question), shows(ifLeft)),
  };
};

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

const answered = ({ exit, text, json: document, aside }: Answer, io: Io, json: boolean): number => {
  if (!json) io.out(text);
  else if (document !== undefined) io.out(jsonFor(io, document));
  if (aside !== undefined) io.err(asideText(aside, io.width));
  return exit;
};

/** The document; where only ASCII can be shown its other letters are written out, so that no data is lost. */
const jsonFor = ({ unicode }: Io, document: unknown): string =>
  unicode ? jsonText(document) : escaped(jsonText(document));

const stopped = ({ exit, faults, after }: Stop, io: Io, json: boolean): number => {
  if (json) io.out(jsonFor(io, faultDocument(faults)));
  else io.err(faultText(faults, io.width));
  if (after !== "") io.err(after);
  return exit;
};

/** What the system refused, as a fault; undefined where the error is something else. */
const refusal = (error: unknown, { cwd }: Io): Fault | undefined => {
  const code = codeOf(error);
  if (code === undefined) return undefined;
  const path = error instanceof Error && "path" in error ? error.path : undefined;
  return systemFault(typeof path === "string" ? shown(cwd, path) : "a file", "read or written", code);
};

const typedBack = (typed: readonly string[]): string => `typed: ${clean(typedLine(typed), 10_000)}\n`;
