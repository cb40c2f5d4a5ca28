// The two commands that are asked most, bundled without the others: less to load at the start is what makes them quick.

import { history } from "./commands/history.ts";
import { commandNames } from "./commands/names.ts";
import { show } from "./commands/show.ts";
import type { Io } from "./io.ts";
import { runLine } from "./run-line.ts";

export { nodeIo } from "./node-io.ts";

export const quickCommands = [show, history] as const;

/** Runs a line that begins with the name of one of them, as the whole program does. */
export const run = (words: readonly string[], io: Io): Promise<number> =>
  runLine(words, io, { table: quickCommands, names: commandNames });
