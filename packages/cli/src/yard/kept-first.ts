// What is first in an order, out of however many rows: twice as many are held at most, each by its place in the order and what is
// wanted of it.

import {
  type YardOrder,
  type YardPlace,
  type YardRow,
  comparePlaces,
  yardPlace,
} from "@sealtrend/core/parts";

export interface KeptFirst<T> {
  /** @param what - makes what is wanted of the row, and is asked where it may stay */
  add(row: YardRow, what: () => T): void;
  /** In order. */
  all(): readonly T[];
}

/** @param most - how many; Infinity for all */
export const keptFirst = <T>(order: YardOrder, most: number): KeptFirst<T> => {
  let kept: { readonly place: YardPlace; readonly what: T }[] = [];
  /** Of as many as are wanted: who does not go before it is out. */
  let last: YardPlace | undefined;
  const cut = (): void => {
    kept = kept.sort((a, b) => comparePlaces(a.place, b.place)).slice(0, most);
    if (kept.length === most) last = kept.at(-1)?.place;
  };
  return {
    add: (row, what) => {
      const place = yardPlace(row, order);
      if (last !== undefined && comparePlaces(place, last) >= 0) return;
      kept.push({ place, what: what() });
      if (kept.length >= Math.max(64, 2 * most)) cut();
    },
    all: () => {
      cut();
      return kept.map(({ what }) => what);
    },
  };
};
