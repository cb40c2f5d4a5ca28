// A list under a mark in the margin: one text a line, broken where it is long, and a count of what is not told.

import { prose } from "../prose.ts";
import { padEnd } from "../width.ts";

const margin = 7;

/** @param mark - a word of the margin, in front of the first line  @param most - texts told; the rest is counted */
export const markedList = (
  mark: string,
  texts: readonly string[],
  { width, most }: { readonly width: number; readonly most: number },
): readonly string[] => {
  const told = texts.slice(0, most);
  const left = texts.length - told.length;
  const more = left === 0 ? [] : [`${String(left)}${told.length === 0 ? "" : " more"}: --why`];
  return [...told, ...more].flatMap((text, i) => prose(text, width, padEnd(i === 0 ? mark : "", margin)));
};
