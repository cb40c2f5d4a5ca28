// The years of one engine, assessed: cranking and leak-down apart, never in one table.

import { type HistoryResult, analyseHistory } from "../../history/index.ts";
import { dateOfDay, daysInYear, dayNumber } from "../../quantity/index.ts";
import type { EngineRecord } from "../../record/index.ts";
import { type EngineFigures, figuresOf } from "../figures.ts";
import type { Compared } from "../flags.ts";
import type { CountedTest } from "./counted-test.ts";
import { type FurtherTests, furtherTests } from "./further-tests.ts";
import { countedTests, historyInput } from "./history-input.ts";
import { type Hole, type TesterChange, holesOf, testerChanges } from "../leak/leak-holes.ts";
import { repeatsInOrder } from "./repeats-in-order.ts";
import { leakSeries } from "../leak/leak-series.ts";
import { repeatabilityInterval, repeatabilityLimit, repeatsTrend } from "../../statistics/index.ts";
import { type TestSpeed, historySpeeds } from "../speed/history-speed.ts";

export interface KindHistory {
  readonly kind: Compared;
  readonly result: HistoryResult;
  /** The tests that hold readings of this kind, in order; `result.tests` names them by id. */
  readonly counted: readonly CountedTest[];
  /** Of each of them what its cranking speed does to the readings; empty for a leak-down. */
  readonly speeds: readonly TestSpeed[];
  /** Of each of them the leaks as holes; empty for cranking. In the engine's order, undefined where the tester tells no
   *  size. */
  readonly holes: readonly (readonly (Hole | undefined)[])[];
  /** Where the leak-down tester changed. */
  readonly testerChanges: readonly TesterChange[];
  /** How many further tests would show a loss; absent where a cylinder alarms already or nothing can be planned. */
  readonly further?: FurtherTests;
  /** The first test's date: the zero of an axis of dates. */
  readonly start: string;
}

/** How far repeats of one dry reading lie apart, standard deviations in ln units. */
export interface Repeatability {
  /** Of the owner's own figures; the usual figure where there are none (df 0). */
  readonly s: number;
  /** Degrees of freedom of s. */
  readonly df: number;
  /** s blended with the usual figure, which counts as six degrees of freedom. */
  readonly blended: number;
  /** Of the owner's own figures: where the true one lies, 19 chances in 20. */
  readonly interval?: { readonly low: number; readonly high: number };
  /** Two readings further apart than this happen once in 20 times, by s [ln units]. */
  readonly limit: number;
  /** Whether the repeats of all cylinders move one way from the first to the last: then they are not independent. */
  readonly trend: "up" | "down" | "none";
}

export interface HistoryAssessment {
  readonly record: EngineRecord;
  readonly cranking?: KindHistory;
  readonly leakDown?: KindHistory;
  readonly repeatability: Repeatability;
}

/** Assesses the history of an engine; a kind that no test holds is absent. */
export const assessHistory = (record: EngineRecord): HistoryAssessment => {
  const figures = figuresOf(record);
  const cranking = kindHistory(record, "dry", figures);
  const leakDown = kindHistory(record, "leak-down", figures);
  const { s, blended, df } = figures.repeatability;
  return {
    record,
    ...(cranking === undefined ? {} : { cranking }),
    ...(leakDown === undefined ? {} : { leakDown }),
    repeatability: {
      s: s ?? blended,
      df,
      blended,
      ...(s === undefined ? {} : { interval: repeatabilityInterval(s, df) }),
      limit: repeatabilityLimit(s ?? blended),
      trend: repeatsTrend(repeatsInOrder(record)),
    },
  };
};

const kindHistory = (
  record: EngineRecord,
  what: Compared,
  figures: EngineFigures,
): KindHistory | undefined => {
  const counted = countedTests(record, what, figures);
  const speeds = what === "dry" ? historySpeeds(record, counted, figures) : [];
  const series = what === "dry" ? [] : leakSeries(record, counted);
  const input = historyInput(record, what, { counted, speeds, series });
  const [first] = counted;
  if (input === undefined || first === undefined) return undefined;
  const holes = series.flatMap((own, k) => {
    const test = counted[k];
    return test === undefined ? [] : [holesOf(test, own)];
  });
  const result = analyseHistory(input);
  const further = furtherTests(input, result);
  return {
    kind: what,
    result,
    counted,
    speeds,
    holes,
    testerChanges: testerChanges(record, counted, series),
    ...(further === undefined ? {} : { further }),
    start: first.test.date,
  };
};

/** A place on the axis as a date, or as the meter reading. */
export const placeText = ({ result, start }: KindHistory, x: number): string | number =>
  result.axis.kind === "meter" ? x : dateOfDay(dayNumber(start) + x * daysInYear);
