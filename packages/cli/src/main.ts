// The entry of the bundle. `--version` is answered before anything else is loaded.

import { writeSync } from "node:fs";
import { straight } from "./straight.ts";

declare const __SEALTREND_VERSION__: string;

const unwritten = 3;
const ourFault = 70;

/** The command whose changes are on the disk. */
let saved: string | undefined;
/** Whether the answer is still read. */
let isRead = true;

/** A reader who closed the pipe has read enough; a full disk behind stdout is a file that could not be written. */
const failed = (error: NodeJS.ErrnoException): void => {
  isRead = false;
  if (error.code === "EPIPE") return;
  process.exitCode = unwritten;
  const kept = saved === undefined ? "" : `; it is saved all the same: ${saved}`;
  err.write(`the answer could not be written (${error.message})${kept}\n`);
};
const out = straight(1, () => process.stdout.on("error", failed));
/** Where stderr itself fails there is nobody left to tell. */
const err = straight(2, () => process.stderr.on("error", () => undefined));

const main = async (typed: readonly string[]): Promise<void> => {
  const end = typed.indexOf("--");
  if ((end === -1 ? typed : typed.slice(0, end)).includes("--version")) {
    out.write(`sealtrend ${__SEALTREND_VERSION__}\n`);
    return;
  }
  const isQuick = typed[0] === "show" || typed[0] === "history";
  const { run, nodeIo } = await (isQuick ? import("./quick.ts") : import("./run.ts"));
  const told = (command: string): void => {
    saved = command;
  };
  const io = nodeIo({ out: out.write, err: err.write, isRead: () => isRead });
  const code = await run(typed, { ...io, saved: told });
  process.exitCode ??= code;
  if (!out.isDone() || !err.isDone()) return;
  // eslint-disable-next-line no-restricted-syntax -- all is written; V8 may have work left that nobody needs
  process.exit();
};

main(process.argv.slice(2)).catch((error: unknown) => {
  writeSync(2, `this is a fault of sealtrend itself: please report this line (${String(error)})\n`);
  process.exitCode = ourFault;
});
