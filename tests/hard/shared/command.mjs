// One command line in this process, in a world of its own, judged by what it printed and how it ended.

import { busy, faultOfText } from "./judge.mjs";

const ourFault = 70;

/** @param program - as loadProgram gives it  @param words - the command line  @returns exit, out, err and milliseconds of processor time */
export const type = async (program, words, { cwd, home, width = 80, answers = [], input = "" }) => {
  const out = [];
  const err = [];
  const lines = [...answers];
  const interactive = answers.length > 0;
  const io = {
    width,
    interactive,
    terminal: interactive,
    unicode: true,
    today: "2026-11-25",
    now: () => "2026-11-25T10:00:00",
    env: { HOME: home, XDG_DATA_HOME: home, XDG_STATE_HOME: home },
    cwd,
    out: (text) => void out.push(text),
    err: (text) => void err.push(text),
    ask: (question) => {
      err.push(question);
      return Promise.resolve(lines.shift());
    },
    waits: () => Promise.resolve(false),
    readInput: () => Promise.resolve(Buffer.from(input)),
    inputParts: () => ReadableStream.from([Buffer.from(input)]),
    inputHolds: () => input.trim() !== "",
    watched: false,
    isRead: () => true,
  };
  const begun = busy();
  const exit = await program.run(words, io);
  return { exit, out: out.join(""), err: err.join(""), took: busy() - begun };
};

/** What is wrong with how a command ended; undefined where nothing is. Any exit but that of a bug of ours is an answer. */
export const faultOfRun = ({ exit, out, err }, words) => {
  const line = words.join(" ").slice(0, 200);
  if (![0, 1, 2, 3].includes(exit) || exit === ourFault) return `${line} ends with ${String(exit)}: ${err}`;
  if (exit !== 0 && out === "" && err === "") return `${line} ends with ${String(exit)} and says nothing`;
  const text = faultOfText(out) ?? faultOfText(err);
  if (text !== undefined) return `${line}: ${text}`;
  if (!words.includes("--json") || out === "") return undefined;
  try {
    JSON.parse(out);
    return undefined;
  } catch (error) {
    return `${line}: ${error.message}`;
  }
};
