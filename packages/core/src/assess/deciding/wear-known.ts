// The wear of the years; where one odd reading alone hides it, of the years without it.

import { assessHistory } from "../years/assess-history.ts";
import type { Deciding } from "./deciding.ts";
import type { DoubtsFound } from "./doubts.ts";
import { type WearFound, wearOf } from "./wear.ts";

export interface WearKnown {
  readonly wear: WearFound;
  /** The odd test that is left out. */
  readonly without?: string;
}

/** Where the one odd reading alone stops a line from being drawn on, the years without it: what holds if it does not come
 *  again.  @param years - the horizon */
export const wearKnown = (
  deciding: Deciding,
  years: number,
  { oddTest }: Pick<DoubtsFound, "oddTest">,
): WearKnown => {
  const wear = wearOf(deciding, years);
  const isAlone = oddTest?.kind === "dry" && oddTest.before === undefined;
  if (wear.unknown === undefined || !isAlone) return { wear };
  const { record } = deciding;
  const tests = record.tests.filter(({ id }) => id !== oddTest.test);
  const other = wearOf({ ...deciding, history: assessHistory({ ...record, tests }) }, years);
  return other.unknown === undefined ? { wear: other, without: oddTest.test } : { wear };
};
