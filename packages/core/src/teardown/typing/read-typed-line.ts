// One typed line read: a part with its figures or findings, a setting, or nothing.

import { type Problem, problem } from "../../problem/index.ts";
import { type Engine, type MeasuredQuantity, isFormula, quantitiesOf } from "../../record/index.ts";
import { crackLine } from "./crack-line.ts";
import { type MeasurementsOfLine, figureLine, nothingBehind } from "./figure-line.ts";
import { findingLine, findingsOf } from "./finding-line.ts";
import { readHead, takesDistance } from "./head.ts";
import { type PartWords, beginnings, partWords, usualQuantity } from "./part-words.ts";
import { readSetting, settingWords } from "./settings.ts";
import { type Piece, type TypedText, partsOfLine, wordsOf } from "./typed-text.ts";
import type { TypedLine, TypingContext } from "./typing.ts";
import { typedUnit, unitNames } from "./units.ts";

/** Reads one line of the quick typing. Never throws, whatever was typed.
 *  @param context - what the lines before have set; the next line is read in the one given back */
export const readTypedLine = (line: string, context: TypingContext, engine: Engine): TypedLine => {
  const text = partsOfLine(line);
  if (text.head.text === "" && text.tail === undefined && text.note === undefined) return { kind: "blank" };
  const setting = readSetting(text, context);
  if (setting?.ok === true) return { kind: "context", text: setting.text, context: setting.context };
  if (setting !== undefined) return { kind: "fault", problems: [setting.problem] };
  const read = partLine({ text, context, engine });
  return read.ok
    ? { kind: "measurements", measurements: read.measurements, context }
    : { kind: "fault", problems: read.problems };
};

interface Asked {
  readonly text: TypedText;
  readonly context: TypingContext;
  readonly engine: Engine;
}

const refused = (...problems: readonly Problem[]): MeasurementsOfLine => ({ ok: false, problems });

/** `pin 2 instead: 2.2485`. */
const isInstead = ({ text }: Piece): boolean => text.toLowerCase() === "instead";

/** With the word the first figure of a place takes the place of those before it; what follows it there repeats it. */
const partLine = (asked: Asked): MeasurementsOfLine => {
  const read = measuredLine(asked);
  if (!read.ok || !wordsOf(asked.text.head).some(isInstead)) return read;
  const { measurements } = read;
  const isFirst = (at: string | undefined, i: number): boolean =>
    measurements.findIndex((one) => one.at === at) === i;
  return {
    ok: true,
    measurements: measurements.map((one, i) => (isFirst(one.at, i) ? { ...one, instead: true } : one)),
  };
};

const measuredLine = (asked: Asked): MeasurementsOfLine => {
  const { text, context, engine } = asked;
  const { tail, note } = text;
  const words = partWords(wordsOf(text.head).filter((word) => !isInstead(word)));
  if (words === undefined) return refused(unknownStart(text));
  if (isWhichClearance(words, text)) return refused(whichClearance(words, asked));
  if (tail === undefined) return refused(noColon(words, asked));
  if (note !== undefined && isFormula(note.text))
    return refused(problem("text-formula", { column: "note" }, text.placeOf(note)));
  if (tail.text === "") return refused(nothingBehind(text));
  if (words.part === "crack") return crack(words, tail, asked);
  if (words.quantity?.kind === "word" || isWords(tail, words))
    return findingLine({
      ...words,
      quantity: words.quantity,
      cylinders: engine.cylinders,
      context,
      line: text,
      tail,
    });
  const quantity = words.quantity ?? usualQuantity(words.part);
  return quantity === undefined ? refused(noQuantity(text, tail)) : figures(words, quantity, tail, asked);
};

/** Letters where figures could stand; a slip such as `86.6O` has digits, and `x` was not taken. */
const isWords = ({ text }: Piece, { part, quantity }: PartWords): boolean => {
  const [first = ""] = text.split(/[\s,]/);
  if (quantity !== undefined || findingsOf(part).length === 0) return false;
  return /\p{L}/u.test(first) && !/\d/.test(first) && !/^x$/i.test(first) && typedUnit(first) === undefined;
};

const figures = (
  { part, rest }: PartWords,
  quantity: MeasuredQuantity,
  tail: Piece,
  { text, context, engine }: Asked,
): MeasurementsOfLine => {
  const { kind } = quantity;
  if (kind === "word") return refused();
  const head = readHead(rest, { part, quantity, cylinders: engine.cylinders, context, line: text });
  if (!head.ok) return refused(head.problem);
  const note = text.note?.text;
  return figureLine({
    part,
    quantity,
    label: head.head.label,
    note,
    context,
    kind,
    head: head.head,
    line: text,
    tail,
  });
};

