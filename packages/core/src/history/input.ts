// What the history of an engine is computed from: plain numbers, whatever files they came from.

export type HistoryKind = "cranking" | "leak-down";

export interface HistoryAxis {
  /** What x of the tests counts: years on dates, units of the meter on a meter axis. */
  readonly kind: "dates" | "meter";
  /** For the text only: `year`, `h`, `km` or `mi`. */
  readonly unit: string;
}

/** One cylinder in one test. */
export type HistoryCell =
  | {
      readonly kind: "read";
      /** Mean of ln of the corrected readings; for leak-down of ln(P2/P1). */
      readonly ln: number;
      /** How many readings the mean is of, 1 or more. */
      readonly repeats: number;
    }
  | { readonly kind: "not-read" }
  /** A reading of 0, or of 100 % lost: no number for ln, and never dropped silently. */
  | { readonly kind: "no-compression" };

/** `full` counts everywhere; the others are shown and stand in no slope, baseline or change test. */
export type TestUse = "full" | "run-in" | "seller" | "set-aside";

export interface HistoryTest {
  readonly id: string;
  /** Place on the axis; never falls from test to test. */
  readonly x: number;
  /** The date in years, from any fixed day. */
  readonly years: number;
  /** Absent = not known, which is never "the same as before". */
  readonly gauge?: string | undefined;
  /** The gauge that these readings were brought to by links measured side by side; absent = their own. The doubt of each
   *  link stands in `sharedUncertainty`. */
  readonly countsAs?: string | undefined;
  readonly use: TestUse;
  /** Standard uncertainty of ln K from what was measured anew in this test. */
  readonly correctionUncertainty: number;
  /** For each constant that tests share, by name: (d ln K / d q) u(q), signed. Never also part of the above. */
  readonly sharedUncertainty?: Readonly<Record<string, number>> | undefined;
  /** In the order of the labels. */
  readonly cells: readonly HistoryCell[];
}

export interface HistoryService {
  /** How many of the tests came before this work. */
  readonly afterTests: number;
  /** Cylinders worked on, by place in the list of labels: no reference across the work. */
  readonly touched: readonly number[];
  /** Cylinders whose history starts anew, by place in the list of labels. */
  readonly newBaseline: readonly number[];
  readonly why: string;
  /** `another`: what comes after reads on another scale (another leak-down tester), so nothing is compared across it. */
  readonly scale?: "another";
}

export interface HistoryInput {
  readonly kind: HistoryKind;
  readonly labels: readonly string[];
  readonly axis: HistoryAxis;
  readonly tests: readonly HistoryTest[];
  readonly services: readonly HistoryService[];
  /** Lowest ratio of a cylinder to the median of the others, a fraction; absent = no forecast. */
  readonly limitRatio?: number;
  /** ln of the maker's minimum, in the unit of the cells; absent = not known. */
  readonly minimum?: number;
}
