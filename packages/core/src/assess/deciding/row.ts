// A row of the ladder with where it came from.

import type { EvidenceId } from "../../decision/index.ts";

export interface Row {
  readonly row: EvidenceId;
  /** Label; absent for the engine as a whole. */
  readonly cylinder?: string;
  /** What was found, in a mechanic's words. */
  readonly text: string;
  /** `test 2026-05-03a`, `note 2026-04-20`, `history 2014 to 2026`. */
  readonly from: string;
  /** Whether it falls with the test whose trust is asked. */
  readonly restsOn: "this-test" | "other-records";
  /** How often a direct measurement was made, each anew; absent: once. */
  readonly times?: number;
}

/** 0.137 as `14 %`; 7.5 that arithmetic left a hair short is rounded as 7.5, as on the screens. */
export const percent = (share: number): string => `${Number((share * 100).toPrecision(12)).toFixed(0)} %`;

/** What a cylinder is compared with. @param n - cylinders of the engine */
export const theOthers = (n: number): string => (n === 2 ? "the other" : "the others");
