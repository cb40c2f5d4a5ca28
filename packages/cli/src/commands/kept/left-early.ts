// Who leaves before the end: what was typed is given back, and where it is kept the line that goes on with it.

import { Stop } from "../../command.ts";
import type { EntryPlace } from "../../logbook/unfinished.ts";
import { typedLine } from "../../options/quote.ts";
import { prose } from "../../render/prose.ts";
import { usageFault } from "../usage.ts";

interface Left {
  /** What was typed, lines with their ends. */
  readonly typed: string;
  readonly isKept: boolean;
  readonly expected: string;
  /** What to do where nothing is kept. */
  readonly mend?: string;
  /** Options that the line needs, such as --new. */
  readonly words?: readonly string[];
}

export const leftEarly = (place: Pick<EntryPlace, "command" | "engine">, left: Left): Stop => {
  const { typed, expected, mend = "run the command again when you have it" } = left;
  const fault = left.isKept
    ? usageFault("left", keptFound, expected, goOnWith(place, left.words))
    : usageFault("left", "nothing was saved", expected, mend);
  return new Stop(2, [fault], typed);
};

const keptFound = "nothing was saved; what you typed is kept, to go on with";

/** The same where the person leaves by Ctrl-C and no fault is printed. */
export const leftText = (
  place: Pick<EntryPlace, "command" | "engine">,
  { typed, isKept, words }: Omit<Left, "expected">,
  width: number,
): string => {
  const lines = isKept ? [...prose(`${keptFound}:`, width), goOnWith(place, words)] : ["nothing was saved"];
  return `${lines.join("\n")}\n${typed}`;
};

const goOnWith = (
  { command, engine }: Pick<EntryPlace, "command" | "engine">,
  words: readonly string[] = [],
): string => typedLine([command, engine, ...words]);
