// The word for what a cylinder did over the years. `steady` has to be shown; it is never what is left over.

import { alarmChance } from "./alarm-rule.ts";
import type { EngineWide } from "./engine-wide.ts";
import type { Direction } from "./change-test.ts";
import type { Shape } from "./step-or-line.ts";

/** What a cylinder did over the years. `steady` has to be shown: it is never what is left over. */
export type Course = "steady" | "falling" | "rising" | "stepped-down" | "stepped-up" | "too-short-to-tell";

export type AlarmRule =
  /** The last reading taken held nothing, of two or more. */
  | "no-compression"
  /** Flagged by two tests running against the same earlier ones, at the start of the epoch (L.2). */
  | "early-change"
  /** Both last readings below the baseline (C.4). */
  | "two-below-baseline"
  /** The slope, with the cylinder's own scatter (L.8). */
  | "slope"
  /** One cylinder only: the trend of the engine (L.1, L.7). */
  | "engine-wide";

export interface CourseEvidence {
  readonly alarms: readonly AlarmRule[];
  /** Whether the epoch holds an earlier reading than one without compression. */
  readonly heldBefore: boolean;
  /** Beside an early change from five contrasts on (C.8). */
  readonly shape?: Shape;
  /** The slope test of the alarm; absent below four contrasts at three places. */
  readonly slope?: { readonly p: number; readonly pRise: number; readonly atFourPlaces: boolean };
  readonly early?: Direction;
  /** Cylinders read in the test that judges. */
  readonly compared: number;
  /** Bound of the loss as a share of what `steady` allows; below 1 is steady. */
  readonly boundShare?: number;
}

export interface CourseWord {
  readonly course: Course;
  /** Too short to tell, yet more likely down than by chance once in 20. */
  readonly leaning?: "down";
}

/** @source handbook/statistics.md L.9, in its order, but for a steady loss that was quick enough to look like a step in the
 *  first tests: once later tests show it as gradual it is falling. Of engines losing 5 % a year, tested once a year, 6 in 10
 *  would be called stepped down for good (tests/bench/simulate.mjs, computed by us). */
export const courseOf = (evidence: CourseEvidence): CourseWord => {
  const { alarms, slope, early, boundShare } = evidence;
  if (alarms.includes("no-compression"))
    return { course: evidence.heldBefore ? "stepped-down" : "too-short-to-tell" };
  if (early === "down") return { course: evidence.shape === "gradual" ? "falling" : "stepped-down" };
  if (alarms.length > 0) return { course: evidence.shape === "sudden" ? "stepped-down" : "falling" };
  if (slope?.atFourPlaces === true && slope.pRise < alarmChance.slope / evidence.compared)
    return { course: "rising" };
  if (early === "up") return { course: "stepped-up" };
  if (boundShare !== undefined && boundShare < 1) return { course: "steady" };
  const leaning = slope !== undefined && slope.p < 0.05;
  return { course: "too-short-to-tell", ...(leaning ? { leaning: "down" } : {}) };
};

/** The word of an engine with one cylinder, from its only channel.
 *  @param boundShare - as above, of the engine-wide trend */
export const courseOfSingle = ({ word }: EngineWide, boundShare: number | undefined): CourseWord => {
  if (word === "falling" || word === "rising") return { course: word };
  return {
    course:
      word === "no-change-shown" && boundShare !== undefined && boundShare < 1
        ? "steady"
        : "too-short-to-tell",
  };
};

/** The loss that `steady` must exclude: .02 a year, or .05 over the observed span where no year is known.
 *  @param bound - one-sided 95 % bound of the loss, per unit that slopes count in
 *  @param perYear - those units a year, absent where not known  @param span - observed, in those units */
export const shareOfSteady = (
  bound: number,
  { perYear, span }: { readonly perYear: number | undefined; readonly span: number },
): number => (perYear === undefined ? (bound * span) / 0.05 : (bound * perYear) / 0.02);
