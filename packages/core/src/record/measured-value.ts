// A measured figure as it is written: a number, a fraction of an inch, or the two feeler leaves it lies between.

import { byName } from "../problem/index.ts";
import {
  type NumberFault,
  type UnitName,
  force,
  length,
  readNumber,
  toSi,
  unitNamed,
  volume,
} from "../quantity/index.ts";
import type { LengthUnit, MeasuredValue, Measurement } from "./measurement-types.ts";

/** Units that a measured figure may be written in. */
export type MeasuredUnit = NonNullable<Measurement["unit"]>;
export type MeasuredDimension = "length" | "volume" | "force";

/** Why a text is no measured figure; each has its sentence in problem/words. */
export type MeasuredFault =
  | NumberFault
  /** A size carries no sign. */
  | "sign"
  /** The leaf that goes is not thinner than the one that stops. */
  | "leaves"
  /** Two ends of something that no feeler measures. */
  | "no-feeler"
  | "fraction"
  | "too-much";

/** A measured figure as it was read, or why the text is none. SI. */
export type MeasuredReading =
  | { readonly ok: true; readonly value: MeasuredValue }
  | { readonly ok: false; readonly fault: MeasuredFault }
  | { readonly ok: false; readonly fault: "two-ways"; readonly small: number; readonly large: number };

/** Units that a measured length may be written in. */
export const lengthUnits: readonly LengthUnit[] = ["mm", "um", "in", "thou"];

/** Units of each dimension, the usual one first. */
export const measuredUnits: Readonly<Record<MeasuredDimension, readonly MeasuredUnit[]>> = {
  length: lengthUnits,
  volume: ["ml", "cm3", "in3"],
  force: ["N", "kgf", "lbf"],
};

/** Spellings of the shop; the others are those of every quantity. */
const shopUnits = byName<LengthUnit>({ th: "thou", mil: "thou" });

/** The unit that a text names, of any dimension that is measured here. */
export const measuredUnitNamed = (text: string): MeasuredUnit | undefined => {
  const named = shopUnits[text.trim().toLowerCase()] ?? unitNamed(text);
  return Object.values(measuredUnits)
    .flat()
    .find((unit) => unit === named);
};

/** Whether a word is one of the units of a measured length. */
export const isLengthUnit = (unit: string): unit is LengthUnit => lengthUnits.some((known) => known === unit);

/** The most that anything measures. [m], [m3], [N] */
const beyond: Readonly<Record<MeasuredDimension, number>> = { length: 3, volume: 0.1, force: 100_000 };

export interface MeasuredAs {
  readonly kind: MeasuredDimension;
  readonly unit: MeasuredUnit;
  /** More is never meant, so a mark with three digits behind it is then a decimal one. [SI] */
  readonly most: number;
  /** Of the cells of the file: in one with commas between its cells a point is always decimal. */
  readonly delimiter?: string;
}

/** A length in its unit; sizes up to 2 m. `0.35..0.40` and `<0.04` are feelers, `3-7/16` is a fraction of an inch. */
export const readMeasuredLength = (text: string, unit: LengthUnit): MeasuredReading =>
  readMeasured(text, { kind: "length", unit, most: 2 });

/** A figure as its quantity takes it. */
export const readMeasured = (text: string, as: MeasuredAs): MeasuredReading => {
  const trimmed = text.trim();
  const [, from, to] = /^(.+?)\s*\.\.\s*(.+)$/.exec(trimmed) ?? [];
  const [, below] = /^<\s*(.+)$/.exec(trimmed) ?? [];
  if (from !== undefined && to !== undefined) return leaves(from, to, as);
  return below === undefined ? alone(trimmed, as) : leaves("0", below, as);
};

const alone = (text: string, as: MeasuredAs): MeasuredReading => {
  const read = numberOf(text, as);
  if (!read.ok) return read;
  switch (as.kind) {
    case "length":
      return { ok: true, value: { kind: "length", value: length(read.si) } };
    case "volume":
      return { ok: true, value: { kind: "volume", value: volume(read.si) } };
    case "force":
      return { ok: true, value: { kind: "force", value: force(read.si) } };
  }
};

const leaves = (from: string, to: string, as: MeasuredAs): MeasuredReading => {
  if (as.kind !== "length") return { ok: false, fault: "no-feeler" };
  const low = numberOf(from, as);
  const high = numberOf(to, as);
  if (!low.ok) return low;
  if (!high.ok) return high;
  if (low.si >= high.si) return { ok: false, fault: "leaves" };
  return { ok: true, value: { kind: "between", low: length(low.si), high: length(high.si) } };
};

type Si = { readonly ok: true; readonly si: number } | Extract<MeasuredReading, { readonly ok: false }>;

const numberOf = (text: string, { kind, unit, most, delimiter = "," }: MeasuredAs): Si => {
  if (/^[+-]/.test(text)) return { ok: false, fault: "sign" };
  if (/^(?:\d+[-\s])?\d+\/\d+$/.test(text)) return fraction(text, unit);
  const reading = readNumber(text);
  if (!reading.ok) return reading;
  const { value, thousands } = reading;
  const isOpen = thousands !== undefined && (thousands.mark === "," || delimiter !== ",");
  if (isOpen && toSi(thousands.value, unit) <= most)
    return { ok: false, fault: "two-ways", small: value, large: thousands.value };
  const si = toSi(value, unit);
  return si > beyond[kind] ? { ok: false, fault: "too-much" } : { ok: true, si };
};

/** `7/16` or `3-7/16`: halves to hundred-and-twenty-eighths of an inch. */
const fraction = (text: string, unit: UnitName): Si => {
  const [, whole = "0", over = "", under = ""] = /^(?:(\d{1,3})[-\s])?(\d{1,3})\/(\d{1,3})$/.exec(text) ?? [];
  const isRule = [2, 4, 8, 16, 32, 64, 128].includes(Number(under)) && Number(over) < Number(under);
  if (unit !== "in" || !isRule) return { ok: false, fault: "fraction" };
  return { ok: true, si: toSi(Number(whole) + Number(over) / Number(under), unit) };
};
