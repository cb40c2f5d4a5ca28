// The head of a line, read in full: which part and quantity, which one, where on it, and how far the places lie apart.

import { type Problem, nearest, problem } from "../../problem/index.ts";
import type { Length } from "../../quantity/index.ts";
import {
  type MeasuredPart,
  type MeasuredQuantity,
  labelMend,
  labelsExpected,
  placeExample,
  placeNear,
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
  const told = typed === undefined ? undefined : distanceIn(typed.text, context);
  const first = rest[mark];
  if (first !== undefined && told === undefined) {
    const wrong = typed ?? first;
    const facts = { text: wrong.text, fault: "not-a-place", line: line.head.text } as const;
    return refused(problem("typed-place", facts, line.placeOf(wrong)));
  }
  const parted = withBetween(mark < 0 ? rest : rest.slice(0, mark)).flatMap((word) =>
    quantity.label === "casting" ? [word] : strokesParted(word),
  );
  const bare = told === undefined ? distanceBehind(parted, as) : undefined;
  const words = bare === undefined ? parted : parted.slice(0, -1);
  const distance = told ?? bare;
  const label = labelAmong(words, as);
  if (label === undefined) return refused(noLabel(words, as));
  const places = label.rest;
  const wrong = places.find(({ text }) => placeWord(quantity, text) === undefined);
  if (wrong !== undefined) return refused(notAPlace(as, wrong.text, wrong));
  const named = places.map(({ text }) => placeWord(quantity, text) ?? "");
  return { ok: true, head: { label: label.name, named, ...(distance === undefined ? {} : { distance }) } };
};

export const takesDistance = ({ places }: MeasuredQuantity): boolean =>
  places.flat().some(({ kind }) => kind === "distance");

/** The last word as a distance, which needs no `at` behind a label or a line: `long1/40`, `piston 3 11mm`. Behind a stroke it is
 *  in millimetres, as places are written. */
const distanceBehind = (words: readonly Piece[], { quantity, context, line }: HeadAs): Length | undefined => {
  const last = words.at(-1);
  if (last === undefined || words.length < 2 || !takesDistance(quantity)) return undefined;
  const isStroke = line.text[last.from - 1] === "/";
  return distanceIn(isStroke && /^[\d.,]+$/.test(last.text) ? `${last.text}mm` : last.text, context);
};

/** Where a quantity takes no such place. */
export const notAPlace = (
  { part, quantity, line }: Pick<HeadAs, "part" | "quantity" | "line">,
  text: string,
  piece: Piece,
): Problem => {
  const example = placeNear(quantity, text) ?? placeExample(quantity);
  const more = { expected: placesExpected(quantity), example };
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
    if (own.some(({ text }) => !isFreeName(kind, text, cylinders))) return undefined;
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

/** Which of several heads or decks: any other word there is a slip of a place. */
const sides =
  /^(?:left|right|front|rear|upper|lower|inner|outer|odd|even|port|starboard|bank|side|[a-d]|\d{1,2})$/i;
const castings = ["head", "block", "crank", "crankcase", "cylinder", "piston", "rod", "liner", "manifold"];

/** Whether a word may name a face or a casting; of castings all but a slip of a usual one. */
const isFreeName = (kind: "face" | "casting", text: string, cylinders: readonly string[]): boolean => {
  if (kind === "face") return sides.test(text) || readLabel("cylinder", text, cylinders) !== undefined;
  return castings.includes(text.toLowerCase()) || nearest(text, castings).length === 0;
};

const textOf = (words: readonly Piece[]): string => words.map(({ text }) => text).join(" ");

const noLabel = (words: readonly Piece[], as: HeadAs): Problem => {
  const { part, quantity, cylinders, line } = as;
  const { label: kind } = quantity;
  const wrong = words.find(
    ({ text }) =>
      placeWord(quantity, text) === undefined &&
      !((kind === "face" || kind === "casting") && isFreeName(kind, text, cylinders)),
  );
  if (kind === "face" && wrong !== undefined) return notAPlace(as, wrong.text, wrong);
  const [near] = kind === "casting" ? nearest(wrong?.text ?? "", castings) : [];
  const mend = labelMend(quantity.label, cylinders);
  const which = quantity.label === "valve" ? `${cylinders[0] ?? ""}in` : (cylinders[0] ?? "1");
  const facts = {
    what: `${part} ${quantity.name}`,
    text: wrong?.text ?? "",
    expected: labelsExpected(quantity.label, cylinders),
    mend:
      wrong === undefined
        ? `write such as ${part} ${which}: and what was measured`
        : near === undefined
          ? mend
          : `write ${near}`,
  };
  return problem("label-bad", facts, line.placeOf(wrong ?? line.head));
};
