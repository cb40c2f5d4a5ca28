// What was seen on a part: words of its findings, one or several with commas between.

import { type Problem, problem } from "../../problem/index.ts";
import { type MeasuredPart, type MeasuredQuantity, quantitiesOf, readPlace } from "../../record/index.ts";
import type { MeasurementsOfLine } from "./figure-line.ts";
import { notAPlace, readHead } from "./head.ts";
import { measurementOf } from "./measurement-of.ts";
import { type Piece, type TypedText, itemsOf } from "./typed-text.ts";
import type { TypingContext } from "./typing.ts";

export interface FindingLine {
  readonly part: MeasuredPart;
  /** That the head names; else any of the part. */
  readonly quantity: MeasuredQuantity | undefined;
  /** The words of the head besides part and quantity. */
  readonly rest: readonly Piece[];
  readonly cylinders: readonly string[];
  readonly context: TypingContext;
  readonly line: TypedText;
  readonly tail: Piece;
}

export const findingsOf = (part: MeasuredPart): readonly MeasuredQuantity[] =>
  quantitiesOf(part).filter(({ kind }) => kind === "word");

export const findingLine = (asked: FindingLine): MeasurementsOfLine => {
  const read = itemsOf(asked.tail).map((piece) => readItem(piece, asked));
  const problems = read.flatMap((one) => (one.ok ? [] : one.problems));
  if (problems.length > 0) return { ok: false, problems: problems.slice(0, 1) };
  return { ok: true, measurements: read.flatMap((one) => (one.ok ? one.measurements : [])) };
};

const refused = (one: Problem): MeasurementsOfLine => ({ ok: false, problems: [one] });

/** Reads `crosshatch full`, `one-sided`, `score light`; a word that two findings share needs the name of its own. */
const readItem = (piece: Piece, asked: FindingLine): MeasurementsOfLine => {
  const { part, quantity: wanted, context, line } = asked;
  const known = wanted === undefined ? findingsOf(part) : [wanted];
  const text = piece.text.toLowerCase().replace(/\s+/g, " ");
  const meant = known.find(({ name }) => text === name || text.startsWith(`${name} `));
  const word = meant === undefined ? text : text.slice(meant.name.length).trim();
  const fitting = (meant === undefined ? known : [meant]).filter(({ words }) => words.includes(word));
  const [quantity] = fitting;
  if (quantity === undefined || fitting.length > 1) {
    const meantOnes = meant === undefined ? known : [meant];
    return refused(noWord(fitting.length > 1 ? fitting : meantOnes, word, piece, asked));
  }
  const head = readHead(asked.rest, { ...asked, quantity });
  if (!head.ok) return refused(head.problem);
  const { label, named } = head.head;
  const at = readPlace(quantity, named.join("/"));
  if (at === undefined) return refused(notAPlace({ part, quantity, line }, named.join("/"), line.head));
  const value = { kind: "word", word } as const;
  const measured = { at, value, written: word, typed: piece.text, column: piece.from + 1 };
  const shared = { part, quantity, label, note: line.note?.text, context };
  return { ok: true, measurements: [measurementOf(shared, measured)] };
};

/** @param meant - the findings that the word may be of */
const noWord = (
  meant: readonly MeasuredQuantity[],
  text: string,
  piece: Piece,
  { part, line }: FindingLine,
): Problem => {
  const [only] = meant.length === 1 ? meant : [];
  const all = meant.flatMap(({ name, words }) => words.map((word) => `${name} ${word}`));
  const alike = all.filter((word) => word.endsWith(` ${text}`));
  const facts =
    only === undefined
      ? { column: part, text, words: alike.length > 0 ? alike : all }
      : { column: `${part} ${only.name}`, text, words: only.words };
  return problem("word-unknown", facts, line.placeOf(piece));
};
