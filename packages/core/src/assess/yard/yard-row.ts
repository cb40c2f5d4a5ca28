// One engine of many in one row: the standing of its latest test, the course of its years, and what to do, by the same
// functions that answer for one engine at length.

import { type Decision, intervals } from "../../decision/index.ts";
import type { Course, Courses, CylinderCourse } from "../../history/index.ts";
import type { EngineRecord, MeterUnit, Test } from "../../record/index.ts";
import { shippedRules } from "../../rules/index.ts";
import { assessDecision } from "../deciding/assess-decision.ts";
import { isCurrent } from "../deciding/current.ts";
import type { DecisionAssessment } from "../deciding/decision-assessment.ts";
import type { LowEverywhere } from "../deciding/low-everywhere.ts";
import { leaksTooMuch } from "../deciding/rows-leak.ts";
import { type NextTestDue, nextTestOf } from "../deciding/next-test.ts";
import { figuresOf } from "../figures.ts";
import { latestTest } from "../latest-test.ts";
import { unreadIn } from "../never-read.ts";
import { type Standings, standingsOf } from "../standings.ts";
import type { TrustCode } from "../trust/trust-reason.ts";
import { shownCourses } from "../years/assess-history.ts";
import { suspectByLuck } from "./luck.ts";
import { type YardWorst, worstOf } from "./worst.ts";

/** What the worst cylinder of an engine did over its years. */
export interface YardCourse {
  readonly code: Course;
  readonly label: string;
  /** ln units a year, of a course that has a slope; absent where no year is known. */
  readonly perYear?: number;
}

/** The word for one engine of a yard, and the first of its reasons. */
export interface YardDecision {
  readonly code: Decision["verdict"];
  /** Why this word and not a milder one: the first of its reasons. */
  readonly reason: Decision["reasons"][0];
  /** Why the last test does not speak for today: over a year old, or there was work since, maybe with rings that have
   *  to run in. */
  readonly tooOld?: "over-a-year" | "before-work" | "run-in";
  /** Where it is low everywhere, what nobody proved right. */
  readonly prove?: LowEverywhere["unproved"];
  readonly urgency?: NonNullable<Decision["urgency"]>;
}

/** Plain values, fit to be sent from one process to another. */
export interface YardRow {
  readonly engine: string;
  readonly name: string;
  /** How many tests there are, of whatever kind. */
  readonly tests: number;
  /** The test that is judged: the latest that is not set aside. */
  readonly test?: { readonly id: string; readonly date: string; readonly trust: TrustCode };
  /** The last reading of the meter that a test has. */
  readonly meter?: { readonly reading: number; readonly unit?: MeterUnit };
  readonly worst?: YardWorst;
  /** Where cylinders lose more than the maker's limit, or the usual one, in the leak-down, and nobody heard where: how many,
   *  and the most. */
  readonly leaking?: { readonly cylinders: number; readonly most: number };
  /** Cylinders that the test judged passed over, and no other of its year read. */
  readonly unread?: readonly string[];
  /** Of the cylinder that has lost most where one has lost, else of the worst. */
  readonly course?: YardCourse;
  /** Absent where it was not asked for. */
  readonly decision?: YardDecision;
  /** Whether the work is a licensed person's call. */
  readonly licensed: boolean;
  /** When the next test is due: by the decision where it was made, else by the usual interval. */
  readonly due: NextTestDue;
  /** The chance that a sound engine shows a suspect cylinder in a test of as many cylinders. */
  readonly byLuck: number;
}

/** What a yard is asked with: the day, and whether decisions are made too. */
export interface YardChoices {
  /** ISO. */
  readonly today: string;
  /** A decision takes many times as long as all else. */
  readonly decide: "always" | "never";
}

