// The entry of the bundle. `--version` is answered before anything else is loaded.

import { writeSync } from "node:fs";

declare const __SEALTREND_VERSION__: string;

const unwritten = 3;
const ourFault = 70;

/** The command whose changes are on the disk. */
let saved: string | undefined;

/** A reader who closed the pipe has read enough; a full disk behind stdout is a file that could not be written. */
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") return;
  process.exitCode = unwritten;
  const kept = saved === undefined ? "" : `; it is saved all the same: ${saved}`;
  process.stderr.write(`the answer could not be written (${error.message})${kept}\n`);
});
/** Where stderr itself fails there is nobody left to tell. */
process.stderr.on("error", () => undefined);

const main = async (typed: readonly string[]): Promise<void> => {
  const end = typed.indexOf("--");
  if ((end === -1 ? typed : typed.slice(0, end)).includes("--version")) {
    process.stdout.write(`sealtrend ${__SEALTREND_VERSION__}\n`);
    return;
  }
  const [{ run }, { nodeIo }] = await Promise.all([import("./run.ts"), import("./node-io.ts")]);
  const told = (command: string): void => {
    saved = command;
  };
  const code = await run(typed, { ...nodeIo(), saved: told });
  process.exitCode ??= code;
};

main(process.argv.slice(2)).catch((error: unknown) => {
  writeSync(2, `this is a fault of sealtrend itself: please report this line (${String(error)})\n`);
  process.exitCode = ourFault;
});
