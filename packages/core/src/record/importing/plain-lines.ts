// The lines of a sheet in which nothing is quoted: found without the whole parser, which would make a cell of each.

import { afterLineEnd, isLineEnd } from "../located-rows.ts";

/** A longer line, or one row more, may be what only the whole parser tells: a cell, a row, a number of columns too large. */
const mostCharacters = 2_000;
const mostRows = 200_000;

export interface PlainLine {
  readonly line: number;
  readonly offset: number;
  readonly end: number;
}

/** The lines that hold a character; undefined where the text needs the whole parser: for quotes, marks at its beginning,
 *  half characters, and what is too large, which it tells. */
export const plainLines = (text: string): Iterable<PlainLine> | undefined => {
  if (text.includes('"') || /^\uFEFF|^sep=.[\r\n]/i.test(text) || /\p{Surrogate}/u.test(text))
    return undefined;
  let rows = 0;
  for (const { offset, end } of linesOf(text)) {
    rows += 1;
    if (end - offset > mostCharacters || rows > mostRows) return undefined;
  }
  return linesOf(text);
};

const linesOf = function* (text: string): Iterable<PlainLine> {
  let line = 1;
  for (let offset = 0; offset < text.length; line += 1) {
    const end = endOfLine(text, offset);
    if (end > offset) yield { line, offset, end };
    offset = afterLineEnd(text, end);
  }
};

const endOfLine = (text: string, from: number): number => {
  let at = from;
  while (at < text.length && !isLineEnd(text, at)) at += 1;
  return at;
};
