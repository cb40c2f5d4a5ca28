// What a decision is made from: plain values, whatever records they came from. Money is in one unit of the user's own,
// never named; the axis is years.

import type { EvidenceId } from "./evidence/ladder.ts";
import type { usualShares } from "./judgements.ts";
import type { CurePlace, Job, Repair } from "./words.ts";

/** One row of the ladder that was found to hold. What was not looked at is no row. */
export interface EvidenceRow {
  readonly id: EvidenceId;
  /** Label; absent for the engine as a whole. */
  readonly cylinder?: string;
  /** Where it came from, for the reader. */
  readonly text: string;
  /** Whether it falls with the test whose trust is asked. */
  readonly restsOn: "this-test" | "other-records";
  /** How often a direct measurement was made, each anew; 1 where absent. */
  readonly times?: number;
}

/** A cylinder, or the engine as a whole, on its way to a limit. */
export interface WearLine {
  readonly label: string;
  /** Years, rising, and ln of what the limit is a limit of. */
  readonly x: readonly number[];
  readonly y: readonly number[];
  /** s^2 of one value about the line, and its degrees of freedom. */
  readonly variance: number;
  readonly df: number;
  /** ln. */
  readonly limit: number;
  /** Spread of yearly losses believed beforehand, ln; where absent that of the history, .04. */
  readonly believed?: number;
  /** Today on the same axis; where absent the last x. */
  readonly now?: number;
  /** Of the lines that share this name only the one likeliest to pass counts. */
  readonly oneOf?: string;
}

/** What is known of the chance that a limit is passed while the engine is owned. */
export type Wear =
  | {
      readonly kind: "lines";
      readonly lines: readonly [WearLine, ...WearLine[]];
      /** Too unlikely within the horizon to count: they take part where other years or another limit are tried. */
      readonly beside?: readonly WearLine[];
    }
  /** Typed: by the end of the horizon, and evenly on the way. */
  | { readonly kind: "typed"; readonly probability: number }
  | { readonly kind: "unknown" };

/** Where the need arises if it does; together 1 at most. */
export type Shares = Readonly<Record<CurePlace, number>>;

/** All or nothing: without a price for each work there is no comparison in money. */
export interface Prices {
  /** Opening and closing. A re-ring needs the engine out where that has a price; one that is absent costs nothing. */
  readonly jobs: Readonly<Partial<Record<Job, number>>>;
  /** Parts, machining and labour inside. */
  readonly work: Readonly<Record<Repair, number>>;
  /** Days out of use, and the price of one. */
  readonly daysNow?: Readonly<Partial<Record<Repair, number>>>;
  readonly daysLater?: Readonly<Partial<Record<Repair, number>>>;
  readonly day?: number;
  /** Of one test of the usual kind. */
  readonly test?: number;
  /** Of running it as it is: oil, fuel. */
  readonly runningPerYear?: number;
  /** What the work adds to the price at the end. */
  readonly resale?: Readonly<Partial<Record<Repair, number>>>;
  /** Of another engine in its place. */
  readonly replacement?: number;
}

/** Judged, not measured; what is absent is that of judgements.ts. */
export interface Chances {
  readonly redo?: Readonly<Partial<Record<Repair, number>>>;
  readonly spoil?: number;
  readonly caught?: number;
}

export type Ownership =
  | { readonly kind: "years"; readonly years: number }
  /** No end: every engine needs it some day. */
  | {
      readonly kind: "for-good";
      /** Since the last renewal [years]; absent: unknown. */
      readonly age?: number;
      /** Median years left, where no line tells. */
      readonly left?: number;
      readonly lifeFactor?: number;
      /** For the figures with a horizon, which are shown all the same. */
      readonly years?: number;
    };

/** A test that could be made before deciding. */
export interface OfferedTest {
  readonly what: "cranking" | "leak-down" | "measurement";
  /** In money; nothing where absent. */
  readonly cost?: number;
  /** How much of the doubt about the level it takes away. */
  readonly tells:
    | { readonly kind: "share"; readonly share: number }
    /** One more point of the line: repeats, and years from now. */
    | { readonly kind: "readings"; readonly repeats: number; readonly after: number }
    /** Of a measurement in the open engine: as judged. */
    | { readonly kind: "as-judged" };
}

/** What the caller knows to be wrong with the readings, beside their trust. */
export type Doubt =
  /** G3: a single test out of step. */
  | "one-odd-test"
  /** G4: after storage, flooding or overheating, or with a fresh top end or rings in run-in. */
  | "not-itself"
  /** G5: low at all cylinders, gauge, throttle, battery and speed unproved. */
  | "low-everywhere"
  /** G5: low at all cylinders with all of that proved, and cranking alone says so: a leak-down comes before anything is
   *  decided. The readings themselves are not in doubt. */
  | "one-method-only";

/** What a decision is made from: plain values, whatever records they came from. Money in one unit, years, fractions. */
export interface DecisionInput {
  readonly rows: readonly EvidenceRow[];
  readonly trust: "trusted" | "doubtful" | "void";
  readonly doubts?: readonly Doubt[];
  readonly wear: Wear;
  readonly shares: Shares | keyof typeof usualShares;
  /** Jobs done already; none = in place. */
  readonly done: readonly Job[];
  readonly prices?: Prices;
  readonly chances?: Chances;
  readonly testsPerYear?: number;
  /** Real interest a year. */
  readonly interest?: number;
  readonly ownership: Ownership;
  /** `safety` = aircraft, sole engine offshore. */
  readonly use: "ordinary" | "remote" | "safety";
  /** The work considered while the engine is open; where absent the cheaper of top end and re-ring, kept for good the
   *  re-ring. */
  readonly considered?: Repair;
  /** Rings that were out and ran too long to go back: new ones are part of closing it, whatever the readings say. */
  readonly ringsDue?: "yes";
  /** Measured on the open engine past what may stay in: it does not go back in, though alone it establishes no need. */
  readonly pastLimit?: "topEnd" | "reRing";
  /** A figure measured so near its limit that it does not tell yet: the answer holds at best until it is settled. */
  readonly tooClose?: "yes";
  /** Damage that no row weighs, such as a scored journal or a knock that nobody has placed: it is settled before anything is
   *  closed or ordered. */
  readonly damage?: "unsettled";
  /** A reading that has to be made again, a leak that nobody placed, or a cylinder that surely reads low and that cranking
   *  alone speaks of: none is left as it is. */
  readonly unsettled?: "read-again" | "leak-unplaced" | "low-unexplained";
  /** A cylinder holds nothing, or reads far past its limit: what is unsettled is settled before it is watched. */
  readonly farPast?: "yes";
  readonly test?: OfferedTest;
  /** Price of getting in again over that of the work, where there are no prices. */
  readonly accessRatio?: number;
  /** Longest years between tests by the maker or the user. */
  readonly interval?: number;
  readonly hoursPerYear?: number;
}
