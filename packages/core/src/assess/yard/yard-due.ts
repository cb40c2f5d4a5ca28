// When the next test of one engine of a yard is due, with a decision and without.

import { intervals } from "../../decision/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";
import type { DecisionAssessment } from "../deciding/decision-assessment.ts";
import { type NextTestDue, lastOf, nextTestOf } from "../deciding/next-test.ts";
import type { TrustCode } from "../trust/trust-reason.ts";
import { type YardCourse, hasLost } from "./yard-course.ts";
import type { YardWorst } from "./worst.ts";

/** By the decision. What asks for a test now makes it neither more nor less overdue: since when stays as it is without a
 *  decision.  @param usual - when it is due without one */
export const decidedDue = ({ nextTest, today }: DecisionAssessment, usual: NextTestDue): NextTestDue =>
  nextTest.date !== today || nextTest.since !== undefined || usual.since === undefined
    ? nextTest
    : { ...nextTest, since: usual.since };

/** Without a decision: a test that is void, doubtful or suspect is made again now, as is one in which a cylinder lags for the
 *  first time, leaks too much or was passed over, or that is dated after today; what lags or falls is watched more often
 *  than the rest. No test yet: now. @source handbook/decision.md 6 (judgement) */
export const usualDue = (
  record: EngineRecord,
  {
    today,
    test,
    trust,
    worst,
    course,
    asked,
  }: {
    readonly today: string;
    readonly test: Test | undefined;
    readonly trust: TrustCode | undefined;
    readonly worst: YardWorst | undefined;
    readonly course: YardCourse | undefined;
    readonly asked: "again" | "nothing";
  },
): NextTestDue => {
  if (test === undefined) return { date: today };
  const isOpen = worst?.standing === undefined || worst.standing === "suspect" || trust === "doubtful";
  const isOnce = worst?.standing === "lagging" && !worst.confirmed;
  const isWatched =
    worst?.standing === "lagging" ||
    (course !== undefined && course.cameBack === undefined && hasLost(course.code));
  const cap = isWatched ? intervals.watchedYears : intervals.usualYears;
  const due = nextTestOf(record, { cap }, { today, last: lastOf({ record, today }, test) });
  const isAsked = isOpen || isOnce || asked === "again" || test.date > today;
  return isAsked ? { date: today, ...(due.since === undefined ? {} : { since: due.since }) } : due;
};
