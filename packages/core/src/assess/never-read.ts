// Cylinders that a test passed over, and no other test of the year read either: nothing is known of them, which is not the same
// as nothing wrong.

import type { EngineRecord, Test } from "../record/index.ts";
import { currentSince } from "./deciding/current.ts";
import { labelsOf } from "./labels.ts";
import { valuesOf } from "./values/values.ts";

export interface Unread {
  readonly label: string;
  /** Whether a test older than a year read it. */
  readonly before: "never" | "over-a-year";
}

/** In the engine's order; none where the test read no cylinder at all, as one that is read by ear alone. */
export const unreadIn = (
  { engine, tests }: Pick<EngineRecord, "engine" | "tests">,
  test: Test,
): readonly Unread[] => {
  const own = engine.cylinders.filter((_, i) => isReadIn(test, i));
  if (own.length === 0 || own.length === engine.cylinders.length) return [];
  const since = currentSince(test.date);
  const others = tests.filter((one) => one === test || one.setAside === undefined);
  return engine.cylinders.flatMap((label, i): readonly Unread[] => {
    const read = others.filter((one) => isReadIn(one, i));
    if (read.some(({ date }) => date >= since)) return [];
    return [{ label, before: read.length === 0 ? "never" : "over-a-year" }];
  });
};

const isReadIn = (test: Test, cylinder: number): boolean =>
  (["dry", "leak-down"] as const).some((what) => valuesOf(test, what)?.cells[cylinder] !== undefined);

/** `4, which was never read`, `3 and 4, which were not read within the year`. */
export const unreadText = (unread: readonly Unread[]): string => {
  const which = labelsOf(unread);
  const verb = unread.length === 1 ? "was" : "were";
  return unread.every(({ before }) => before === "never")
    ? `${which}, which ${verb} never read`
    : `${which}, which ${verb} not read within the year`;
};
