// One figure of a typed line: `86.62`, `86.62/86.63` (repeats), `0.35..0.40`, `<0.04`, `3-7/16in`, `+.12` from the size set.

import type { TypedDeviationFault, TypedFigureFault } from "../../problem/index.ts";
import {
  type MeasuredDimension,
  type MeasuredFault,
  type MeasuredUnit,
  type MeasuredValue,
  readMeasured,
} from "../../record/index.ts";
import { fitsTable, inUnit, plain, shifted, stored, sum } from "./decimal.ts";
import type { TypedLength, TypedLengthUnit, TypedUnit } from "./typing.ts";
import { isMetric, isOf, isTypedLength, nameOfUnit, typedUnit } from "./units.ts";

export interface Figure {
  readonly value: MeasuredValue;
  /** As measurements.csv holds it, with the digits that were typed. */
  readonly written: string;
  readonly unit: MeasuredUnit;
  /** Counted from the size that was set. */
  readonly isDeviation: boolean;
}

/** What a figure is read as. */
export interface FigureAs {
  readonly kind: MeasuredDimension;
  readonly most: number;
  /** Of a figure without a unit. */
  readonly unit?: TypedUnit;
  /** What signed deviations count from. */
  readonly set?: TypedLength;
}

export type FigureFault =
  | { readonly code: "measure-bad"; readonly fault: MeasuredFault; readonly unit: string }
  | { readonly code: "number-two-ways"; readonly small: number; readonly large: number }
  | { readonly code: "typed-unit" }
  | { readonly code: "unit-unknown"; readonly unit: string }
  | { readonly code: "typed-figure"; readonly fault: TypedFigureFault }
  | { readonly code: "typed-deviation"; readonly fault: TypedDeviationFault };

type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly text: string; readonly fault: FigureFault };

/** Reads a figure, or several that `/` joins. A unit at the end holds for those before it that have none.
 *  Of a fault, `text` is the part of the typed text that is wrong. */
export const readFigures = (text: string, as: FigureAs): Read<readonly Figure[]> => {
  const figures: Figure[] = [];
  let unit = as.unit;
  for (const piece of repeatsIn(text, as.unit).toReversed()) {
    const read = readOne(piece, unit === undefined ? as : { ...as, unit });
    if (!read.ok) return { ...read, text: piece };
    figures.unshift(read.value);
    unit = typedUnit(parted(piece).unit) ?? unit;
  }
  return { ok: true, value: figures };
};

