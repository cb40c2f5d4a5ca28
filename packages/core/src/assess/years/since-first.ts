// How far each cylinder of a test has moved against the others since the first test of its history: by the plain
// ratios to those others that are even now, at one speed where both speeds are known; whether that is more than noise is for the history to say.

import type { EngineRecord, Test } from "../../record/index.ts";
import type { ForwardTest } from "../../spread/index.ts";
import { median } from "../../statistics/index.ts";
import { type DryPair, dryPair } from "../speed/dry-pair.ts";
import type { EngineFigures } from "../figures.ts";
import { isFlagged } from "../flags.ts";
import type { SinceFirst } from "./changes.ts";
import { workBreaks } from "./history-breaks.ts";
import { useOf } from "./history-input.ts";
import { type KindValues, isComparable, valuesOf } from "../values/values.ts";

/** In the engine's order; undefined where there is no earlier test to compare with, or this one does not count. Cylinders
 *  that stand out low now are nothing to hold another against, unless there is no other.
 *  @param forward - of the test */
export const sinceFirst = (
  record: EngineRecord,
  test: Test,
  { figures, forward }: { readonly figures: EngineFigures; readonly forward: ForwardTest | undefined },
): readonly (SinceFirst | undefined)[] => {
  const { cylinders } = record.engine;
  const tests = record.tests.slice(0, record.tests.indexOf(test) + 1).flatMap((one) => {
    const values = valuesOf(one, "dry");
    return values === undefined ? [] : [{ test: one, values }];
  });
  const now = tests.at(-1);
  if (now?.test !== test || useOf(record, test, figures) === "set-aside")
    return cylinders.map(() => undefined);
  const breaks = workBreaks(record, tests);
  const even = cylinders.map((_, i) => !isFlagged(forward?.cylinders[i]));
  const pairs = new Map<Test, DryPair>();
  const pairWith = (one: Test): DryPair => {
    const pair = pairs.get(one) ?? dryPair(record, figures, one, test);
    pairs.set(one, pair);
    return pair;
  };
  return cylinders.map((_, i): SinceFirst | undefined => {
    const begins = breaks.filter(
      ({ newBaseline, afterTests }) => newBaseline.includes(i) && afterTests < tests.length,
    );
    const from = Math.max(0, ...begins.map(({ afterTests }) => afterTests));
    const first = tests
      .slice(from, -1)
      .find((one) => isRead(one.values, i) && useOf(record, one.test, figures) === "full");
    if (first === undefined || first.test.date === test.date) return undefined;
    const change = lnChange(pairWith(first.test), i, even);
    if (change === undefined) return undefined;
    return { test: first.test.id, date: first.test.date, change: Math.expm1(change) };
  });
};

/** Whether a cylinder and at least one other hold a reading that compares. */
const isRead = ({ cells }: KindValues, cylinder: number): boolean => {
  const read = cells.map((cell) => cell !== undefined && isComparable(cell) && cell.value > 0);
  return read[cylinder] === true && read.some((is, i) => is && i !== cylinder);
};

/** ln of what its ratio to the median of the same others has become; undefined where it or all others are missing. */
const lnChange = (
  { before, after }: DryPair,
  cylinder: number,
  even: readonly boolean[],
): number | undefined => {
  const both = before.flatMap((from, i) => {
    const to = after[i];
    return from === undefined || to === undefined ? [] : [{ i, from, to }];
  });
  const own = both.find(({ i }) => i === cylinder);
  const others = both.filter(({ i }) => i !== cylinder);
  if (own === undefined || others.length === 0) return undefined;
  const sound = others.filter(({ i }) => even[i] === true);
  const beside = sound.length > 0 ? sound : others;
  return own.to - own.from - (median(beside.map(({ to }) => to)) - median(beside.map(({ from }) => from)));
};
