// A typed line in pieces, each with the place where it stands.

import type { Place } from "../../problem/index.ts";

/** A piece of a line; `from` counts from 0. */
export interface Piece {
  readonly text: string;
  readonly from: number;
}

/** A line of the quick typing: `head: tail ; note`. A `#` at the start, or alone between blanks, begins a comment; in a note it
 *  is part of the note. */
export interface TypedText {
  /** As it was typed, but for the comment; signs that word processors put for a hyphen are hyphens. */
  readonly text: string;
  /** Before the colon; all where there is none. */
  readonly head: Piece;
  /** Behind the colon. */
  readonly tail?: Piece;
  /** Behind a semicolon with a blank before it. */
  readonly note?: Piece;
  placeOf(piece: Piece): Place;
}

export const partsOfLine = (line: string): TypedText => {
  const typed = line.replace(/[\r\n\t]/g, " ");
  const plain = typed.replace(/[\u2010-\u2014\u2212]/g, "-");
  const mark = /\s;/.exec(plain);
  const comment = /^\s*#|\s#(?=\s|$)/.exec(plain.slice(0, mark?.index));
  const text = comment === null ? plain : plain.slice(0, comment.index);
  const said = text.slice(0, mark?.index);
  const colon = said.indexOf(":");
  const note =
    mark === null || comment !== null
      ? undefined
      : trimmed({ text: text.slice(mark.index + 2), from: mark.index + 2 });
  return {
    text,
    head: trimmed({ text: colon < 0 ? said : said.slice(0, colon), from: 0 }),
    ...(colon < 0 ? {} : { tail: trimmed({ text: said.slice(colon + 1), from: colon + 1 }) }),
    ...(note === undefined || note.text === "" ? {} : { note }),
    placeOf: ({ text: found, from }) => ({
      column: from + 1,
      excerpt: { text: typed, from: from + 1, to: from + Math.max(1, found.length) },
    }),
  };
};

/** The words of a piece, `0.35 .. 0.40` as one; commas and semicolons between them part as blanks do. */
export const wordsOf = ({ text, from }: Piece): readonly Piece[] =>
  [...text.matchAll(/[^\s;]+?(?:\s*\.\.\s*[^\s;]+|(?=[\s;]|$))/g)]
    .map((match) => ({ text: match[0].replace(/,+$/, ""), from: from + match.index }))
    .filter((word) => word.text !== "");

/** What commas with a blank behind them part. */
export const itemsOf = ({ text, from }: Piece): readonly Piece[] =>
  [...text.matchAll(/(?:[^,]|,(?=\S))+/g)]
    .map((match) => trimmed({ text: match[0], from: from + match.index }))
    .filter((item) => item.text !== "");

const trimmed = ({ text, from }: Piece): Piece => {
  const start = text.length - text.trimStart().length;
  return { text: text.trim(), from: from + start };
};
