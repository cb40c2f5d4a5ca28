// How far each cylinder of a test has moved against the others since the first test of its history.

import type { EngineRecord, Test } from "../record/index.ts";
import { median } from "../statistics/index.ts";
import type { EngineFigures } from "./figures.ts";
import { useOf } from "./history-input.ts";
import { type KindValues, valuesOf } from "./values.ts";

export interface SinceFirst {
  /** First test that counts since the last work on this cylinder. */
  readonly test: string;
  readonly date: string;
  /** Change of its share of the median of the others, a fraction: -0.05 = 5 % lost. Only cylinders that were read in
   *  both tests and not worked on in between stand among the others. */
  readonly change: number;
}

/** In the engine's order; undefined where there is no earlier test to compare with, or this one does not count. */
export const sinceFirst = (
  record: EngineRecord,
  test: Test,
  figures: EngineFigures,
): readonly (SinceFirst | undefined)[] => {
  const { cylinders } = record.engine;
  const now = valuesOf(test, "dry");
  const isFull = (one: Test): boolean => useOf(record, one, figures) === "full";
  if (now === undefined || cylinders.length < 2 || !isFull(test)) return cylinders.map(() => undefined);
  const earlier = record.tests.filter(({ date }) => date < test.date);
  return cylinders.map((label, i): SinceFirst | undefined => {
    const since = lastWork(record, label, test.date);
    const first = earlier.find(
      (one) => isAfter(record, one, since) && held(valuesOf(one, "dry"), i) !== undefined && isFull(one),
    );
    const then = first === undefined ? undefined : valuesOf(first, "dry");
    if (first === undefined || then === undefined) return undefined;
    const others = cylinders.flatMap((other, j) =>
      j !== i && lastWork(record, other, test.date) <= first.date ? [j] : [],
    );
    const change = shareOf(i, others, { now, then });
    return change === undefined ? undefined : { test: first.id, date: first.date, change };
  });
};

/** Day of the last work that began this cylinder's history anew; before all days where there was none. */
const lastWork = ({ services }: EngineRecord, label: string, until: string): string =>
  services.reduce(
    (last, { date, newBaseline }) =>
      newBaseline.includes(label) && date <= until && date > last ? date : last,
    "",
  );

/** A test on the day of the work counts as after it; of several that day the first is before. */
const isAfter = ({ tests }: EngineRecord, test: Test, work: string): boolean => {
  if (test.date !== work) return test.date > work;
  const ofDay = tests.filter(({ date }) => date === work);
  return ofDay.length === 1 || ofDay[0] !== test;
};

/** What a cylinder held: above 0, and on the scale of the gauge. */
const held = (values: KindValues | undefined, cylinder: number): number | undefined => {
  const cell = values?.cells[cylinder];
  return cell === undefined || cell.pegged || cell.value <= 0 ? undefined : cell.value;
};

const shareOf = (
  own: number,
  others: readonly number[],
  { now, then }: { readonly now: KindValues; readonly then: KindValues },
): number | undefined => {
  const both = others.filter((other) => held(now, other) !== undefined && held(then, other) !== undefined);
  const [after, before] = [now, then].map((values) => {
    const reading = held(values, own);
    const fellows = both.flatMap((other) => held(values, other) ?? []);
    return reading === undefined || fellows.length === 0 ? undefined : reading / median(fellows);
  });
  return after === undefined || before === undefined ? undefined : after / before - 1;
};
