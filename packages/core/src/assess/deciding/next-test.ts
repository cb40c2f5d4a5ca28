// The date of the next test, and the meter reading that bounds it as well.

import type { NextDate } from "../../decision/index.ts";
import { dateOfDay, dayNumber, daysInYear } from "../../quantity/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";
import { afterWork, runInLengths, workAfter } from "../run-in.ts";
import type { Deciding } from "./deciding.ts";

export interface NextTestDue {
  /** ISO; today where it is due or overdue. */
  readonly date: string;
  /** ISO: since when it is overdue. */
  readonly since?: string;
  /** Id of the test that the interval counts from, where a later one does not count. */
  readonly of?: string;
  /** Whichever comes first. */
  readonly meter?: number;
  /** The date is that of the meter reading, by its hours a year, and no bound of its own. */
  readonly reckoned?: "by-hours";
}

/** Hours a year by the meter: first to last test that has one, a year or more apart; undefined on another meter or where it
 *  was replaced. */
export const hoursPerYear = ({ engine, tests, services }: EngineRecord): number | undefined => {
  const read = tests.flatMap(({ date, meter }) => (meter === undefined ? [] : [{ date, meter }]));
  const [first, last] = [read[0], read.at(-1)];
  if (engine.meter !== "h" || first === undefined || last === undefined) return undefined;
  const years = (dayNumber(last.date) - dayNumber(first.date)) / daysInYear;
  const replaced = services.some(({ what }) => what === "meter replaced");
  return replaced || years < 1 || last.meter <= first.meter ? undefined : (last.meter - first.meter) / years;
};

/** Whichever comes first: the day until which the risk is taken, counted from today, or the longest interval, counted from
 *  the last test and never before today. The meter reading counts from the last one known. */
export const nextTestOf = (
  { engine, tests }: EngineRecord,
  { riskYears, cap, hours }: Pick<NextDate, "riskYears" | "cap" | "hours">,
  { today, last }: { readonly today: string; readonly last: string | undefined },
): NextTestDue => {
  const meter = tests.findLast((test) => test.meter !== undefined)?.meter;
  const due = Math.min(day(last ?? today, cap), day(today, riskYears ?? cap));
  return {
    ...notBefore(today, due),
    ...(engine.meter === "h" && meter !== undefined && hours !== undefined ? { meter: meter + hours } : {}),
  };
};

const day = (from: string, years: number): number => dayNumber(from) + Math.floor(years * daysInYear);

const notBefore = (today: string, due: number): Pick<NextTestDue, "date" | "since"> => {
  const date = dateOfDay(due);
  return date < today ? { date: today, since: date } : { date };
};

/** From when the interval counts: the test gone by, or work after it since which cylinders began anew. */
export const lastOf = (
  { record, today }: Pick<Deciding, "record" | "today">,
  test: Test | undefined,
): string | undefined => {
  if (test === undefined) return undefined;
  const work = workAfter(record, test);
  return work !== undefined && work.date <= today ? work.date : test.date;
};

/** The first test after new rings: once they have bedded in, by the meter, and by the date where its hours a year are known; the
 *  usual interval at the latest, however little it runs. Undefined where none of that is next.
 *  @param cap - the longest interval [years] */
export const runInTestOf = (
  { main, record, today }: Deciding,
  hours: number | undefined,
  cap: number,
): NextTestDue | undefined => {
  if (main === undefined || afterWork(record, main.test)?.code !== "run-in") return undefined;
  const { meter: unit } = record.engine;
  const work = workAfter(record, main.test);
  if (work?.meter === undefined || unit === undefined) return undefined;
  const { runIn } = runInLengths[unit];
  const years = unit === "h" && hours !== undefined && hours > 0 ? runIn / hours : Infinity;
  return {
    ...notBefore(today, day(work.date, Math.min(years, cap))),
    meter: work.meter + runIn,
    ...(years < cap ? { reckoned: "by-hours" } : {}),
  };
};
