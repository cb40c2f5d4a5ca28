// One limit of a part as a person sets it: where it stands, `limits.ring.1.end-gap.wear`, and what it is, `up to 0.9mm, manual p. 62`.

import { nearest } from "../problem/index.ts";
import { fromSi, length, readNumber, toSi } from "../quantity/index.ts";
import { limitQuantitiesOf, limitQuantityNamed } from "./limit-quantities.ts";
import { readLabel } from "./measured-labels.ts";
import { partNames, quantitiesOf, quantityOf } from "./measured-parts.ts";
import { isLengthUnit, measuredUnitNamed } from "./measured-value.ts";
import type { ClearanceLimit, LengthUnit, MeasuredPart } from "./measurement-types.ts";

/** Which limit of `limits.clearances`. */
export interface LimitPlace extends Pick<ClearanceLimit, "part" | "label" | "at" | "quantity"> {
  readonly kind: "new" | "wear";
}

/** One limit as a person typed it, its digits untouched. */
export interface TypedLimit {
  /** In the digits they were typed in, as JSON takes them; absent: that end is open. */
  readonly low?: string;
  readonly high?: string;
  readonly unit: LengthUnit;
  readonly source?: string;
  /** The same limit as printed in a second unit. */
  readonly also?: Pick<TypedLimit, "low" | "high" | "unit">;
}

/** `limits.PART.QUANTITY.new` or `.wear`; between the two a label (`3`, `in`) or a ring (`1`, `oil`) for one of them only.
 *  @returns undefined where it names no limit of a part  @param cylinders - the labels of the engine */
export const limitPlace = (path: string, cylinders: readonly string[]): LimitPlace | undefined => {
  const [first, ...words] = wordsOf(path);
  const [name = "", ...rest] = words.map((word) => word.toLowerCase());
  const part = partNames.find((known) => known === name);
  const kind = kinds.find((one) => one === rest.at(-1));
  const quantity = part === undefined ? undefined : quantityNamed(part, rest.at(-2) ?? "");
  if (first !== "limits" || part === undefined || kind === undefined || quantity === undefined)
    return undefined;
  if (rest.length === 2) return { part, quantity, kind };
  const which = rest.length === 3 ? whichOf({ part, quantity }, words[1] ?? "", cylinders) : undefined;
  return which === undefined ? undefined : { part, ...which, quantity, kind };
};

const kinds = ["new", "wear"] as const;

/** Some have a hyphen of their own. */
const quantityNamed = (part: MeasuredPart, text: string): string | undefined =>
  [text, text.replaceAll(" ", "-")].map((name) => limitQuantityNamed(part, name)?.name).find(isText);

const isText = (name: string | undefined): name is string => name !== undefined;

/** `limits`, `rod bearing`, `clearance`, `wear`. */
const wordsOf = (path: string): readonly string[] =>
  path.split(".").map((word) => word.trim().replace(/[-_\s]+/g, " "));

/** A place of what is measured where it has such a one, else one of its kind. */
const whichOf = (
  { part, quantity }: Pick<LimitPlace, "part" | "quantity">,
  text: string,
  cylinders: readonly string[],
): Pick<ClearanceLimit, "label" | "at"> | undefined => {
  const word = text.toLowerCase();
  const measured = quantityOf(part, quantity);
  const quantities = measured === undefined ? quantitiesOf(part) : [measured];
  const isPlace = quantities.some(({ places }) =>
    places.some(([at]) => at?.kind === "words" && at.words.includes(word)),
  );
  if (isPlace) return { at: word };
  const kind = quantities[0]?.label ?? "none";
  const label = kind === "valve" && /^(?:in|ex)$/.test(word) ? word : readLabel(kind, text, cylinders);
  return label === undefined || label === "" ? undefined : { label: label.toLowerCase() };
};

/** The same limit as it is typed: `limits.rod-bearing.clearance.wear`. */
export const limitPath = ({ part, label, at, quantity, kind }: LimitPlace): string =>
  ["limits", part, at ?? label, quantity, kind]
    .flatMap((word) => (word === undefined ? [] : [word.replaceAll(" ", "-")]))
    .join(".");

