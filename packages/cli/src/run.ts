// The whole program but for the process around it: words in, exit code out.

import type { Command } from "./command.ts";
import { commands } from "./commands/index.ts";
import type { Io } from "./io.ts";
import { runLine } from "./run-line.ts";

export { Stop } from "./command.ts";
export { commands } from "./commands/index.ts";
export { nodeIo } from "./node-io.ts";
export type { Answer, Args, Command, Exit, Fault, Option, Positional } from "./command.ts";
export type { Io } from "./io.ts";

/** Runs one command line, as `runLine` does. @param table - the commands there are */
export const run = (
  words: readonly string[],
  io: Io,
  table: readonly Command[] = commands,
): Promise<number> => runLine(words, io, { table, names: table.map(({ name }) => name) });

/** What a thread of `yard` runs; loaded only there. */
export const yardWorker = async (): Promise<void> => {
  const { answerJobs } = await import("./yard/worker.ts");
  answerJobs();
};