const crack = (
  { part, rest }: PartWords,
  tail: Piece,
  { text, context, engine }: Asked,
): MeasurementsOfLine => {
  const [quantity] = quantitiesOf(part);
  if (quantity === undefined) return refused();
  const head = readHead(rest, { part, quantity, cylinders: engine.cylinders, context, line: text });
  if (!head.ok) return refused(head.problem);
  return crackLine({ label: head.head.label, note: text.note?.text, context, line: text, tail });
};

const unknownStart = (text: TypedText): Problem => {
  const [first] = wordsOf(text.head);
  const piece = first ?? text.head;
  const words = [...apart(piece.text), ...beginnings, ...settingWords, ...unitNames.length];
  return problem("typed-start", { text: piece.text, words }, text.placeOf(piece));
};

/** `bore3` as `bore 3`. */
const apart = (typed: string): readonly string[] => {
  const [, part = "", label = ""] = /^([a-z]+)(\d\w*)$/i.exec(typed) ?? [];
  return beginnings.includes(part.toLowerCase()) ? [`${part.toLowerCase()} ${label}`] : [];
};

/** With the colon where it belongs: before the first figure, else behind the part and its label. */
const noColon = ({ part, quantity, rest }: PartWords, asked: Asked): Problem => {
  const { text, engine } = asked;
  const words = wordsOf(text.head);
  const of = quantity ?? usualQuantity(part);
  const hasLabel = of !== undefined && of.label !== "none";
  const [label] = hasLabel ? rest : [];
  const begin = label ?? words[words.length - rest.length - 1] ?? text.head;
  const behindLabel = words.filter(({ from }) => from > begin.from);
  const last = lastOfHead(behindLabel, of) ?? begin;
  const end = last.from + last.text.length;
  const named = text.text.slice(text.head.from, end).trim();
  const behind = text.text
    .slice(end)
    .trim()
    .replace(/^at\s+/i, "");
  const line = behind === "" ? `${named}: and the figures behind it` : withColon(named, behind, asked);
  return problem("typed-start", { text: named, words: engine.cylinders, line }, text.placeOf(last));
};

/** As it can be typed: a bare figure gets a unit where none was chosen, a place alone has its figures yet to come. */
const withColon = (named: string, behind: string, { text, context, engine }: Asked): string => {
  const line = `${named}: ${behind}`;
  const read = readTypedLine(line, context, engine);
  if (read.kind !== "fault") return line;
  if (read.problems.every(({ code }) => code === "typed-unit")) return `${line} mm, or ${line} in`;
  return /\d/.test(behind) ? line : `${text.text.trim()}: and the figures behind it`;
};

/** The last word before the figures; undefined where the figures follow at once, or none do. A distance with its `at` is none
 *  of them where the part has such places. */
const lastOfHead = (words: readonly Piece[], quantity: MeasuredQuantity | undefined): Piece | undefined => {
  const isFigure = ({ text }: Piece): boolean => /^[-+<.,]?\d/.test(text);
  const at = words.findIndex(({ text }) => text.toLowerCase() === "at");
  if (at >= 0) {
    const before = words[at - 1];
    return quantity !== undefined && takesDistance(quantity) ? words[at + 1] : before;
  }
  const first = words.findIndex(isFigure);
  return first < 0 ? words.find(isInstead) : words[first - 1];
};

/** `rod 1 clearance` may be meant of its bearing as well as of its side. */
const isWhichClearance = ({ part }: PartWords, { head }: TypedText): boolean => {
  const words = wordsOf(head).map(({ text }) => text.toLowerCase());
  return part === "rod" && words.includes("clearance") && !words.includes("side");
};

const whichClearance = ({ rest }: PartWords, { text, engine }: Asked): Problem => {
  const label = rest[0]?.text ?? engine.cylinders[0] ?? "1";
  const facts = {
    what: "rod clearance",
    text: "",
    expected: "which clearance: of the rod's bearing on its pin, or of its side",
    mend: `write rod bearing ${label}: for the bearing, or rod ${label} side clearance: for the side, and the figures`,
  };
  return problem("label-bad", facts, text.placeOf(text.head));
};

/** Of a crank: end play and runout have no first among them. */
const noQuantity = (text: TypedText, tail: Piece): Problem => {
  const facts = { text: tail.text, fault: "which", line: text.head.text } as const;
  return problem("typed-place", facts, text.placeOf(text.head));
};
