// What a decision is made from, gathered once: the tests that speak today, the years, and what is still true of the notes.

import type { EngineRecord, Test } from "../../record/index.ts";
import { assessTest } from "../assess-test.ts";
import type { TestAssessment } from "../assessment.ts";
import { type EngineFigures, figuresOf } from "../figures.ts";
import type { Compared } from "../flags.ts";
import { latestTest } from "../latest-test.ts";
import type { DecisionChoices } from "./choices.ts";
import { isCurrent } from "./current.ts";
import { type MeasuredNow, measuredNow } from "./measured-now.ts";
import { isVoid } from "../trust/trust.ts";
import { isSellers } from "../trust/trust-rules.ts";
import { valuesOf } from "../values/values.ts";
import { type HistoryAssessment, assessHistory } from "../years/assess-history.ts";

/** What a decision is made from, gathered once: the tests that speak today, the years, and what still holds of the
 *  notes. */
export interface Deciding {
  readonly record: EngineRecord;
  readonly figures: EngineFigures;
  readonly history: HistoryAssessment;
  /** ISO. */
  readonly today: string;
  /** What was measured on the engine apart and still holds. */
  readonly measured?: MeasuredNow;
  /** The test whose trust is asked. */
  readonly main?: TestAssessment;
  /** Where nobody chose it: the id of the last test, which does not count, so that the one above is the last that does. */
  readonly notCounted?: string;
  /** The newest test of each kind that may speak: the one above, or another trusted one. */
  readonly dry?: TestAssessment;
  readonly leakDown?: TestAssessment;
}

/** Labels whose history began anew after that day, by work done until today. */
export const renewedAfter = (
  { record: { services } }: Pick<Deciding, "record">,
  { date, today }: { readonly date: string; readonly today: string },
): ReadonlySet<string> =>
  new Set(
    services
      .filter((service) => service.date > date && service.date <= today)
      .flatMap(({ newBaseline }) => newBaseline),
  );

/** Whether rows of a test fall with the one whose trust is asked. What was read of the others before work on some stands by
 *  itself: that work is what leaves today in doubt. */
export const restsOnOf = (deciding: Deciding, test: TestAssessment): "this-test" | "other-records" => {
  const isWorkedOn = renewedAfter(deciding, { date: test.test.date, today: deciding.today }).size > 0;
  return test === deciding.main && !(isWorkedOn && test.trust.code === "trusted")
    ? "this-test"
    : "other-records";
};

/** Goes by the test that was chosen, else by the newest that counts.
 *  @throws RangeError where the record holds no such test */
export const gather = (
  record: EngineRecord,
  { today, test: id, rules, faults }: Pick<DecisionChoices, "today" | "test" | "rules" | "faults">,
): Deciding => {
  const options = {
    ...(rules === undefined ? {} : { rules }),
    ...(faults === undefined ? {} : { faults }),
  };
  const figures = figuresOf(record);
  const chosen = id === undefined ? undefined : record.tests.find((test) => test.id === id);
  if (id !== undefined && chosen === undefined)
    throw new RangeError(`assessDecision: ${record.engine.id} has no test ${id}`);
  const until = chosen?.date ?? today;
  const known = record.tests.filter(({ date, setAside }) => setAside === undefined && date <= until);
  const counts = (test: Test, what: Compared): boolean =>
    valuesOf(test, what) !== undefined && !isSellers(test) && !isVoid(record, test, { what, figures });
  const newest = known.findLast((test) => counts(test, "dry") || counts(test, "leak-down"));
  const main = chosen ?? newest ?? known.at(-1);
  const measured = measuredNow(record, today);
  const history = assessHistory(record, figures);
  const base = {
    ...{ record, figures, history, today },
    ...(measured === undefined ? {} : { measured }),
  };
  if (main === undefined) return base;
  const assessed = assessTest(record, main, { ...options, history });
  const speaks = (what: Compared): TestAssessment | undefined => {
    const own = valuesOf(main, what) === undefined ? undefined : assessed;
    const other = known.findLast((test) => test.date <= main.date && counts(test, what));
    const found =
      own ??
      (other === undefined ? undefined : assessTest(record, other, { ...options, causes: "left-out" }));
    const trusted = found === assessed || found?.trust.code === "trusted";
    return found !== undefined && trusted && stillSpeaks(base, found.test) ? found : undefined;
  };
  const [dry, leakDown] = [speaks("dry"), speaks("leak-down")];
  const latest = latestTest({ tests: known });
  const isLast = chosen !== undefined || newest === undefined || latest === undefined || latest === main;
  return {
    ...base,
    main: assessed,
    ...(isLast ? {} : { notCounted: latest.id }),
    ...(dry === undefined ? {} : { dry }),
    ...(leakDown === undefined ? {} : { leakDown }),
  };
};

/** Within the year, and not all cylinders were renewed since. */
export const stillSpeaks = (
  { record, today }: Pick<Deciding, "record" | "today">,
  { date }: Pick<Test, "date">,
): boolean =>
  isCurrent(date, today) && renewedAfter({ record }, { date, today }).size < record.engine.cylinders.length;
