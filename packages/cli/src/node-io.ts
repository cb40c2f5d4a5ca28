// The world as the process sees it.

import { fstatSync } from "node:fs";
import type { Interface } from "node:readline";
import { inputHolds } from "./input-holds.ts";
import type { Io } from "./io.ts";
import { clean } from "./render/clean.ts";
import { ioFacts } from "./render/io-facts.ts";

const interrupted = 130;

/** @param ways - out of the process */
export const nodeIo = (ways: Pick<Io, "out" | "err" | "isRead">): Io => {
  const { env, platform } = process;
  const terminal = isTerminal(1);
  const { width, unicode } = ioFacts({
    env,
    platform,
    columns: terminal ? process.stdout.columns : undefined,
  });
  return {
    ...ways,
    width,
    unicode,
    interactive: terminal && isTerminal(0),
    terminal,
    today: local(new Date()).slice(0, 10),
    now: () => local(new Date()),
    env,
    cwd: process.cwd(),
    ...asker(ways.err),
    readInput: async () => {
      if (isTerminal(0)) return new Uint8Array();
      const { buffer } = await import("node:stream/consumers");
      return buffer(process.stdin);
    },
    inputParts,
    inputHolds,
    watched: isTerminal(2),
    brief: optimiseLate,
  };
};

/** V8 11, of Node 20, optimises a function once so many bytes of its code were run: here fifteen times as many as usual, so
 *  that only a large logbook has it done. A third of the time of a short command went there, in other threads. It tells when
 *  and never what, so that it may change on the way. Later ones do not know the flag and would say so. */
const optimiseLate = (): void => {
  if (process.versions.v8.startsWith("11."))
    process.getBuiltinModule("node:v8").setFlagsFromString("--interrupt-budget=1000000");
};

/** To know that a file or a pipe is none takes nothing of Node that would have to be loaded. */
const isTerminal = (fd: number): boolean => isDevice(fd) && process.getBuiltinModule("node:tty").isatty(fd);

const isDevice = (fd: number): boolean => {
  try {
    return fstatSync(fd).isCharacterDevice();
  } catch {
    return true;
  }
};

async function* inputParts(): AsyncGenerator<Uint8Array> {
  if (!isTerminal(0)) for await (const part of process.stdin) yield Buffer.from(part as Uint8Array);
}

const two = (n: number): string => String(n).padStart(2, "0");

/** `YYYY-MM-DDTHH:MM:SS` by the clock on the wall. */
const local = (at: Date): string => {
  const day = [at.getFullYear(), two(at.getMonth() + 1), two(at.getDate())].join("-");
  return `${day}T${[at.getHours(), at.getMinutes(), at.getSeconds()].map(two).join(":")}`;
};

/** Asks by whole lines, the terminal's own editing, so that it works on any terminal and with a screen reader; nothing is
 *  ever drawn anew. Lines pasted ahead wait for their question, and are written behind it when it comes, as if typed there.
 *  Between questions stdin is paused and holds the process open for nothing. Ctrl-C leaves the question unanswered for good:
 *  nothing is half written, so the process ends by itself, with 130. */
const asker = (err: Io["err"]): Pick<Io, "ask" | "waits"> => {
  const ahead: string[] = [];
  let waiting: ((line: string | undefined) => void) | undefined;
  let ended = false;
  const end = (): void => {
    ended = true;
    waiting?.(undefined);
  };
  const open = async (): Promise<Interface> => {
    const { createInterface } = await import("node:readline");
    // A terminal that was closed may answer with an error instead of its end.
    process.stdin.on("error", end);
    const opened = createInterface({ input: process.stdin, terminal: false });
    opened.on("line", (line) => {
      if (waiting === undefined) ahead.push(line);
      else waiting(line);
    });
    opened.on("close", end);
    return opened;
  };
  let lines: Interface | undefined;
  /** Takes in what lies ready, for as long as something comes. */
  const gather = async (pause: () => Promise<unknown>): Promise<Interface> => {
    lines ??= await open();
    if (!ended) lines.resume();
    for (let before = -1; before < ahead.length && !ended;) {
      before = ahead.length;
      await pause();
    }
    if (!ended) lines.pause();
    return lines;
  };
  return {
    waits: async () => {
      await gather(ofAPaste);
      return ahead.length > 0;
    },
    ask: async (question, ifLeft = "", takes = "typed ahead") => {
      const input = await gather(takes === "typed now" ? ofAPaste : ofALoop);
      err(question);
      if (takes === "typed ahead" && ahead.length > 0) {
        const line = ahead.shift() ?? "";
        err(`${clean(line, 10_000)}\n`);
        return line;
      }
      if (ended) {
        err("\n");
        return undefined;
      }
      return new Promise((resolve) => {
        const interrupt = (): void => {
          waiting = undefined;
          process.exitCode = interrupted;
          err(`\n${ifLeft}`);
          input.close();
        };
        process.once("SIGINT", interrupt);
        waiting = (line) => {
          waiting = undefined;
          process.off("SIGINT", interrupt);
          if (ended) err("\n");
          else input.pause();
          resolve(line);
        };
        input.resume();
      });
    },
  };
};

/** A turn of the event loop with its reading: a line that lies ready is there afterwards. */
const ofALoop = async (): Promise<void> => {
  for (let turn = 0; turn < 2; turn += 1) await new Promise((resolve) => setImmediate(resolve));
};

/** Longer than the lines of one paste are apart, shorter than a person notices. */
const ofAPaste = (): Promise<unknown> => new Promise((resolve) => setTimeout(resolve, 40));
