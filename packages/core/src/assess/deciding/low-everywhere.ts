// All cylinders low alike (guard G5): what is more often the gauge or the day than the engine, and what of it is proved.

import type { Test } from "../../record/index.ts";
import { mean } from "../../statistics/index.ts";
import { assessTest } from "../assess-test.ts";
import type { TestAssessment } from "../assessment.ts";
import { valuesOf } from "../values/values.ts";
import { useOf } from "../years/history-input.ts";
import { tellingTests } from "./baseline.ts";
import { newestOf } from "./current-notes.ts";
import { type Deciding, stillSpeaks } from "./deciding.ts";

/** All cylinders low alike: more often the gauge or the day than the engine. What of it was proved. Fractions. */
export interface LowEverywhere {
  /** The test that was low everywhere: the last one, or one before it that it has not recovered from. */
  readonly test: string;
  /** Of the engine as a whole against its first tests, a fraction; absent where the maker's minimum alone says it. */
  readonly change?: number;
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
    ...(change === undefined ? {} : { change: change.whole }),
    ...(now || milder === undefined ? {} : { milder: milder.whole }),
    // more than half of it came since the test before
    sudden: change === undefined || change.last < change.whole / 2 ? "yes" : "no",
    unproved: unprovedOf(dry, deciding),
  };
};

/** As much as the ladder asks of a baseline. @source handbook/trade.md F2 (85 % of the own baseline; judgement) */
const fall = -0.15;

/** All cylinders below the maker's minimum, or all lower by that much. */
const isLowEverywhere = ({ cylinders, levelSince }: TestAssessment): boolean => {
  const read = cylinders.filter(({ pressures }) => pressures.dry !== undefined);
  return (
    (levelSince?.change ?? 0) <= fall ||
    (read.length > 0 && read.every(({ limitsMissed }) => limitsMissed.includes("maker-minimum")))
  );
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
const fallOf = (
  { id }: Test,
  deciding: Deciding,
): { readonly whole: number; readonly last: number } | undefined => {
  const { tests = [], common } = deciding.history.cranking?.result ?? {};
  const place = tests.findIndex(({ ids }) => ids.includes(id));
  const effects = tellingTests(deciding, place).flatMap((at) => common?.effects[at] ?? []);
  const [now, before] = [common?.effects[place], effects.at(-1)];
  if (now === undefined || before === undefined) return undefined;
  return { whole: Math.expm1(now - mean(effects.slice(0, 3))), last: Math.expm1(now - before) };
};

/** Gauge proved within the year, throttle open where there is one, speed recorded. */
const unprovedOf = ({ test, speed }: TestAssessment, deciding: Deciding): LowEverywhere["unproved"] => [
  ...(newestOf(deciding, "gauge proved")?.value === "yes" ? [] : (["gauge"] as const)),
  ...(deciding.record.engine.ignition === "compression" || test.conditions.throttle === "open"
    ? []
    : (["throttle"] as const)),
  ...(speed?.from === undefined ? (["cranking speed"] as const) : []),
];
