// The years of one engine, assessed: cranking and leak-down apart, never in one table.

import { type HistoryResult, analyseHistory } from "../history/index.ts";
import { dateOfDay, daysInYear, dayNumber } from "../quantity/index.ts";
import type { EngineRecord } from "../record/index.ts";
import { type CountedTest, countedTests, historyInput } from "./history-input.ts";
import { figuresOf } from "./trust.ts";

export interface KindHistory {
  readonly result: HistoryResult;
  /** The tests that hold readings of this kind, in order; `result.tests` names them by id. */
  readonly counted: readonly CountedTest[];
  /** The first test's date: the zero of an axis of dates. */
  readonly start: string;
}

export interface HistoryAssessment {
  readonly record: EngineRecord;
  readonly cranking?: KindHistory;
  readonly leakDown?: KindHistory;
  readonly repeatability: { readonly s: number; readonly df: number };
}

/** Assesses the history of an engine; a kind that no test holds is absent. */
export const assessHistory = (record: EngineRecord): HistoryAssessment => {
  const cranking = kindHistory(record, "dry");
  const leakDown = kindHistory(record, "leak-down");
  const { blended, df } = figuresOf(record).repeatability;
  return {
    record,
    ...(cranking === undefined ? {} : { cranking }),
    ...(leakDown === undefined ? {} : { leakDown }),
    repeatability: { s: blended, df },
  };
};

const kindHistory = (record: EngineRecord, what: "dry" | "leak-down"): KindHistory | undefined => {
  const counted = countedTests(record, what);
  const input = historyInput(record, what, counted);
  const [first] = counted;
  if (input === undefined || first === undefined) return undefined;
  return { result: analyseHistory(input), counted, start: first.test.date };
};

/** A place on the axis as a date, or as the meter reading. */
export const placeText = ({ result, start }: KindHistory, x: number): string | number =>
  result.axis.kind === "meter" ? x : dateOfDay(dayNumber(start) + x * daysInYear);
