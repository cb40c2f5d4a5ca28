// The years of one engine, assessed: cranking and leak-down apart, never in one table.

import {
  type Courses,
  type HistoryInput,
  type HistoryResult,
  analyseHistory,
  coursesOf,
} from "../../history/index.ts";
import { dateOfDay, daysInYear, dayNumber } from "../../quantity/index.ts";
import type { EngineRecord } from "../../record/index.ts";
import { type EngineFigures, figuresOf } from "../figures.ts";
import type { Compared } from "../flags.ts";
import type { CountedTest } from "./counted-test.ts";
import { type FurtherTests, furtherTests } from "./further-tests.ts";
import { countedTests, historyInput } from "./history-input.ts";
import { type Hole, type TesterChange, holesOf, testerChanges } from "../leak/leak-holes.ts";
import { repeatsInOrder } from "./repeats-in-order.ts";
import { type LeakSeriesTest, leakSeries } from "../leak/leak-series.ts";
import { repeatabilityInterval, repeatabilityLimit, repeatsTrend } from "../../statistics/index.ts";
import { type TestSpeed, historySpeedFactors, historySpeeds } from "../speed/history-speed.ts";

/** The years of one engine by one kind of reading, with what each test brought to them. */
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

/** The years of one engine: cranking and leak-down apart, never in one table. */
export interface HistoryAssessment {
  readonly record: EngineRecord;
  readonly cranking?: KindHistory;
  readonly leakDown?: KindHistory;
  readonly repeatability: Repeatability;
}

/** Assesses the history of an engine; a kind that no test holds is absent. @param figures - of the record */
export const assessHistory = (
  record: EngineRecord,
  figures: EngineFigures = figuresOf(record),
): HistoryAssessment => {
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
  const years = kindYears(record, what, figures);
  if (years === undefined) return undefined;
  const { counted, speeds, series, input, result, start } = years;
  const holes = series.flatMap((own, k) => {
    const test = counted[k];
    return test === undefined ? [] : [holesOf(test, own)];
  });
  const further = furtherTests(input, result);
  return {
    kind: what,
    result,
    counted,
    speeds,
    holes,
    testerChanges: testerChanges(record, counted, series),
    ...(further === undefined ? {} : { further }),
    start,
  };
};

interface KindYears extends Pick<KindHistory, "result" | "counted" | "speeds" | "start"> {
  readonly series: readonly LeakSeriesTest[];
  readonly input: HistoryInput;
}

const kindYears = (record: EngineRecord, what: Compared, figures: EngineFigures): KindYears | undefined => {
  const counted = countedTests(record, what, figures);
  const speeds = what === "dry" ? historySpeeds(record, counted, figures) : [];
  const series = what === "dry" ? [] : leakSeries(record, counted);
  const input = historyInput(record, what, { counted, speeds, series });
  const [first] = counted;
  if (input === undefined || first === undefined) return undefined;
  return { counted, speeds, series, input, result: analyseHistory(input), start: first.test.date };
};

/** The courses of an engine, and nothing else of its years: of the cranking readings where there are any, else of the
 *  leak-downs. The same as in the whole assessment, in a third of its time. */
export const shownCourses = (record: EngineRecord, figures: EngineFigures): Courses | undefined =>
  kindCourses(record, "dry", figures) ?? kindCourses(record, "leak-down", figures);

/** The same of one kind of reading. */
export const kindCourses = (
  record: EngineRecord,
  what: Compared,
  figures: EngineFigures,
): Courses | undefined => {
  const counted = countedTests(record, what, figures);
  // only of one cylinder or two is the line through all tests asked for, which weighs their doubts
  const speedsOf = record.engine.cylinders.length > 2 ? historySpeedFactors : historySpeeds;
  const speeds = what === "dry" ? speedsOf(record, counted, figures) : [];
  const series = what === "dry" ? [] : leakSeries(record, counted);
  const input = historyInput(record, what, { counted, speeds, series });
  return input === undefined ? undefined : coursesOf(input);
};

/** A place on the axis as a date, or as the meter reading. */
export const placeText = ({ result, start }: KindHistory, x: number): string | number =>
  result.axis.kind === "meter" ? x : dateOfDay(dayNumber(start) + x * daysInYear);
