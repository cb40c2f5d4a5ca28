// The head of a line, read in full: which part and quantity, which one, where on it, and how far the places lie apart.

import { type Problem, nearest, problem } from "../../problem/index.ts";
import type { Length } from "../../quantity/index.ts";
import {
  type MeasuredPart,
  type MeasuredQuantity,
  labelMend,
  labelsExpected,
  placeExample,
  placesExpected,
  readLabel,
  readPlace,
} from "../../record/index.ts";
import { distanceIn } from "./distance.ts";
import type { Piece, TypedText } from "./typed-text.ts";
import type { TypingContext } from "./typing.ts";

export interface Head {
  readonly label: string;
  /** Words of places, as the table spells them. */
  readonly named: readonly string[];
  /** Behind the word `at`. [m] */
  readonly distance?: Length;
}

export interface HeadAs {
  readonly part: MeasuredPart;
  readonly quantity: MeasuredQuantity;
  readonly cylinders: readonly string[];
  readonly context: TypingContext;
  readonly line: TypedText;
}

export type HeadReading =
  { readonly ok: true; readonly head: Head } | { readonly ok: false; readonly problem: Problem };

/** Reads what stands behind the words of the part. */
export const readHead = (rest: readonly Piece[], as: HeadAs): HeadReading => {
  const { line, quantity, context } = as;
  const mark = rest.findIndex(({ text }) => text.toLowerCase() === "at");
  const typed = mark < 0 ? undefined : joinedPiece(rest.slice(mark + 1), line);
  const distance = typed === undefined ? undefined : distanceIn(typed.text, context);
  const first = rest[mark];
  if (first !== undefined && distance === undefined) {
    const wrong = typed ?? first;
    const facts = { text: wrong.text, fault: "not-a-place", line: line.head.text } as const;
    return refused(problem("typed-place", facts, line.placeOf(wrong)));
  }
  const words = withBetween(mark < 0 ? rest : rest.slice(0, mark));
  const label = labelAmong(words, as);
  if (label === undefined) return refused(noLabel(words, as));
  const places = label.rest.flatMap(strokesParted);
  const wrong = places.find(({ text }) => placeWord(quantity, text) === undefined);
  if (wrong !== undefined) return refused(notAPlace(as, wrong.text, wrong));
  const named = places.map(({ text }) => placeWord(quantity, text) ?? "");
  return { ok: true, head: { label: label.name, named, ...(distance === undefined ? {} : { distance }) } };
};

/** Where a quantity takes no such place. */
export const notAPlace = (
  { part, quantity, line }: Pick<HeadAs, "part" | "quantity" | "line">,
  text: string,
  piece: Piece,
): Problem => {
  const words = quantity.places.flat().flatMap((one) => ("words" in one ? one.words : []));
  const [near] = nearest(text, words);
  const more = { expected: placesExpected(quantity), example: near ?? placeExample(quantity) };
  return problem("place-bad", { what: `${part} ${quantity.name}`, text, ...more }, line.placeOf(piece));
};

const refused = (one: Problem): HeadReading => ({ ok: false, problem: one });

/** A word of a place of this quantity, in the table's spelling. */
const placeWord = ({ places }: MeasuredQuantity, text: string): string | undefined => {
  const each = places.flat().filter(({ kind }) => kind !== "distance" && kind !== "free");
  return readPlace({ places: each.map((part) => [part]), placeNeeded: true }, text);
};

/** `between 1-2` is one word of a place. */
const withBetween = (words: readonly Piece[]): readonly Piece[] =>
  words.flatMap((word, i) => {
    const before = words[i - 1];
    const next = words[i + 1];
    if (before?.text.toLowerCase() === "between") return [];
    return word.text.toLowerCase() === "between" && next !== undefined
      ? [{ text: `${word.text} ${next.text}`, from: word.from }]
      : [word];
  });

const strokesParted = ({ text, from }: Piece): readonly Piece[] =>
  [...text.matchAll(/[^/]+/g)].map((match) => ({ text: match[0], from: from + match.index }));

const joinedPiece = (pieces: readonly Piece[], line: TypedText): Piece | undefined => {
  const [first, last] = [pieces[0], pieces.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  return { text: line.text.slice(first.from, last.from + last.text.length), from: first.from };
};

interface Labelled {
  readonly name: string;
  readonly rest: readonly Piece[];
}

/** The label and the words besides; undefined where the quantity needs one and none is there. */
const labelAmong = (
  words: readonly Piece[],
  { quantity, cylinders }: Pick<HeadAs, "quantity" | "cylinders">,
): Labelled | undefined => {
  const { label: kind } = quantity;
  if (kind === "none") return { name: "", rest: words };
  if (kind === "face" || kind === "casting") {
    const own = words.filter(({ text }) => placeWord(quantity, text) === undefined);
    const name = readLabel(kind, textOf(own), cylinders);
    return name === undefined ? undefined : { name, rest: words.filter((word) => !own.includes(word)) };
  }
  const found = words
    .flatMap((_, i) => [1, 2].map((count) => ({ i, count, text: textOf(words.slice(i, i + count)) })))
    .map((one) => ({ ...one, name: readLabel(kind, one.text.replace(/^#/, ""), cylinders) }))
    .find(({ name }) => name !== undefined);
  if (found?.name === undefined) return undefined;
  return { name: found.name, rest: words.filter((_, i) => i < found.i || i >= found.i + found.count) };
};

const textOf = (words: readonly Piece[]): string => words.map(({ text }) => text).join(" ");

const noLabel = (words: readonly Piece[], { part, quantity, cylinders, line }: HeadAs): Problem => {
  const wrong = words.find(({ text }) => placeWord(quantity, text) === undefined);
  const mend = labelMend(quantity.label, cylinders);
  const which = quantity.label === "valve" ? `${cylinders[0] ?? ""}in` : (cylinders[0] ?? "1");
  const facts = {
    what: `${part} ${quantity.name}`,
    text: wrong?.text ?? "",
    expected: labelsExpected(quantity.label, cylinders),
    mend: wrong === undefined ? `write such as ${part} ${which}: and what was measured` : mend,
  };
  return problem("label-bad", facts, line.placeOf(wrong ?? line.head));
};
