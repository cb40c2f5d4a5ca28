// The first rows of an order, out of however many: twice as many are held at most.

import { type YardOrder, type YardRow, yardCompare } from "@sealtrend/core/parts";

export interface KeptRows {
  add(row: YardRow): void;
  /** In order. */
  rows(): readonly YardRow[];
}

/** @param most - how many; Infinity for all */
export const keptRows = (order: YardOrder, most: number): KeptRows => {
  const compare = yardCompare(order);
  let kept: YardRow[] = [];
  const cut = (): void => {
    kept = kept.sort(compare).slice(0, most);
  };
  return {
    add: (row) => {
      kept.push(row);
      if (kept.length >= Math.max(64, 2 * most)) cut();
    },
    rows: () => {
      cut();
      return kept;
    },
  };
};
