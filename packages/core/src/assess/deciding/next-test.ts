// The date of the next test, and the meter reading that bounds it as well.

import type { NextDate } from "../../decision/index.ts";
import { dateOfDay, dayNumber, daysInYear } from "../../quantity/index.ts";
import type { EngineRecord } from "../../record/index.ts";

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
): { readonly date: string; readonly meter?: number } => {
  const meter = tests.findLast((test) => test.meter !== undefined)?.meter;
  const day = (from: string, years: number): number => dayNumber(from) + Math.floor(years * daysInYear);
  const due = Math.min(day(last ?? today, cap), day(today, riskYears ?? cap));
  const date = dateOfDay(Math.max(dayNumber(today), due));
  return engine.meter === "h" && meter !== undefined && hours !== undefined
    ? { date, meter: meter + hours }
    : { date };
};
