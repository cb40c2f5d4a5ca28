// Whether two gauges of one test met the same engine: a comparison of readings made in different states compares the states.

import { type Conditions, type Test, dayOf } from "../../record/index.ts";

export type DayDifference = "engine temperature" | "throttle" | "compression release" | "cranking speed";

/** Readings this far apart in warmth [K] or speed (ratio) are not of one state; judgement. */
const apart = { warmth: 20, speed: 1.1 };

/** What the rows of two gauges state differently; undefined where nothing is, or one of them states nothing. */
export const dayDifference = (test: Test, one: string, other: string): DayDifference | undefined => {
  const [a, b] = [dayOf(test, one), dayOf(test, other)];
  const differ = (key: keyof Conditions): boolean =>
    a[key] !== undefined && b[key] !== undefined && a[key] !== b[key];
  const warmth = (a.engineTemperature ?? 0) - (b.engineTemperature ?? 0);
  const isMeasured = a.engineTemperature !== undefined && b.engineTemperature !== undefined;
  if (differ("engineTemp") || (isMeasured && Math.abs(warmth) > apart.warmth)) return "engine temperature";
  if (differ("throttle")) return "throttle";
  if (differ("release")) return "compression release";
  const [slow, fast] = [a.crankSpeed ?? 0, b.crankSpeed ?? 0].toSorted((x, y) => x - y);
  return slow !== undefined && fast !== undefined && slow > 0 && fast / slow > apart.speed
    ? "cranking speed"
    : undefined;
};