/** The row of one engine. */
export const yardRow = (record: EngineRecord, { today, decide }: YardChoices): YardRow => {
  const { engine, tests } = record;
  const decided = decide === "always" ? assessDecision(record, { today, flips: "left-out" }) : undefined;
  const test = latestTest(record);
  const figures = figuresOf(record);
  const stand = test === undefined ? undefined : standingsOf(record, test, { figures, sheet: shippedRules });
  const worst = worstOf(stand);
  const course = courseOf(shownCourses(record, figures), worst?.label);
  const meter = tests.findLast((one) => one.meter !== undefined)?.meter;
  const leaking = leakingOf(record, test, stand);
  const unread = test === undefined ? [] : unreadIn(record, test).map(({ label }) => label);
  const asked = leaking === undefined && unread.length === 0 ? "nothing" : "again";
  const judged =
    test === undefined || stand === undefined
      ? undefined
      : { id: test.id, date: test.date, trust: stand.trust.code };
  return {
    engine: engine.id,
    name: engine.name,
    tests: tests.length,
    ...(judged === undefined ? {} : { test: judged }),
    ...(meter === undefined
      ? {}
      : { meter: { reading: meter, ...(engine.meter === undefined ? {} : { unit: engine.meter }) } }),
    ...(worst === undefined ? {} : { worst }),
    ...(leaking === undefined ? {} : { leaking }),
    ...(unread.length === 0 ? {} : { unread }),
    ...(course === undefined ? {} : { course }),
    ...(decided === undefined ? {} : { decision: decisionOf(decided) }),
    licensed: engine.use === "aircraft" || decided?.decision.licensed === true,
    due:
      decided?.nextTest ?? usualNext(record, { today, test, trust: stand?.trust.code, worst, course, asked }),
    byLuck: suspectByLuck(comparedIn(stand)),
  };
};

/** Where the air was heard it is the decision that says what follows. */
const leakingOf = (
  record: EngineRecord,
  test: Test | undefined,
  stand: Standings | undefined,
): YardRow["leaking"] => {
  if (test === undefined || stand === undefined || stand.trust.voids !== undefined) return undefined;
  const lost = stand.leak.values.flatMap((one, i) => {
    const isPlaced = test.heard?.[i]?.some(({ place, faint }) => !faint && place !== "none") === true;
    return one !== undefined && !isPlaced && leaksTooMuch(one, record.engine) ? [one.lost] : [];
  });
  return lost.length === 0 ? undefined : { cylinders: lost.length, most: Math.max(...lost) };
};

/** Cylinders that are held against each other, by the instrument that read more of them. */
const comparedIn = (stand: Standings | undefined): number =>
  Math.max(
    stand?.forward?.compared ?? 0,
    stand?.trust.code === "void"
      ? 0
      : (stand?.leak.values.filter((one) => one?.standing !== undefined).length ?? 0),
  );

const decisionOf = ({
  decision,
  speaks,
  test,
  today,
  nextAction,
  lowEverywhere,
}: DecisionAssessment): YardDecision => {
  const {
    verdict,
    reasons: [reason],
    urgency,
  } = decision;
  const isOld = test !== undefined && !isCurrent(test.test.date, today);
  const tooOld = nextAction?.code === "run-in" ? "run-in" : isOld ? "over-a-year" : "before-work";
  return {
    code: verdict,
    reason,
    ...(speaks !== "too-old" ? {} : { tooOld }),
    ...(reason !== "low-everywhere" || lowEverywhere === undefined ? {} : { prove: lowEverywhere.unproved }),
    ...(urgency === undefined ? {} : { urgency }),
  };
};

const lost: readonly Course[] = ["stepped-down", "falling"];

/** Where a cylinder has lost, of the one that has lost most. */
const courseOf = (years: Courses | undefined, worst: string | undefined): YardCourse | undefined => {
  if (years === undefined) return undefined;
  const { cylinders, perYear: units } = years;
  const told = ({ label, course, slope }: CylinderCourse): YardCourse => {
    const own = units === undefined ? undefined : slope();
    return {
      code: course,
      label,
      ...(own === undefined || units === undefined ? {} : { perYear: own * units }),
    };
  };
  const [most] = cylinders
    .filter(({ course }) => lost.includes(course))
    .map(told)
    .sort((a, b) => lost.indexOf(a.code) - lost.indexOf(b.code) || (a.perYear ?? 0) - (b.perYear ?? 0));
  const next = cylinders.find(({ label }) => label === worst) ?? cylinders[0];
  return most ?? (next && told(next));
};

/** Without a decision: a test that is void, doubtful or suspect is made again now, as is one in which a cylinder lags for the
 *  first time, leaks too much or was passed over; what lags or falls is watched more often than the rest. No test yet: now. @source handbook/decision.md 6 (judgement) */
const usualNext = (
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
  const isOpen = worst?.standing === undefined || worst.standing === "suspect" || trust === "doubtful";
  const isOnce = worst?.standing === "lagging" && !worst.confirmed;
  if (test === undefined || isOpen || isOnce || asked === "again") return { date: today };
  const isWatched = worst.standing === "lagging" || (course !== undefined && lost.includes(course.code));
  const cap = isWatched ? intervals.watchedYears : intervals.usualYears;
  return nextTestOf(record, { cap }, { today, last: test.date });
};
