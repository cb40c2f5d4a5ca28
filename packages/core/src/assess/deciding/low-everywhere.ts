// All cylinders low alike (guard G5): what is more often the gauge or the day than the engine, and what of it is proved.

import type { Test } from "../../record/index.ts";
import { assessTest } from "../assess-test.ts";
import type { TestAssessment } from "../assessment.ts";
import { isLowEverywhere } from "../prove-first.ts";
import { valuesOf } from "../values/values.ts";
import { useOf } from "../years/history-input.ts";
import { type WholeFall, wholeFallOf } from "./baseline.ts";
import { newestOf } from "./current-notes.ts";
import { type Deciding, stillSpeaks } from "./deciding.ts";

/** All cylinders low alike: more often the gauge or the day than the engine. What of it was proved. Fractions. */
export interface LowEverywhere {
  /** The test that was low everywhere: the last one, or one before it that it has not recovered from. */
  readonly test: string;
  /** Of the engine as a whole against its first tests, a fraction; absent where the maker's minimum alone says it. */
  readonly change?: number;
  /** What that is held against: `its first tests`. */
  readonly reference?: string;
  /** The same in the last test, where that one is milder. */
  readonly milder?: number;
  /** Whether most of it came in that one test; what fell year by year is the wear of the years, and no second method is
   *  asked for. */
  readonly sudden: "yes" | "no";
  /** What was not proved right. */
  readonly unproved: readonly ("gauge" | "throttle" | "cranking speed")[];
}

/** @param dry - the test that speaks  @source handbook/decision.md 2, G5 */
export const lowEverywhereOf = (dry: TestAssessment, deciding: Deciding): LowEverywhere | undefined => {
  const now = isLowEverywhere(dry);
  const low = now ? dry : earlierLow(dry, deciding);
  if (low === undefined) return undefined;
  const [change, milder] = [fallOf(low.test, deciding), fallOf(dry.test, deciding)];
  return {
    test: low.test.id,
    ...(change === undefined ? {} : { change: change.whole, reference: change.reference }),
    ...(now || milder === undefined ? {} : { milder: milder.whole }),
    // more than half of it came since the test before
    sudden: change === undefined || change.last < change.whole / 2 ? "yes" : "no",
    unproved: unprovedOf(dry, deciding),
  };
};

/** From here down the engine has not come back to what it was; judgement. */
const notBack = -0.05;

/** The test before, where the last one is milder and yet not back at the first ones. */
const earlierLow = (dry: TestAssessment, deciding: Deciding): TestAssessment | undefined => {
  const { record, figures } = deciding;
  if ((fallOf(dry.test, deciding)?.whole ?? 0) > notBack) return undefined;
  const before = record.tests.findLast(
    (test) =>
      test !== dry.test &&
      test.date <= dry.test.date &&
      valuesOf(test, "dry") !== undefined &&
      useOf(record, test, figures) === "full",
  );
  if (before === undefined || !stillSpeaks(deciding, before)) return undefined;
  const assessed = assessTest(record, before, { causes: "left-out" });
  return isLowEverywhere(assessed) ? assessed : undefined;
};

/** The engine as a whole, fractions: against its first three tests, and against the one before; undefined in the first. */
const fallOf = ({ id }: Test, deciding: Deciding): WholeFall | undefined => {
  const tests = deciding.history.cranking?.result.tests ?? [];
  const found = wholeFallOf(
    deciding,
    tests.findIndex(({ ids }) => ids.includes(id)),
  );
  return found && { ...found, whole: Math.expm1(found.whole), last: Math.expm1(found.last) };
};

/** Gauge proved within the year, throttle open where there is one, speed recorded. */
const unprovedOf = ({ test, speed }: TestAssessment, deciding: Deciding): LowEverywhere["unproved"] => [
  ...(newestOf(deciding, "gauge proved")?.value === "yes" ? [] : (["gauge"] as const)),
  ...(deciding.record.engine.ignition === "compression" || test.conditions.throttle === "open"
    ? []
    : (["throttle"] as const)),
  ...(speed?.from === undefined ? (["cranking speed"] as const) : []),
];