/** The pieces between the strokes, but for the stroke of a fraction of an inch. */
const repeatsIn = (text: string, unit: TypedUnit | undefined): readonly string[] => {
  const [, own = ""] = /^[1-9]\d?\/(?:2|4|8|16|32|64|128)([a-z"]*)$/i.exec(text) ?? ["", "none"];
  if ((typedUnit(own) ?? (own === "" ? unit : undefined)) === "in") return [text];
  return [...text.matchAll(/(?:\d-\d+\/\d|[^/])+/g)].map(([piece]) => piece);
};

/** The number, and the unit behind it where there is one. */
const parted = (piece: string): { readonly number: string; readonly unit: string } => {
  const [, number = "", unit = ""] = /^(.*?[\d.,])((?:in|cm)[3³]|[^\d.,<>+/-]*)$/i.exec(piece) ?? ["", piece];
  return { number, unit };
};

const refused = (fault: FigureFault): Read<never> => ({ ok: false, text: "", fault });

const readOne = (piece: string, as: FigureAs): Read<Figure> => {
  const { number, unit: own } = parted(piece);
  const bareUnit = as.unit ?? (/^[+-]/.test(number) ? as.set?.unit : undefined);
  const named = own === "" ? bareUnit : typedUnit(own);
  const dash = /^[\d.,]+-[\d.,]+$/.test(number);
  if (dash) return refused({ code: "typed-figure", fault: "dash" });
  if (named === undefined || !isOf(named, as.kind)) return withoutUnit(piece, own, as);
  if (!/^[+-]/.test(number)) return sized(number, named, as);
  return isTypedLength(named) ? deviation(number, own === "" ? undefined : named, as) : signed;
};

const signed: Read<never> = refused({ code: "typed-deviation", fault: "sign" });

/** A figure whose unit is missing, or none of its kind; what is no number at all is said first. */
const withoutUnit = (piece: string, own: string, { kind, most }: FigureAs): Read<never> => {
  const unit = kind === "length" ? "mm" : kind === "volume" ? "ml" : "N";
  const bare = own !== "" && typedUnit(own) !== undefined ? piece.slice(0, -own.length) : piece;
  const read = readMeasured(bare.replace(/^[+-]/, ""), { kind, unit, most });
  const isOpen = read.ok || read.fault === "two-ways" || read.fault === "fraction";
  const isUnit =
    !read.ok && (read.fault === "unit-inside" || (read.fault === "not-a-number" && /^[\d.,]/.test(piece)));
  if (isOpen || isUnit)
    return refused(own === "" ? { code: "typed-unit" } : { code: "unit-unknown", unit: own });
  return bad(read.fault, unit);
};

const bad = (fault: MeasuredFault, unit: string): Read<never> =>
  refused({ code: "measure-bad", fault, unit });

/** A size without a sign. */
const sized = (number: string, unit: TypedUnit, { kind, most }: FigureAs): Read<Figure> => {
  const shape = unit === "tenths" ? "thou" : unit;
  const first = readMeasured(number, { kind, unit: shape, most });
  if (!first.ok && first.fault === "too-long") return refused({ code: "typed-figure", fault: "too-fine" });
  if (!first.ok) return first.fault === "two-ways" ? twoWays(first) : bad(first.fault, nameOfUnit(unit));
  const written =
    unit === "tenths" ? eachFigure(number, (one) => shifted(one, -4)) : eachFigure(number, plain);
  const table = unit === "tenths" ? "in" : unit;
  if (!figuresIn(written).every(fitsTable)) return refused({ code: "typed-figure", fault: "too-fine" });
  const read = readMeasured(written, { kind, unit: table, most });
  if (read.ok) return { ok: true, value: { value: read.value, written, unit: table, isDeviation: false } };
  return read.fault === "two-ways" ? twoWays(read) : bad(read.fault, table);
};

const twoWays = ({ small, large }: { readonly small: number; readonly large: number }): Read<never> =>
  refused({ code: "number-two-ways", small, large });

const decimal = /\d+(?:[.,]\d+)?|[.,]\d+/g;
const figuresIn = (text: string): readonly string[] => text.match(decimal) ?? [];

/** Every figure of `0.35..0.40` or `<0.04` changed; a fraction stays as it was typed. */
const eachFigure = (number: string, change: (figure: string) => string): string =>
  number.includes("/")
    ? number
    : number
        .split("..")
        .map((one) => one.replace(decimal, change))
        .join("..");

/** `+.12` behind `set 86.50`; the sum keeps every digit. */
const deviation = (number: string, own: TypedLengthUnit | undefined, as: FigureAs): Read<Figure> => {
  const { set, unit } = as;
  if (set === undefined) return signed;
  if (/[/<]|\.\./.test(number)) return refused({ code: "typed-deviation", fault: "no-deviation" });
  if (own === undefined && unit !== undefined && isMetric(unit) !== isMetric(set.unit))
    return refused({ code: "typed-deviation", fault: "which-unit" });
  const counted = own ?? (unit !== undefined && isTypedLength(unit) ? unit : set.unit);
  const size = sized(number.slice(1), counted, as);
  if (!size.ok) return size;
  const moved = inUnit({ text: plain(number.slice(1)), unit: counted }, set.unit);
  const total = stored({ text: sum(set.text, `${number.slice(0, 1)}${moved}`), unit: set.unit });
  if (total.text.startsWith("-")) return refused({ code: "typed-deviation", fault: "below-zero" });
  const read = sized(total.text, total.unit, as);
  return read.ok ? { ok: true, value: { ...read.value, isDeviation: true } } : read;
};
