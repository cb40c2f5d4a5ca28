// The world as the process sees it.

import type { Interface } from "node:readline";
import { isatty } from "node:tty";
import type { Io } from "./io.ts";
import { ioFacts } from "./render/io-facts.ts";

const interrupted = 130;

export const nodeIo = (): Io => {
  const { env, platform, stdout, stderr } = process;
  const terminal = isatty(1);
  const { width, unicode } = ioFacts({ env, platform, columns: stdout.columns });
  return {
    out: (text) => void stdout.write(text),
    err: (text) => void stderr.write(text),
    width,
    unicode,
    interactive: terminal && isatty(0),
    terminal,
    today: local(new Date()).slice(0, 10),
    now: () => local(new Date()),
    env,
    cwd: process.cwd(),
    ask: asker(),
    readInput: async () => {
      if (isatty(0)) return new Uint8Array();
      const { buffer } = await import("node:stream/consumers");
      return buffer(process.stdin);
    },
  };
};

const two = (n: number): string => String(n).padStart(2, "0");

/** `YYYY-MM-DDTHH:MM:SS` by the clock on the wall. */
const local = (at: Date): string => {
  const day = [at.getFullYear(), two(at.getMonth() + 1), two(at.getDate())].join("-");
  return `${day}T${[at.getHours(), at.getMinutes(), at.getSeconds()].map(two).join(":")}`;
};

/** Asks by whole lines, the terminal's own editing, so that it works on any terminal and with a screen reader. Lines
 *  pasted ahead wait for their question; between questions stdin is paused and holds the process open for nothing.
 *  Ctrl-C leaves the question unanswered for good: nothing is half written, so the process ends by itself, with 130. */
const asker = (): Io["ask"] => {
  const ahead: string[] = [];
  let waiting: ((line: string | undefined) => void) | undefined;
  let ended = false;
  const open = async (): Promise<Interface> => {
    const { createInterface } = await import("node:readline");
    const lines = createInterface({ input: process.stdin, terminal: false });
    lines.on("line", (line) => {
      if (waiting === undefined) ahead.push(line);
      else waiting(line);
    });
    lines.on("close", () => {
      ended = true;
      waiting?.(undefined);
    });
    return lines;
  };
  let lines: Interface | undefined;
  return async (question, ifLeft = "") => {
    process.stderr.write(question);
    if (ahead.length > 0 || ended) return ahead.shift();
    lines ??= await open();
    const input = lines;
    return new Promise((resolve) => {
      const interrupt = (): void => {
        waiting = undefined;
        process.exitCode = interrupted;
        process.stderr.write(`\n${ifLeft}`);
        input.close();
      };
      process.once("SIGINT", interrupt);
      waiting = (line) => {
        waiting = undefined;
        process.off("SIGINT", interrupt);
        input.pause();
        resolve(line);
      };
      input.resume();
    });
  };
};
