// What is asked of the machine shop: the sizes that clean up, and the work in the order of asking.

import type { Length } from "../quantity/index.ts";
import type { LengthUnit, MeasuredPart } from "../record/index.ts";

/** How far off the bar may stand from the worn bore's middle. */
export type BarOffset = "worst" | "none" | { readonly known: Length };

/** The oversize that cleans up every bore, of those that are offered. [m] */
export interface OversizeAnswer {
  readonly offset: "worst" | "none" | "known";
  /** By cylinder: the diameter that must be reached, and the size that would do for it alone. [m] */
  readonly cylinders: readonly { readonly label: string; readonly needed: Length; readonly size?: Length }[];
  /** For all cylinders; absent: none that is offered cleans up. [m] */
  readonly size?: Length;
  readonly finished?: Length;
  /** What is left for the hone taken off. [m] */
  readonly boreTo?: Length;
}
/** Smallest oversize that cleans up; two answers where the bar's offset matters. */
export interface Oversize {
  readonly original: Length;
  readonly originalFrom: "unworn reading" | "low end of the new limit" | "nominal bore";
  /** Bored before: the size that the unworn reading looks like. [m] */
  readonly alreadyBored?: Length;
  readonly unit: LengthUnit;
  readonly honeStock: Length;
  readonly answers: readonly OversizeAnswer[];
}
/** Smallest undersize that cleans up, of mains or of pins. */
export interface Undersize {
  readonly part: "main" | "pin";
  readonly unit: LengthUnit;
  readonly needed: Length;
  readonly decidedBy: string;
  /** Absent: none that is offered cleans up. [m] */
  readonly size?: Length;
  readonly low?: Length;
  readonly high?: Length;
}

/** Work that may be asked of the machine shop, by name. */
export type WorkCode =
  | "use-again"
  | "measure-again"
  | "measure-better"
  | "measure-missing"
  | "repair-crack"
  | "sleeve-or-replace"
  | "bore-oversize"
  | "pistons"
  | "re-ring-and-hone"
  | "new-bearings"
  | "fine-step-shells"
  | "grind-crank"
  | "straighten-crank"
  | "thrust-washers"
  | "rods"
  | "skim-head"
  | "skim-deck"
  | "guides-and-seats"
  | "valves"
  | "springs";

/** One line of the work list, in the order of asking. */
export interface WorkLine {
  readonly code: WorkCode;
  /** As told to a mechanic: what to have done. */
  readonly text: string;
  /** The figures that ask for it. */
  readonly why: string;
  readonly labels: readonly string[];
  /** Of what is measured again or better: which part. */
  readonly part?: MeasuredPart;
  /** The caution of this work, where there is one. */
  readonly caution?: string;
}
