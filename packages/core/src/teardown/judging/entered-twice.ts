// The same lines entered again: a whole set of figures that stands twice, digit for digit, was not measured twice.

import { byKey } from "../../problem/index.ts";
import type { Measurement } from "../../record/index.ts";

/** So many figures agree to the last digit by chance no more (judgement). */
const least = 4;

export interface EnteredTwice {
  /** Without the copies. */
  readonly measurements: readonly Measurement[];
  /** The first of each set that stands twice, with how many figures it has. */
  readonly sets: readonly { readonly first: Measurement; readonly figures: number }[];
}

/** Sets by part and quantity, of one day, hand, instrument and note: another sitting has another day or says so in its note.
 *  Repeats that stand beside each other are repeats: only a set behind the whole of the same set is a copy. */
export const withoutCopies = (measurements: readonly Measurement[]): EnteredTwice => {
  const found = [...byKey(measurements, setOf).values()].flatMap((rows) => {
    const figures = lengthOfPass(rows);
    const [first] = rows;
    return figures === undefined ? [] : [{ first, figures, copies: rows.slice(figures) }];
  });
  const copies = new Set(found.flatMap((set) => set.copies));
  return {
    measurements: measurements.filter((one) => !copies.has(one)),
    sets: found.map(({ first, figures }) => ({ first, figures })),
  };
};

const setOf = (one: Measurement): string => {
  const { teardown, date, part, label, quantity, instrument, resolution, by, state, note } = one;
  return JSON.stringify([teardown, date, part, label, quantity, instrument, resolution, by, state, note]);
};

/** After how many rows they begin again, all of them to the end; undefined where they do not. */
const lengthOfPass = (rows: readonly Measurement[]): number | undefined => {
  const texts = rows.map(({ at, value, instead }) => JSON.stringify([at, value, instead]));
  const places = new Set(rows.map(({ at }) => at)).size;
  const isPass =
    places >= least &&
    rows.length > places &&
    rows.length % places === 0 &&
    new Set(rows.slice(0, places).map(({ at }) => at)).size === places &&
    texts.every((text, i) => text === texts[i % places]);
  return isPass ? places : undefined;
};
