// A crack: `crack head: between 2 and 3 exhaust, 12mm, dye`: where it is, how long, and how it was found, in any order.

import { problem } from "../../problem/index.ts";
import { quantityOf, readPlace } from "../../record/index.ts";
import { figureProblem } from "./figure-problem.ts";
import type { MeasurementsOfLine } from "./figure-line.ts";
import { measurementOf } from "./measurement-of.ts";
import { readFigures } from "./typed-figure.ts";
import { type Piece, type TypedText, itemsOf } from "./typed-text.ts";
import type { TypingContext } from "./typing.ts";

interface CrackLine {
  /** What is cracked. */
  readonly label: string;
  readonly note: string | undefined;
  readonly context: TypingContext;
  readonly line: TypedText;
  readonly tail: Piece;
}

export const crackLine = ({ label, note, context, line, tail }: CrackLine): MeasurementsOfLine => {
  const [found, length] = [quantityOf("crack", "found by"), quantityOf("crack", "length")];
  if (found === undefined || length === undefined)
    throw new TypeError("crackLine: a crack has lost its quantities");
  const items = itemsOf(tail);
  const how = items.find(({ text }) => found.words.includes(text.toLowerCase()));
  const long = items.find(({ text }) => /^[\d.,<+-]+\s*[a-z"µμ]*$/i.test(text));
  const words = items.filter((item) => item !== how && item !== long).map(({ text }) => text);
  const at = readPlace(found, words.join(", ")) ?? "";
  if (how === undefined) {
    const facts = { text: tail.text, fault: "found-by", line: line.head.text } as const;
    return { ok: false, problems: [problem("typed-figure", facts, line.placeOf(tail))] };
  }
  const shared = { part: "crack" as const, label, note, context };
  const word = { kind: "word" as const, word: how.text.toLowerCase() };
  const finding = measurementOf(
    { ...shared, quantity: found },
    { at, value: word, written: word.word, typed: how.text, column: how.from + 1 },
  );
  if (long === undefined) return { ok: true, measurements: [finding] };
  const unit = context.length === undefined ? {} : { unit: context.length };
  const read = readFigures(long.text.replace(/\s/g, ""), { kind: "length", most: length.most, ...unit });
  if (!read.ok) {
    const said = { text: long.text, kind: "length" as const, what: "crack length", line: line.head.text };
    return { ok: false, problems: [figureProblem(read.fault, { ...said, place: line.placeOf(long) })] };
  }
  const lengths = read.value.map((figure) =>
    measurementOf(
      { ...shared, quantity: length },
      { ...figure, at, typed: long.text, column: long.from + 1 },
    ),
  );
  return { ok: true, measurements: [finding, ...lengths] };
};
