// What a typed line does to figures that stand at its places already: it repeats them, or takes their place.

import { type Measurement, type TypedMeasurement, isLengthUnit } from "@sealtrend/core/parts";
import { counted } from "../words.ts";
import { lengthNumber, writtenIn } from "./teardown-length.ts";
import { placeText } from "./teardown-words.ts";

type Read = Pick<
  Measurement,
  "teardown" | "part" | "label" | "at" | "quantity" | "state" | "value" | "unit" | "instead"
>;

/** Texts, none where nothing was there. @param earlier - all before the line, as they were entered
 *  @param head - of the line before its colon, as it was typed */
export const repeatTexts = (
  typed: readonly TypedMeasurement[],
  earlier: readonly Read[],
  head: string,
): readonly string[] => {
  const figures = typed.filter(({ value }) => value.kind === "length" || value.kind === "between");
  // the first of each place: it alone says whether the line takes the place of what stood there
  const firsts = figures.filter((one, i) => figures.findIndex((other) => keyOf(other) === keyOf(one)) === i);
  const places = firsts.map((one) => ({
    one,
    before: standing(earlier.filter((other) => keyOf(other) === keyOf(one))),
  }));
  const known = places.filter(({ before }) => before.length > 0);
  const [first] = places;
  if (first === undefined) return [];
  if (first.one.instead === true) return places.map(({ one, before }) => insteadText(one, before));
  const [only] = known;
  if (only === undefined) return [];
  const named = head.replace(/\s+/g, " ").trim();
  if (known.length > 1)
    return [
      `${named}: ${counted(known.length, "place")} were read already: counted as repeats (${named} instead: … takes their place)`,
    ];
  return [
    `${placeText(only.one)} was ${valuesText(only.before)} already: counted as a repeat (${named} instead: … takes its place)`,
  ];
};

/** Back to the last that took the place of those before it. */
const standing = (all: readonly Read[]): readonly Read[] => {
  const from = all.findLastIndex(({ instead }) => instead === true);
  return from < 0 ? all : all.slice(from);
};

const insteadText = (one: TypedMeasurement, before: readonly Read[]): string =>
  before.length === 0
    ? `${placeText(one)}: nothing was there to take the place of`
    : `${placeText(one)} takes the place of ${valuesText(before)}`;

const keyOf = ({ teardown, part, label = "", at = "", quantity, state }: Read): string =>
  [teardown, part, label, at, quantity, state].join("|");

/** `2.2235 and 2.2236 in`. */
const valuesText = (all: readonly Read[]): string => {
  const unit = all.map(({ unit: own }) => own).find((own) => own !== undefined && isLengthUnit(own));
  const told = unit !== undefined && isLengthUnit(unit) ? unit : "mm";
  const texts = all.flatMap(({ value }) => {
    if (value.kind === "length") return [lengthNumber(value.value, writtenIn(told, [value.value]))];
    if (value.kind !== "between") return [];
    const written = writtenIn(told, [value.low, value.high]);
    return [`${lengthNumber(value.low, written)}..${lengthNumber(value.high, written)}`];
  });
  return `${texts.join(" and ")}\u00a0${told}`;
};
