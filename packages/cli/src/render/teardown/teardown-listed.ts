// A list under a mark in the margin: one text a line, broken where it is long, and behind the last how many are not told.

import { prose } from "../prose.ts";
import { padEnd } from "../width.ts";

const margin = 7;

/** @param mark - a word of the margin, in front of the first line  @param most - texts told, 1 at least; the rest is counted */
export const markedList = (
  mark: string,
  texts: readonly string[],
  { width, most }: { readonly width: number; readonly most: number },
): readonly string[] => {
  const told = texts.slice(0, most);
  const left = texts.length - told.length;
  const more = left === 0 ? "" : ` (${String(left)}\u00a0more:\u00a0--why)`;
  return told.flatMap((text, i) =>
    prose(i === told.length - 1 ? text + more : text, width, padEnd(i === 0 ? mark : "", margin)),
  );
};
