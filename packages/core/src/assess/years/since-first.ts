// How far each cylinder of a test has moved against the others since the first test of its history: by the plain
// ratios to the others, at one speed where both speeds are known; whether that is more than noise is for the history to say.

import type { EngineRecord, Test } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import { type DryPair, dryPair } from "../speed/dry-pair.ts";
import type { EngineFigures } from "../figures.ts";
import type { SinceFirst } from "./changes.ts";
import { workBreaks } from "./history-breaks.ts";
import { useOf } from "./history-input.ts";
import { type KindValues, isComparable, valuesOf } from "../values/values.ts";

/** In the engine's order; undefined where there is no earlier test to compare with, or this one does not count. */
export const sinceFirst = (
  record: EngineRecord,
  test: Test,
  figures: EngineFigures,
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
    const pair = pairWith(first.test);
    const [before, to] = [lnRatio(pair.before, i), lnRatio(pair.after, i)];
    if (before === undefined || to === undefined) return undefined;
    return { test: first.test.id, date: first.test.date, change: Math.expm1(to - before) };
  });
};

/** Whether a cylinder and at least one other hold a reading that compares. */
const isRead = ({ cells }: KindValues, cylinder: number): boolean => {
  const read = cells.map((cell) => cell !== undefined && isComparable(cell) && cell.value > 0);
  return read[cylinder] === true && read.some((is, i) => is && i !== cylinder);
};

/** ln of a reading's ratio to the median of the others; undefined where either is missing. */
const lnRatio = (lns: readonly (number | undefined)[], cylinder: number): number | undefined => {
  const own = lns[cylinder];
  const others = lns.filter((ln, i): ln is number => ln !== undefined && i !== cylinder);
  return own === undefined || others.length === 0 ? undefined : own - median(others);
};
