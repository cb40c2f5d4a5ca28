// What cannot be meant by a limit: its ends the wrong way round, far too large, or against the way the part wears.

import { fromSi, length, toSi } from "../quantity/index.ts";
import { limitQuantityNamed } from "./limit-quantities.ts";
import type { LengthUnit, MeasuredPart } from "./measurement-types.ts";

/** Lowest and highest in the digits they were written in; null: that end is open. */
export type LimitEnds = readonly [string | null, string | null];

export interface LimitAs {
  readonly part: MeasuredPart;
  readonly quantity: string;
  readonly kind: "new" | "wear";
  readonly unit: LengthUnit;
}

export interface LimitSlip {
  readonly expected: string;
  /** What may have been meant. */
  readonly ends: LimitEnds;
  readonly unit: LengthUnit;
}

/** The first thing of a limit that cannot be meant; undefined where nothing is. */
export const limitSlip = (ends: LimitEnds, as: LimitAs): LimitSlip | undefined => {
  const { part, quantity, kind, unit } = as;
  const [low, high] = ends;
  const isBackwards = low !== null && high !== null && Number(low) > Number(high);
  if (isBackwards) return { expected: "the lowest first", ends: [high, low], unit };
  const signed = limitQuantityNamed(part, quantity)?.signed === true;
  if (isBelow(high) || (isBelow(low) && !signed))
    return { expected: `a ${quantity} of 0 or more`, ends: positive(ends), unit };
  if (small.includes(quantity) && [low, high].some((end) => metres(end, unit) > smallMost))
    return { expected: `a ${quantity} of at most ${mostIn(unit)}`, ...smaller(ends, unit) };
  if (kind === "new") return undefined;
  if (wearsSmaller(as) && low === null)
    return { expected: `the least that may stay in: a ${part} wears smaller`, ends: [high, null], unit };
  return wearsLarger(as) && high === null
    ? { expected: `the most that may stay in: a ${part} wears larger`, ends: [null, low], unit }
    : undefined;
};

/** Differences and clearances; the end gap of a ring and the like may be larger. */
const small = ["taper", "out-of-round", "cylindricity", "wear", "clearance", "bend", "flatness"];

/** No engine that is worked on by hand is given more. A judgement of this project. [m] */
const smallMost = 0.005;

const isBelow = (end: string | null): boolean => end !== null && Number(end) < 0;

const metres = (end: string | null, unit: LengthUnit): number => Math.abs(toSi(Number(end ?? 0), unit));

const mostIn = (unit: LengthUnit): string =>
  `${String(Number(fromSi(length(smallMost), unit).toPrecision(3)))} ${unit}`;

const positive = ([low, high]: LimitEnds): LimitEnds => {
  const bare = (end: string | null): string | null => end?.replace("-", "") ?? null;
  if (low === null || high === null) return [bare(low), bare(high)];
  return isBelow(high) ? [bare(high), bare(low)] : ["0", high];
};

/** Millimetres with the inch behind them, else thousandths of the unit. */
const smaller = (ends: LimitEnds, unit: LengthUnit): Pick<LimitSlip, "ends" | "unit"> => {
  const [other] = unit === "in" ? (["mm"] as const) : unit === "thou" ? (["um"] as const) : [];
  if (other !== undefined && ends.every((end) => metres(end, other) <= smallMost))
    return { ends, unit: other };
  const [low, high] = ends;
  return { ends: [thousandth(low), thousandth(high)], unit };
};

const thousandth = (end: string | null): string | null =>
  end === null ? null : String(Number((Number(end) / 1000).toPrecision(9)));

/** Shafts, the edge of a valve, and a spring that sets. */
export const wearsSmaller = ({ part, quantity }: Pick<LimitAs, "part" | "quantity">): boolean =>
  ["margin", "free length"].includes(quantity) ||
  (quantity === "diameter" && ["main", "pin", "piston", "stem"].includes(part));

const wearsLarger = ({ part, quantity }: LimitAs): boolean =>
  (part === "bore" && quantity === "diameter") ||
  (part === "guide" && ["bore", "diameter"].includes(quantity));

/** A limit as it is typed: `0.03 to 0.07mm`, `up to 0.10mm`, `from 0.8mm`. */
export const limitTyped = ([low, high]: LimitEnds, unit: LengthUnit): string => {
  if (low !== null && high !== null) return `${low} to ${high}${unit}`;
  return low === null ? `up to ${high ?? ""}${unit}` : `from ${low}${unit}`;
};
