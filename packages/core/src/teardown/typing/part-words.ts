// The words before the colon: which part, which quantity of it, which one, and where on it.

import { type MeasuredPart, type MeasuredQuantity, partNames, quantitiesOf } from "../../record/index.ts";
import type { Piece } from "./typed-text.ts";

/** Words that name a quantity without its part. */
const short: Readonly<Record<string, { readonly part: MeasuredPart; readonly quantity: string }>> = {
  "end play": { part: "crank", quantity: "end play" },
  runout: { part: "crank", quantity: "runout" },
};

/** What a line without a word of a quantity gives. A crank has to be told which. */
const usual: Readonly<Partial<Record<MeasuredPart, string>>> = {
  "main bearing": "thread clearance",
  "rod bearing": "thread clearance",
};

export interface PartWords {
  readonly part: MeasuredPart;
  /** Undefined: the usual one of this part. */
  readonly quantity?: MeasuredQuantity;
  /** The words that are left: label and place. */
  readonly rest: readonly Piece[];
}

/** Reads the words of a head; undefined where they begin with no part. */
export const partWords = (words: readonly Piece[]): PartWords | undefined => {
  const begins = (name: string): boolean =>
    name.split(" ").every((word, i) => words[i]?.text.toLowerCase() === word);
  const behind = (name: string): readonly Piece[] => words.slice(name.split(" ").length);
  const [name, meant] = Object.entries(short).find(([key]) => begins(key)) ?? [];
  if (name !== undefined && meant !== undefined) {
    const quantity = quantitiesOf(meant.part).find((one) => one.name === meant.quantity);
    return { part: meant.part, ...(quantity === undefined ? {} : { quantity }), rest: behind(name) };
  }
  const part = partNames.filter(begins).toSorted((a, b) => b.length - a.length)[0];
  return part === undefined ? undefined : { part, ...quantityAmong(part, behind(part)) };
};

/** All words that a head may begin with. */
export const beginnings: readonly string[] = [...partNames, ...Object.keys(short)];

/** The figure that a line of a part holds where it does not say which. */
export const usualQuantity = (part: MeasuredPart): MeasuredQuantity | undefined => {
  const figures = quantitiesOf(part).filter(({ kind }) => kind !== "word");
  const wanted = usual[part];
  return part === "crank" ? undefined : (figures.find(({ name }) => name === wanted) ?? figures[0]);
};

/** The quantity that some of the words name, by its whole name or by a word that no other quantity of the part has. */
const quantityAmong = (part: MeasuredPart, words: readonly Piece[]): Omit<PartWords, "part"> => {
  const known = quantitiesOf(part);
  const names = known.flatMap((quantity) => [
    { words: quantity.name.split(" "), quantity },
    ...quantity.name.split(" ").map((word) => ({ words: [word], quantity })),
  ]);
  const isOwn = ({ words: [word = "", ...more], quantity }: (typeof names)[number]): boolean =>
    more.length > 0 ||
    quantity.name === word ||
    !known.some((other) => other !== quantity && other.name.split(" ").includes(word));
  const found = names
    .filter(isOwn)
    .map((name) => ({ ...name, at: indexOf(words, name.words) }))
    .filter(({ at }) => at >= 0)
    .toSorted((a, b) => b.words.length - a.words.length)[0];
  if (found === undefined) return { rest: words };
  const rest = words.filter((_, i) => i < found.at || i >= found.at + found.words.length);
  return { quantity: found.quantity, rest };
};

const indexOf = (pieces: readonly Piece[], words: readonly string[]): number =>
  pieces.findIndex((_, i) => words.every((word, j) => pieces[i + j]?.text.toLowerCase() === word));
