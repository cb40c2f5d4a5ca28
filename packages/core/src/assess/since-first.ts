// How far each cylinder of a test has moved against the others since the first test of its history.

import { contrastsOf } from "../history/index.ts";
import type { EngineRecord, Test } from "../record/index.ts";
import { countedTests, historyInput } from "./history-input.ts";
import type { EngineFigures } from "./figures.ts";

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
  const nothing = record.engine.cylinders.map(() => undefined);
  if (record.engine.cylinders.length < 2) return nothing;
  const until = { ...record, tests: record.tests.slice(0, record.tests.indexOf(test) + 1) };
  const counted = countedTests(until, "dry", figures);
  const input = counted.length < 2 ? undefined : historyInput(until, "dry", counted);
  if (input === undefined) return nothing;
  const { tests, cylinders } = contrastsOf(input);
  const now = tests.findIndex((ids) => ids.includes(test.id));
  return cylinders.map(({ contrasts, since }): SinceFirst | undefined => {
    const first = contrasts.findIndex((contrast, place) => place >= since && contrast !== undefined);
    const [from, to] = [contrasts[first], contrasts[now]];
    const begun = counted.find((one) => one.test.id === tests[first]?.[0])?.test;
    if (from === undefined || to === undefined || first >= now || begun === undefined) return undefined;
    return { test: begun.id, date: begun.date, change: Math.expm1(to - from) };
  });
};