const shape = /^(.*?\d)\s*([A-Za-zµμ"″]+)(?:\s*[,;]\s*(\S.*))?$/;
const range = /^(\S+?)\s*(?:\.\.|\bto\b)\s*(\S+)$/;
const under = /^(?:up to|to|at most|max(?:imum|\.)?|\.\.|<)\s*(\S+)$/i;
const over = /^(?:from|at least|min(?:imum|\.)?|>)\s*(\S+)$/i;

/** `0.0010 to 0.0025in`, `0.03..0.07mm`, `up to 0.10mm`, `from 0.8mm`; in brackets the same in a second unit, behind a comma
 *  where the figure comes from.
 *  @returns undefined where it is none of these, or a mark in it could be read two ways */
export const readTypedLimit = (text: string): TypedLimit | undefined => {
  const [, before = "", inside = "", source] = bracketed.exec(text.trim()) ?? [];
  const first = readOne(before);
  const word = first?.low === undefined ? "up to" : "from";
  const also = readOne(inside) ?? readOne(`${word} ${inside}`);
  if (first === undefined || also === undefined) return readOne(text);
  const isSame = (first.low === undefined) === (also.low === undefined);
  const isBoth = isSame && (first.high === undefined) === (also.high === undefined);
  const isPlain = first.source === undefined && also.source === undefined && !isFigure(source);
  if (!isBoth || !isPlain || first.unit === also.unit) return readOne(text);
  return { ...first, also, ...(source === undefined ? {} : { source }) };
};

const bracketed = /^(.*?)\s*\(([^()]*)\)(?:\s*[,;]\s*(\S.*))?$/;

const readOne = (text: string): TypedLimit | undefined => {
  const [, figures = "", unitText = "", source] = shape.exec(text.trim()) ?? [];
  const unit = measuredUnitNamed(unitText);
  if (unit === undefined || !isLengthUnit(unit) || isFigure(source)) return undefined;
  const end = (typed: string): string | undefined => digitsOf(typed, unit);
  const from = source === undefined ? {} : { source };
  const [, most] = under.exec(figures) ?? [];
  if (most !== undefined) {
    const high = end(most);
    return high === undefined ? undefined : { high, unit, ...from };
  }
  const [, least] = over.exec(figures) ?? [];
  if (least !== undefined) {
    const low = end(least);
    return low === undefined ? undefined : { low, unit, ...from };
  }
  const [, a = "", b = ""] = range.exec(figures) ?? [];
  const [low, high] = [end(sameUnit(a, unit)), end(b)];
  return low === undefined || high === undefined ? undefined : { low, high, unit, ...from };
};

/** A second figure behind the comma says nothing of where the first one comes from. */
const isFigure = (source = ""): boolean => {
  const [, unit = ""] = /^(?:[a-z]+\s+)*[\d.,]*\d\s*([A-Za-zµμ"″]+)$/i.exec(source) ?? [];
  return /^(?:[\d.]|up to|from|to\b)/i.test(source) && measuredUnitNamed(unit) !== undefined;
};

/** The first of two figures may repeat the unit. */
const sameUnit = (figure: string, unit: LengthUnit): string => {
  const [, number = figure, own = ""] = /^([\d.,+-]+)\s*([A-Za-zµμ"″]+)$/.exec(figure) ?? [];
  return measuredUnitNamed(own) === unit ? number : figure;
};

/** A number as JSON takes it, with the zeros at its end. */
const digitsOf = (typed: string, unit: LengthUnit): string | undefined => {
  const reading = readNumber(typed);
  if (!reading.ok) return undefined;
  const { value, thousands } = reading;
  if (thousands !== undefined && toSi(thousands.value, unit) <= largest) return undefined;
  const digits = typed.replace(",", ".").replace(/^\+/, "");
  return /^-?(?:0|[1-9]\d*)(?:\.\d+)?$/.test(digits) ? digits : String(value);
};

/** No size of an engine is larger. [m] */
const largest = 2;

/** What wears smaller, and what is a size: a limit of these is not "up to". */
const lessWorn: readonly string[] = ["margin"];
const sizes: readonly string[] = ["diameter", "bore", "free length"];

/** Of several figures without a limit the one to begin with: a size takes two figures that nobody can make up. */
export const limitToBegin = (
  wanted: readonly Pick<LimitPlace, "part" | "quantity">[],
): LimitPlace | undefined => {
  const known = wanted.flatMap(({ part, quantity }) => {
    const name = limitQuantityNamed(part, quantity)?.name;
    return name === undefined ? [] : [{ part, quantity: name }];
  });
  const first = known.find(({ quantity }) => !sizes.includes(quantity)) ?? known[0];
  if (first === undefined) return undefined;
  return { ...first, kind: sizes.includes(first.quantity) ? "new" : "wear" };
};

/** How a limit of this quantity may look; the figures are invented. */
export const limitExample = ({ quantity }: Pick<LimitPlace, "quantity">, unit: LengthUnit): string => {
  const figure = (metres: number): string => {
    const places = { mm: 2, um: 0, in: 4, thou: 1 }[unit];
    return fromSi(length(metres), unit).toFixed(places);
  };
  const text = sizes.includes(quantity)
    ? `${figure(0.04995)} to ${figure(0.05)}`
    : lessWorn.includes(quantity)
      ? `from ${figure(0.0008)}`
      : `up to ${figure(0.0001)}`;
  return `${text}${unit}`;
};

/** What a path under `limits.` that names a part, but no limit of it, may have meant; undefined where it names no part, nor
 *  nearly one. */
export const limitPathMeant = (
  path: string,
): { readonly expected: string; readonly meant: LimitPlace } | undefined => {
  const [, name = "", ...rest] = wordsOf(path.toLowerCase());
  const part = partNames.find((known) => known === name) ?? partMeant(name);
  if (part === undefined) return undefined;
  const kind = kinds.find((one) => one === rest.at(-1));
  const words = kind === undefined ? rest : rest.slice(0, -1);
  const names = limitQuantitiesOf(part).map((quantity) => quantity.name);
  const exact = words.map((word) => quantityNamed(part, word)).find(isText);
  const quantity = exact ?? words.flatMap((word) => nearest(word, names))[0] ?? names[0] ?? "";
  const typed = names.map((one) => one.replaceAll(" ", "-")).join(", ");
  return {
    expected: `limits.${part.replaceAll(" ", "-")}.QUANTITY.wear or .new, QUANTITY one of ${typed}`,
    meant: { part, quantity, kind: kind ?? "wear" },
  };
};

/** `boer`, `pistons`, and `bearing` of the rods, which has a limit in most manuals. */
const partMeant = (name: string): MeasuredPart | undefined => {
  const known = (text: string) => partNames.find((part) => part === text);
  const one = name.replace(/s$/, "");
  if (one === "bearing") return "rod bearing";
  return (
    known(one) ??
    (one.length < 3 ? undefined : nearest(one, partNames).flatMap((near) => known(near) ?? [])[0])
  );
};
