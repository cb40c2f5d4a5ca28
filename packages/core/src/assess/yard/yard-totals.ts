// What is counted over all engines of a yard.

import type { YardRow } from "./yard-row.ts";

/** What is counted over all engines of a yard. */
export interface YardTotals {
  /** Engines whose record could be read. */
  readonly read: number;
  readonly faulty: number;
  readonly lagging: number;
  readonly suspect: number;
  /** How many sound engines in tests such as these would have a suspect cylinder. */
  readonly byLuck: number;
}

/** The totals of a yard before its first engine. */
export const noYard: YardTotals = { read: 0, faulty: 0, lagging: 0, suspect: 0, byLuck: 0 };

/** With one engine more: its row, or that it has a fault. */
export const withEngine = (totals: YardTotals, row: YardRow | undefined): YardTotals => {
  if (row === undefined) return { ...totals, faulty: totals.faulty + 1 };
  const { standing } = row.worst ?? {};
  return {
    ...totals,
    read: totals.read + 1,
    lagging: totals.lagging + (standing === "lagging" ? 1 : 0),
    suspect: totals.suspect + (standing === "suspect" ? 1 : 0),
    byLuck: totals.byLuck + row.byLuck,
  };
};
