// What an engine taken apart comes to: every figure against its limits, what is missing, what contradicts, and the work that follows.

import type { Length } from "../quantity/index.ts";
import type { LengthUnit, MeasuredPart, OfferedPart, PartState } from "../record/index.ts";
import type { Oversize, Undersize, WorkLine } from "./asked-for.ts";

/** The three words of a clearance; printed "too close to tell". */
export type ClearanceVerdictCode = "inside" | "outside" | "too-close-to-tell";

/** What would turn "too close to tell" into a verdict. */
export interface Settlement {
  /** Needed standard uncertainty. [m] */
  readonly needed: Length;
  /** The cheapest instrument that reaches it, with how many readings at each place; absent: the shop has to measure. */
  readonly by?: { readonly instrument: string; readonly resolution: Length; readonly readings: number };
  /** As told to a mechanic. */
  readonly text: string;
}

/** One figure against one kind of limit. New and wear limits are judged apart. */
export interface LimitVerdict {
  readonly kind: "new" | "wear";
  readonly low?: Length;
  readonly high?: Length;
  readonly source?: string;
  /** Of conforming, 0 to 1 (JCGM 106 cl. 7: flat prior, normal error). */
  readonly probability: number;
  readonly verdict: ClearanceVerdictCode;
  /** The limits lie so near each other that this instrument can never show `inside`. */
  readonly neverInside?: boolean;
  /** That instrument: `micrometer 0.01 mm`. */
  readonly neverBy?: string;
  /** The part was bored (+) or ground (-) to a size: low and high are shifted by it. [m] */
  readonly size?: Length;
  /** `limits for +0.50 mm` */
  readonly limitFor?: string;
  /** This limit is misprinted: it decides nothing until somebody asked which is right. */
  readonly waits?: true;
  readonly settlement?: Settlement;
}

/** Where a figure stands, the worst first. What may stay in is told by the wear limit, else by the new one; of a new or
 *  machined part the other way round. */
export type ItemStanding =
  | "outside"
  | "too-close"
  | "waits"
  /** Outside new, inside wear: worn but serviceable. */
  | "worn"
  /** Inside wear, and too close to tell as new. */
  | "close-as-new"
  /** Inside wear; no limit is given for new. */
  | "inside-wear"
  /** Inside new, and inside wear where that is given. */
  | "inside";

/** What took the place of a figure. */
export interface SupersededBy {
  /** A later state of the part, or a row that stands instead. */
  readonly by: "state" | "instead";
  readonly state: PartState;
  /** What was read there then; absent where the whole part was renewed or machined. [m] */
  readonly value?: Length;
}

/** A figure, measured or derived, of one place. */
export interface TeardownItem {
  readonly part: MeasuredPart;
  readonly label?: string;
  readonly at?: string;
  readonly quantity: string;
  /** Mean of the repeats; of a feeler the middle between the leaf that goes and the one that does not. [m] */
  readonly value: Length;
  /** Repeats that cannot all be right, in the order of reading: `value` is the first of them, and nothing is made of it. [m] */
  readonly apart?: readonly Length[];
  /** By feeler. [m] */
  readonly between?: { readonly low: Length; readonly high: Length };
  /** Standard uncertainty. [m] */
  readonly uncertainty: Length;
  /** What the uncertainty was taken from, as told to a mechanic: `bore gauge 0.01 mm, 2 readings`. */
  readonly uncertaintyFrom: string;
  readonly readings: number;
  readonly unit: LengthUnit;
  readonly instrument?: string;
  readonly state: PartState;
  /** Of a derived figure: what it was made of. */
  readonly from?: string;
  /** A later state of the same part took its place, or another reading: it is shown, and nothing follows from it. */
  readonly superseded?: true;
  readonly supersededBy?: SupersededBy;
  /** A conflict has to be cleared first: the verdicts are those of the figures as they stand, and nothing follows from them. */
  readonly waits?: true;
  /** Figures that cannot all be right, or the limit that is misprinted. */
  readonly waitsFor?: "figures" | "limit";
  /** Absent without a limit. */
  readonly standing?: ItemStanding;
  readonly verdicts: readonly LimitVerdict[];
}

