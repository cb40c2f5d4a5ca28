// One engine of many in one row: the standing of its latest test, the course of its years, and what to do, by the same
// functions that answer for one engine at length.

import type { EngineRecord, MeterUnit, Test } from "../../record/index.ts";
import { shippedRules } from "../../rules/index.ts";
import { isOwn } from "../../spread/index.ts";
import { datedAhead } from "../dated-ahead.ts";
import { assessDecision } from "../deciding/assess-decision.ts";
import type { NextTestDue } from "../deciding/next-test.ts";
import { leaksTooMuch } from "../deciding/rows-leak.ts";
import { figuresOf } from "../figures.ts";
import { latestTest } from "../latest-test.ts";
import { unreadIn } from "../never-read.ts";
import { type Standings, standingsOf } from "../standings.ts";
import type { TrustCode, TrustReason } from "../trust/trust-reason.ts";
import { shownCourses } from "../years/assess-history.ts";
import { lowByLuck } from "./luck.ts";
import { type YardWorst, lowOf, worstOf } from "./worst.ts";
import { type YardCourse, courseOf } from "./yard-course.ts";
import { type YardDecision, decisionOf } from "./yard-decision.ts";
import { decidedDue, usualDue } from "./yard-due.ts";

/** The test of a yard row: the latest that is not set aside. */
export interface YardTest {
  readonly id: string;
  readonly date: string;
  readonly trust: TrustCode;
  /** Why it is doubtful or void; absent where it is trusted. */
  readonly reasons?: readonly Pick<TrustReason, "code" | "text">[];
}

/** Plain values, fit to be sent from one process to another. */
export interface YardRow {
  readonly engine: string;
  readonly name: string;
  /** How many cylinders it has. */
  readonly cylinders: number;
  /** How many tests there are, of whatever kind. */
  readonly tests: number;
  /** The test that is judged: the latest that is not set aside. */
  readonly test?: YardTest;
  /** What is dated after today, each in a few words: `test 2031-05-01a`. */
  readonly ahead?: readonly string[];
  /** The last reading of the meter that a test has. */
  readonly meter?: { readonly reading: number; readonly unit?: MeterUnit };
  readonly worst?: YardWorst;
  /** All that lag or are suspect, in the engine's order; absent where none does. */
  readonly low?: readonly YardWorst[];
  /** Where cylinders lose more than the maker's limit, or the usual one, in the leak-down, and nobody heard where: how many,
   *  and the most. */
  readonly leaking?: { readonly cylinders: number; readonly most: number };
  /** Cylinders that the test judged passed over, and no other of its year read. */
  readonly unread?: readonly string[];
  /** Of the cylinder that has lost most where one has lost, else of the worst, or of another where that one is even and steady. */
  readonly course?: YardCourse;
  /** Absent where it was not asked for. */
  readonly decision?: YardDecision;
  /** Whether the work is a licensed person's call. */
  readonly licensed: boolean;
  /** When the next test is due: by the decision where it was made, else by the usual interval. */
  readonly due: NextTestDue;
  /** The chance that a sound engine shows a low cylinder in a test of as many cylinders. */
  readonly byLuck: number;
  /** `at-most` where cylinders were read more than once: the chance is that of one reading each, and repeats lower it. */
  readonly byLuckIs: "about" | "at-most";
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
  const [worst, low] = [worstOf(stand), lowOf(stand)];
  const course = courseOf(record, shownCourses(record, figures), worst);
  const meter = tests.findLast((one) => one.meter !== undefined)?.meter;
  const leaking = leakingOf(record, test, stand);
  const unread = test === undefined ? [] : unreadIn(record, test).map(({ label }) => label);
  const asked = leaking === undefined && unread.length === 0 ? "nothing" : "again";
  const usual = usualDue(record, { today, test, trust: stand?.trust.code, worst, course, asked });
  const ahead = datedAhead(record, today);
  return {
    engine: engine.id,
    name: engine.name,
    cylinders: engine.cylinders.length,
    tests: tests.length,
    ...(test === undefined || stand === undefined ? {} : { test: testOf(test, stand) }),
    ...(ahead.length === 0 ? {} : { ahead }),
    ...(meter === undefined
      ? {}
      : { meter: { reading: meter, ...(engine.meter === undefined ? {} : { unit: engine.meter }) } }),
    ...(worst === undefined ? {} : { worst }),
    ...(low.length === 0 ? {} : { low }),
    ...(leaking === undefined ? {} : { leaking }),
    ...(unread.length === 0 ? {} : { unread }),
    ...(course === undefined ? {} : { course }),
    ...(decided === undefined ? {} : { decision: decisionOf(decided) }),
    licensed: engine.use === "aircraft" || decided?.decision.licensed === true,
    due: decided === undefined ? usual : decidedDue(decided, usual),
    byLuck: lowByLuck(
      comparedIn(stand),
      stand?.forward !== undefined && isOwn(stand.forward.prior) ? "own" : "believed",
    ),
    byLuckIs: isRepeated(stand) ? "at-most" : "about",
  };
};

const testOf = ({ id, date }: Test, { trust: { code, reasons } }: Standings): YardTest => ({
  id,
  date,
  trust: code,
  ...(reasons.length === 0 ? {} : { reasons: reasons.map((one) => ({ code: one.code, text: one.text })) }),
});

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

const isRepeated = (stand: Standings | undefined): boolean =>
  stand?.pressures.some(({ dry }) => (dry?.readings.length ?? 0) > 1) === true ||
  stand?.leak.values.some((one) => (one?.takesLost.length ?? 0) > 1) === true;
