// The figures of a line, each at its place.

import { type Problem, problem } from "../../problem/index.ts";
import type { MeasuredDimension, MeasuredPart } from "../../record/index.ts";
import { instrumentNamed } from "../conformity/instruments.ts";
import { distanceText } from "./distance.ts";
import { figureProblem } from "./figure-problem.ts";
import { type Head, notAPlace } from "./head.ts";
import { type Shared, measurementOf } from "./measurement-of.ts";
import { type PlacesOfLine, placesOf } from "./place-orders.ts";
import { type Figure, readFigures } from "./typed-figure.ts";
import { type Piece, type TypedText, wordsOf } from "./typed-text.ts";
import type { TypedMeasurement, TypedUnit } from "./typing.ts";
import { typedUnit } from "./units.ts";

interface FigureLine extends Shared {
  readonly kind: MeasuredDimension;
  readonly head: Head;
  readonly line: TypedText;
  readonly tail: Piece;
}

export type MeasurementsOfLine =
  | { readonly ok: true; readonly measurements: readonly TypedMeasurement[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const figureLine = (asked: FigureLine): MeasurementsOfLine => {
  const columns = withUnitsApart(wordsOf(asked.tail));
  const where = placesOfLine(asked, columns.length);
  if (columns.length === 0) return refused(nothingBehind(asked.line));
  const named = instrumentBehind(columns, asked);
  if (named !== undefined) return refused(named);
  if (!where.ok) return refused(noPlace(asked, columns, where));
  const read = columns.map((column, i) => readColumn(column, where.places[i] ?? "", asked));
  const problems = read.flatMap((one) => (one.ok ? [] : one.problems));
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, measurements: read.flatMap((one) => (one.ok ? one.measurements : [])) };
};

const refused = (one: Problem): MeasurementsOfLine => ({ ok: false, problems: [one] });

export const nothingBehind = (line: TypedText): Problem =>
  problem("typed-figure", { text: "", fault: "no-figure", line: line.head.text }, line.placeOf(line.head));

const isNotTaken = ({ text }: Piece): boolean => /^[-x]$/i.test(text);

interface Column {
  readonly piece: Piece;
  readonly apart?: TypedUnit;
}

/** A unit that stands apart holds for the bare figures before it, back to the next that stands apart. */
const withUnitsApart = (words: readonly Piece[]): readonly Column[] => {
  const columns: Column[] = [];
  let apart: TypedUnit | undefined;
  for (const piece of words.toReversed()) {
    const unit = typedUnit(piece.text);
    if (unit === undefined) columns.unshift({ piece, ...(apart === undefined ? {} : { apart }) });
    else apart = unit;
  }
  return columns;
};

/** Along a straightedge the step says where, elsewhere the order of the part. */
const placesOfLine = (
  { part, quantity, head: { named, distance }, context }: FigureLine,
  count: number,
): PlacesOfLine => {
  const [line] = named;
  const step = distance ?? context.step;
  if (isFace(part) && count > 1 && line !== undefined && step !== undefined)
    return { ok: true, places: Array.from({ length: count }, (_, i) => `${line}/${distanceText(step, i)}`) };
  const all = distance === undefined ? named : [...named, distanceText(distance)];
  return placesOf({ part, quantity, named: all, count });
};

/** `0.5 thread`: an instrument where a figure or its unit may stand. */
const instrumentBehind = (columns: readonly Column[], { line }: FigureLine): Problem | undefined => {
  const at = columns.findIndex(({ piece }) => /\p{L}{3}/u.test(piece.text) && !/\d/.test(piece.text));
  const [first, last] = [columns[at]?.piece, columns.at(-1)?.piece];
  if (first === undefined || last === undefined) return undefined;
  const piece = { text: line.text.slice(first.from, last.from + last.text.length), from: first.from };
  if (instrumentNamed(piece.text) === undefined) return undefined;
  const facts = { text: piece.text, fault: "instrument", line: line.head.text } as const;
  return problem("typed-figure", facts, line.placeOf(piece));
};

const noPlace = (
  asked: FigureLine,
  columns: readonly Column[],
  { most: places, fewer }: { readonly most: readonly string[]; readonly fewer?: number },
): Problem => {
  const { part, label, head, line, tail } = asked;
  if (isFace(part) && head.named.length > 0 && columns.length > 1) {
    const facts = { text: tail.text, fault: "no-step", line: line.head.text } as const;
    return problem("typed-place", facts, line.placeOf(tail));
  }
  const extra = columns[fewer ?? places.length]?.piece;
  if (places.length === 0 || extra === undefined)
    return notAPlace(asked, head.named.join("/") || (isFace(part) ? label : ""), line.head);
  const counted = { given: columns.length, places, ...(fewer === undefined ? {} : { fewer }) };
  const facts = { what: `${part} ${label}`.trim(), ...counted };
  return problem("typed-count", facts, line.placeOf(extra));
};

const isFace = (part: MeasuredPart): boolean => part === "head" || part === "deck";

const readColumn = ({ piece, apart }: Column, at: string, asked: FigureLine): MeasurementsOfLine => {
  if (isNotTaken(piece)) return { ok: true, measurements: [] };
  const { kind, quantity, part, context, line } = asked;
  const unit = apart ?? context[kind];
  const { set } = context;
  const behindSemicolon = /;\s*$/.test(line.text.slice(0, piece.from));
  if (behindSemicolon && !/\d/.test(piece.text)) return refused(noteOf(piece, line));
  const read = readFigures(piece.text.replace(/\s+/g, ""), {
    kind,
    most: quantity.most,
    ...(unit === undefined ? {} : { unit }),
    ...(set === undefined ? {} : { set }),
  });
  if (read.ok)
    return { ok: true, measurements: read.value.map((figure) => measured(figure, piece, at, asked)) };
  const from = piece.from + Math.max(0, piece.text.indexOf(read.text));
  const found = { text: read.text, kind, what: `${part} ${quantity.name}`, line: line.head.text };
  const place = line.placeOf({ text: read.text, from });
  return { ok: false, problems: [figureProblem(read.fault, { ...found, place })] };
};

/** `86.62; worn`: a note was meant. */
const noteOf = (piece: Piece, line: TypedText): Problem =>
  problem("typed-figure", { text: piece.text, fault: "note", line: line.head.text }, line.placeOf(piece));

const measured = (figure: Figure, piece: Piece, at: string, shared: Shared): TypedMeasurement =>
  measurementOf(shared, { ...figure, at, typed: piece.text, column: piece.from + 1 });
