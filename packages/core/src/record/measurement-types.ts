// What was measured on an engine taken apart, and the maker's limits for it, as plain values. SI inside.

import type { Force, Length, Volume } from "../quantity/index.ts";
import type { IsoDate } from "./iso-date.ts";

/** The parts of an engine taken apart that are measured. */
export type MeasuredPart =
  | "bore"
  | "piston"
  | "ring"
  | "main"
  | "pin"
  | "main bearing"
  | "rod bearing"
  | "rod"
  | "crank"
  | "housing"
  | "deck"
  | "head"
  | "guide"
  | "stem"
  | "seat"
  | "valve"
  | "spring"
  | "chamber"
  | "crown"
  | "crack";

/** When in the work a part was measured: a second set, after machining, proves the shop's work. */
export type PartState = "as found" | "cleaned" | "new part" | "after machining";

export type MeasuredValue =
  /** Signed where the quantity can be (runout and sizes never are). [m] */
  | { readonly kind: "length"; readonly value: Length }
  /** By feeler: the leaf `low` goes and the leaf `high` does not; `<0.04` has the low end 0. [m] */
  | { readonly kind: "between"; readonly low: Length; readonly high: Length }
  | { readonly kind: "volume"; readonly value: Volume }
  | { readonly kind: "force"; readonly value: Force }
  /** A finding, one of the words of its quantity. */
  | { readonly kind: "word"; readonly word: string };

/** The unit a length was written in; results are told in it. */
export type LengthUnit = "mm" | "um" | "in" | "thou";

/** One row of measurements.csv. Repeats are rows that agree in all but the value. */
export interface Measurement {
  /** 1, 2, 3: the engine was apart more than once. */
  readonly teardown: number;
  readonly date: IsoDate;
  readonly part: MeasuredPart;
  /** A cylinder's label, a journal's number counted as layout.numberedFrom says, or `3in`, `3ex` for a valve's parts. */
  readonly label?: string;
  /** Where on the part, as `top/thrust`, `front/90`, `1/bottom` (ring 1), `diagonal1/240`; lower case. */
  readonly at?: string;
  /** As the table of parts spells it: `diameter`, `end gap`, `thread clearance`, `appearance` … */
  readonly quantity: string;
  readonly value: MeasuredValue;
  /** As it was written; absent for a finding. */
  readonly unit?: LengthUnit | "ml" | "cm3" | "in3" | "N" | "lbf" | "kgf";
  /** A word of the table of instruments, or a name of the owner's. */
  readonly instrument?: string;
  /** Digits behind the mark, as written: they tell how finely it was read where no resolution is stated. */
  readonly decimals?: number;
  /** Of the instrument, in the unit of the row. [m] */
  readonly resolution?: Length;
  /** Standard uncertainty where the owner knows it: it takes the place of the instrument's default. [m] */
  readonly uncertainty?: Length;
  readonly by?: string;
  /** It takes the place of all that was read before at this place, by whatever instrument, in this state of this teardown. */
  readonly instead?: true;
  readonly state: PartState;
  readonly note?: string;
  readonly line: number;
}

/** Lowest and highest that conform; one of them may be open. [m] */
export interface LimitPair {
  readonly low?: Length;
  readonly high?: Length;
}

/** One entry of limits.clearances in engine.json. */
export interface ClearanceLimit {
  readonly part: MeasuredPart;
  /** For one of them only, where they differ: a journal's number, `in` or `ex` for valves; absent: for all. */
  readonly label?: string;
  /** For one place only: ring `1`, `2`, `oil`; absent: for all. */
  readonly at?: string;
  /** Measured (`diameter`, `end gap`) or derived from it (`taper`, `out-of-round`, `wear`, `clearance`, `flatness` …). */
  readonly quantity: string;
  /** Wanted after the work. */
  readonly new?: LimitPair;
  /** What may stay in. */
  readonly wear?: LimitPair;
  readonly unit: LengthUnit;
  /** The same limits as printed in a second unit, to find a misprint. */
  readonly also?: { readonly new?: LimitPair; readonly wear?: LimitPair; readonly unit: LengthUnit };
  /** The figures as they were written, by `new.low`, `wear.high`, `also.wear.high`: a misprint is judged by their last digits. */
  readonly written: Readonly<Record<string, string>>;
  readonly source?: string;
}

/** Parts that oversizes or undersizes are offered for. */
export type OfferedPart = "bore" | "main" | "pin";
/** Over- and undersizes that the maker or the shop offers, each above 0. [m] */
export interface OfferedSizes {
  readonly unit: LengthUnit;
  readonly sizes: readonly Length[];
}

/** How many journals the crank has, where it differs from the usual for the cylinders. */
export interface CrankLayout {
  readonly mains?: number;
  readonly pins?: number;
  /** `front` where not stated. */
  readonly numberedFrom?: string;
}
