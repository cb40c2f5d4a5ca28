// How far each cylinder of a test has moved against the others since the first test of its history: by the plain
// ratios to the others, as the screens show them; whether that is more than noise is for the history to say.

import type { EngineRecord, Test } from "../record/index.ts";
import { median } from "../statistics/index.ts";
import type { EngineFigures } from "./figures.ts";
import { workBreaks } from "./history-breaks.ts";
import { useOf } from "./history-input.ts";
import { type KindValues, isComparable, valuesOf } from "./values.ts";

export interface SinceFirst {
  /** First test that counts since the last work on this cylinder. */
  readonly test: string;
  readonly date: string;
  /** Change against the others, a fraction: -0.05 = 5 % lost. */
  readonly change: number;
}

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
  return cylinders.map((_, i): SinceFirst | undefined => {
    const to = lnRatio(now.values, i);
    const begins = breaks.filter(
      ({ newBaseline, afterTests }) => newBaseline.includes(i) && afterTests < tests.length,
    );
    const from = Math.max(0, ...begins.map(({ afterTests }) => afterTests));
    const first = tests
      .slice(from, -1)
      .find((one) => lnRatio(one.values, i) !== undefined && useOf(record, one.test, figures) === "full");
    const before = first === undefined ? undefined : lnRatio(first.values, i);
    if (first === undefined || before === undefined || to === undefined || first.test.date === test.date)
      return undefined;
    return { test: first.test.id, date: first.test.date, change: Math.expm1(to - before) };
  });
};

/** ln of a reading's ratio to the median of the others; undefined where either is missing. */
const lnRatio = ({ cells }: KindValues, cylinder: number): number | undefined => {
  const lns = cells.map((cell) =>
    cell === undefined || !isComparable(cell) || cell.value <= 0 ? undefined : Math.log(cell.value),
  );
  const own = lns[cylinder];
  const others = lns.filter((ln, i): ln is number => ln !== undefined && i !== cylinder);
  return own === undefined || others.length === 0 ? undefined : own - median(others);
};