/** One part of many readings against one limit: all must conform. */
export interface PartVerdict {
  readonly part: MeasuredPart;
  readonly label?: string;
  readonly quantity: string;
  readonly kind: "new" | "wear";
  /** Least and greatest chance that all conform (no independence is assumed). */
  readonly atLeast: number;
  readonly atMost: number;
  readonly verdict: ClearanceVerdictCode;
  /** The place that decides. */
  readonly decidedBy: TeardownItem;
}

/** How many of a part an engine has, and how many of them were measured. */
export interface PartCount {
  readonly part: MeasuredPart;
  /** What of it: `diameter`, `end gap` …; absent: any figure. */
  readonly quantity?: string;
  readonly expected: number;
  readonly measured: number;
  /** Labels of which nothing was measured. */
  readonly missing: readonly string[];
  /** More labels than the engine has: a slip. */
  readonly beyond: readonly string[];
  /** Other counts that engines with such banks have, where the banks leave a doubt. */
  readonly otherCounts?: readonly number[];
  readonly from: "layout" | "cylinders" | "usual for the layout";
  /** Of engine.json, where the count is told. */
  readonly field?: "layout.mains" | "layout.pins";
}

/** What can contradict itself among measured figures, by name. */
export type ConflictCode =
  | "two-ways"
  | "gap-and-bore"
  | "cannot-be"
  | "likely-slip"
  | "swapped-digits"
  | "whole-turn"
  | "apart-from-siblings"
  | "limit-misprint"
  | "beyond-the-count"
  | "thread-range"
  | "repeats-apart"
  | "entered-twice"
  | "ground-before"
  | "wrong-instrument";

/** Figures that cannot all be right. Nothing is corrected: the reading stands, the mend is offered. */
export interface TeardownConflict {
  readonly code: ConflictCode;
  readonly part: MeasuredPart;
  readonly label?: string;
  readonly at?: string;
  readonly quantity?: string;
  /** As told to a mechanic, with the figures. */
  readonly text: string;
  /** What to do: measure both again, ask which limit is right, was 0.05 meant? */
  readonly mend: string;
  /** Readings that would fit, if a slip explains it. [m] */
  readonly meant?: readonly Length[];
  /** Of a misprint: the only one that waits. */
  readonly limit?: "new" | "wear";
  /** `doubtful`: said, and the verdict stands; `conflict`: the verdict waits. */
  readonly weight: "doubtful" | "conflict";
}

/** A finding that was seen, not measured. */
export interface TeardownFinding {
  /** ISO. */
  readonly date: string;
  readonly part: MeasuredPart;
  readonly label?: string;
  readonly at?: string;
  readonly quantity: string;
  readonly word: string;
  readonly note?: string;
  readonly state: PartState;
}

/** What leaves a part unsound whatever its sizes; a part that is spoilt is never "worn but serviceable". */
export interface Spoilt {
  readonly part: MeasuredPart;
  readonly label?: string;
  /** The newest. */
  readonly date: string;
  /** `main bearing 2: wiped`, `a crack in the head` */
  readonly text: string;
}

/** One teardown of one engine, judged. */
export interface TeardownAssessment {
  readonly teardown: number;
  /** Of the first and the last measurement. ISO. */
  readonly from: string;
  readonly to: string;
  readonly items: readonly TeardownItem[];
  readonly derived: readonly TeardownItem[];
  readonly parts: readonly PartVerdict[];
  readonly findings: readonly TeardownFinding[];
  /** What stops the job first: cracks, scored bores, then crank and shells. */
  readonly spoilt: readonly Spoilt[];
  readonly counts: readonly PartCount[];
  readonly conflicts: readonly TeardownConflict[];
  readonly oversize?: Oversize;
  readonly undersizes: readonly Undersize[];
  readonly work: readonly WorkLine[];
  /** Volumes and forces, which no limit of lengths judges. */
  readonly notJudged?: readonly {
    readonly part: MeasuredPart;
    readonly label?: string;
    readonly quantity: string;
  }[];
  /** Figures that no limit was given for, by part and quantity. */
  readonly withoutLimit: readonly { readonly part: MeasuredPart; readonly quantity: string }[];
  readonly offeredFor: readonly OfferedPart[];
}
