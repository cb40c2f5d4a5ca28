// One row of the ladder of evidence.

import type { WornPlace } from "../words.ts";

/** Rows of one line are not independent of each other: wet, first-stroke and dry readings are one line. */
export type EvidenceLine =
  | "cranking"
  | "leak-down"
  | "oil use"
  | "blow-by"
  | "oil pressure"
  | "debris"
  | "noise"
  | "coolant"
  | "sight"
  | "measured";

/** One row of the ladder of evidence: when it holds, what it speaks for, and who published it. */
export interface LadderRow {
  readonly line: EvidenceLine;
  /** Above 0 for wear there, below against; 1 weak, 2 strong, 3 decisive about the place, 4 direct measurement. Absent: 0.
   *  All points are judgement. */
  readonly points: Readonly<Partial<Record<WornPlace, number>>>;
  /** When the row holds: of a trusted test, the last not older than 12 months. */
  readonly when: string;
  /** Of the condition, not of the points. */
  readonly status: "published" | "common practice" | "judgement";
  /** Of the condition as well: who published it, as read in excerpts (handbook/trade.md), or that nobody did. */
  readonly source: string;
}
