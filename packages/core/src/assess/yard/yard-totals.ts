// What is counted over all engines of a yard.

import type { YardRow } from "./yard-row.ts";

/** What is counted over all engines of a yard. */
export interface YardTotals {
  /** Engines whose record could be read. */
  readonly read: number;
  readonly faulty: number;
  readonly lagging: number;
  readonly suspect: number;
  /** Not to be run until something was found or done; 0 where no decision was made. */
  readonly notRun: number;
  /** Work that the evidence asks for, beside those. */
  readonly workNeeded: number;
  /** Of which a test is due. */
  readonly due: number;
  /** How many sound engines in tests such as these would have a low cylinder. */
  readonly byLuck: number;
  /** `at-most` where cylinders of one were read more than once. */
  readonly byLuckIs: YardRow["byLuckIs"];
}

/** The totals of a yard before its first engine. */
export const noYard: YardTotals = {
  read: 0,
  faulty: 0,
  lagging: 0,
  suspect: 0,
  notRun: 0,
  workNeeded: 0,
  due: 0,
  byLuck: 0,
  byLuckIs: "about",
};

/** With one engine more: its row, or that it has a fault.
 *  @param today - ISO: what is due by then is counted */
export const withEngine = (totals: YardTotals, row: YardRow | undefined, today: string): YardTotals => {
  if (row === undefined) return { ...totals, faulty: totals.faulty + 1 };
  const { worst, decision, due, byLuck, byLuckIs } = row;
  const isNotRun = decision?.use === "not-run";
  const one = (counts: boolean): number => (counts ? 1 : 0);
  return {
    ...totals,
    read: totals.read + 1,
    lagging: totals.lagging + one(worst?.standing === "lagging"),
    suspect: totals.suspect + one(worst?.standing === "suspect"),
    notRun: totals.notRun + one(isNotRun),
    workNeeded: totals.workNeeded + one(!isNotRun && decision?.basis === "needed"),
    due: totals.due + one(due.date <= today),
    byLuck: totals.byLuck + byLuck,
    byLuckIs: byLuckIs === "about" ? totals.byLuckIs : byLuckIs,
  };
};
