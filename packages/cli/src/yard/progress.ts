// How far it has come, for whoever waits: a line of its own each time, never drawn over, as a screen reader and a log need it.

import type { Io } from "../io.ts";

const [firstAfter, every] = [1_000, 2_000];

/** @param clock - milliseconds  @returns to be called with how many are done, of how many */
export const progress = (
  { watched, err }: Pick<Io, "watched" | "err">,
  clock: () => number,
): ((done: number, of: number) => void) => {
  let next = clock() + firstAfter;
  return (done, of) => {
    if (!watched || clock() < next) return;
    next = clock() + every;
    err(`${done.toLocaleString("en-US")} of ${of.toLocaleString("en-US")} engines\n`);
  };
};
