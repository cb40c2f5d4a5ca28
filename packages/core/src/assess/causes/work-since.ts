// What was done to the engine, or befell it, since its low cylinders last were sound: it may be why.

import type { Service, Test } from "../../record/index.ts";
import { dateOfDay, dayNumber } from "../../quantity/index.ts";
import type { EngineFigures } from "../figures.ts";
import { type Compared, forwardOf, isFlagged } from "../flags.ts";
import { isVoid } from "../trust/trust.ts";
import { isSellers } from "../trust/trust-rules.ts";
import { counts } from "../values/values.ts";
import { type Assessed, isLow } from "./assessed.ts";

/** A year, where no test before tells when it was sound; judgement. */
const daysBack = 365;

/** In order; each with the cylinders it may still speak for: what befell a cylinder before work that began its history anew
 *  is mended. It counts between the last test in which the cylinders that are low now did not stand out and the next one, so
 *  that a repeated test remembers what the first one followed; and since the test before this one. A test on the day of a
 *  service counts as after it. */
export const workSince = (assessed: Assessed, figures: EngineFigures): readonly Service[] => {
  const { record, test } = assessed;
  const done = record.services.filter(({ date }) => date <= test.date);
  if (done.length === 0) return [];
  const { tests, stoodOut } = testsBefore(assessed, figures);
  const sound = tests.findLastIndex((one) => !stoodOut(one));
  const became = tests[sound + 1]?.date ?? test.date;
  const spans = [
    [tests[sound]?.date ?? daysBefore(became, daysBack), became],
    [tests.at(-1)?.date ?? daysBefore(test.date, daysBack), test.date],
  ] as const;
  return done
    .filter(({ date }) => spans.some(([from, to]) => date > from && date <= to))
    .flatMap((service): Service[] => {
      if (service.newBaseline.length > 0) return [service];
      const mended = new Set(
        done.flatMap(({ date, newBaseline }) => (date > service.date ? newBaseline : [])),
      );
      const cylinders = service.cylinders.filter((label) => !mended.has(label));
      return cylinders.length === 0 ? [] : [{ ...service, cylinders }];
    });
};

/** Earlier tests that count, in order, and whether any of the cylinders that are low now stood out in one. */
const testsBefore = ({ record, test, cylinders }: Assessed, figures: EngineFigures) => {
  const what: Compared = cylinders.some(({ dryStanding }) => dryStanding !== undefined) ? "dry" : "leak-down";
  const low = cylinders.map(isLow);
  const tests = record.tests.filter(
    (other) =>
      other.date < test.date &&
      counts(other, what) &&
      !isSellers(other) &&
      !isVoid(record, other, { what, figures }),
  );
  const stoodOut = (other: Test): boolean => {
    const flags = forwardOf(record, other, what, figures)?.cylinders ?? [];
    return flags.some((verdict, i) => low[i] === true && isFlagged(verdict));
  };
  return { tests, stoodOut };
};

/** The date so many days before another. */
export const daysBefore = (date: string, days: number): string => dateOfDay(dayNumber(date) - days);
