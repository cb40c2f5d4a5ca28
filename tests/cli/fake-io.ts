// A world for one command line inside a test: keeps what is written, answers what is asked.

import type { Io } from "sealtrend";

export interface FakeIo extends Io {
  /** All that was written to stdout so far. */
  stdout(): string;
  stderr(): string;
  /** The questions asked so far. */
  asked(): readonly string[];
}

type Given = Partial<Omit<Io, "out" | "err" | "ask" | "readInput">> & {
  /** One line for each question; after the last the input has ended. */
  readonly answers?: readonly string[];
  /** Standard input. */
  readonly input?: string;
};

export const fakeIo = ({ answers = [], input = "", ...given }: Given = {}): FakeIo => {
  const out: string[] = [];
  const err: string[] = [];
  const asked: string[] = [];
  return {
    width: 80,
    interactive: false,
    terminal: false,
    unicode: true,
    today: "2026-11-25",
    now: () => "2026-11-25T10:00:00",
    env: {},
    cwd: ".",
    ...given,
    out: (text) => void out.push(text),
    err: (text) => void err.push(text),
    ask: (question) => Promise.resolve(answers[asked.push(question) - 1]),
    waits: () => Promise.resolve(false),
    readInput: () => Promise.resolve(new TextEncoder().encode(input)),
    inputParts: () => ReadableStream.from([new TextEncoder().encode(input)]),
    inputHolds: () => input.trim() !== "",
    watched: false,
    isRead: () => true,
    stdout: () => out.join(""),
    stderr: () => err.join(""),
    asked: () => asked,
  };
};
