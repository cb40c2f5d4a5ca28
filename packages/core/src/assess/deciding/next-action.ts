// The one step to make next. What the test gone by asks for stands first, so that all screens name the same; a guard or the
// open engine may ask for another.

import type { Decision, NextStep } from "../../decision/index.ts";
import type { NextTest } from "../assessment.ts";
import { type HowPage, howPageOf, shownTests } from "../shown-tests.ts";
import type { Deciding } from "./deciding.ts";
import type { DoubtsFound } from "./doubts.ts";
import type { MeasureNow } from "./measure-now.ts";
import type { Row } from "./row.ts";

export interface NextAction {
  /** Of the tables of the diagnosis, or of the decision. */
  readonly code: string;
  /** As told to a mechanic. */
  readonly text: string;
  /** Absent where it hangs on what is found. */
  readonly minutes?: number;
  /** The page of the procedures that tells how. */
  readonly how?: HowPage;
  /** Whether the test gone by asks for it, as its own screen says, or the decision. */
  readonly by: "test" | "decision";
}

export interface NextActionFacts {
  readonly deciding: Deciding;
  readonly decision: Decision;
  readonly found: DoubtsFound;
  readonly rows: readonly Row[];
  readonly speaks: "today" | "too-old" | "none";
  readonly measureNow: readonly MeasureNow[];
}

/** Undefined where the work itself is next, or the usual test at its date. Open, what cannot be tested as it stands is measured
 *  where that presses; the test waits until it is closed. */
export const nextActionOf = (facts: NextActionFacts): NextAction | undefined => {
  const { deciding, decision, speaks } = facts;
  const { step } = decision.next;
  const first = ownSteps[step]?.(facts);
  if (first !== undefined) return first;
  const { verdict, basis, access } = decision;
  if (basis !== "nothing-shown") return undefined;
  if (verdict !== "test-again" && (access === "head-off" || access === "fully-open"))
    return step === "retest-before-hard-use" ? measuring(facts) : undefined;
  const asked = speaks === "today" ? askedByTest(deciding) : undefined;
  const next = asked ?? (verdict === "test-again" ? testAgain(facts) : undefined);
  // out or open below, the starter does not turn it as it stands
  const isCranked = next?.how !== undefined && next.how !== "leak-down";
  return isCranked && (access === "engine-out-closed" || access === "bottom-open")
    ? leakDownOf(facts, "")
    : next;
};

const askedByTest = ({ main }: Deciding, codes?: readonly string[]): NextAction | undefined => {
  const shown = main === undefined ? [] : shownTests(main.nextTests);
  const next = codes === undefined ? shown[0] : shown.find(({ code }) => codes.includes(code));
  return main === undefined || next === undefined ? undefined : ofTest(main, next);
};

const ofTest = (main: NonNullable<Deciding["main"]>, next: NextTest): NextAction => {
  const how = howPageOf(main, next);
  const { code, text, minutes } = next;
  return { code, text, minutes, ...(how === undefined ? {} : { how }), by: "test" };
};

type Step = (facts: NextActionFacts) => NextAction | undefined;

const own = (code: string, text: string, more: Pick<NextAction, "minutes" | "how"> = {}): NextAction => ({
  code,
  text,
  ...more,
  by: "decision",
});

/** Minutes are common practice, no source. */
const minutes = { cranking: 12, leakDown: 25, look: 15, warm: 45, day: 20 } as const;

const testAgain = ({ deciding: { main, record } }: NextActionFacts): NextAction => {
  const leakOnly = main?.test.rows.every(({ what }) => what.startsWith("leak-down")) === true;
  const all = record.engine.cylinders.length === 1 ? "it" : "every cylinder";
  return leakOnly
    ? own("leak-down-and-listen", `leak-down on ${all} again`, {
        minutes: minutes.leakDown,
        how: "leak-down",
      })
    : own("cranking", main === undefined ? `a first test: read ${all}, warm` : `read ${all} again, warm`, {
        minutes: minutes.cranking,
        how: "dry",
      });
};

/** What the tables call a leak-down. */
const leakDown: readonly string[] = ["leak-down-and-listen"];

const leakDownOf = ({ deciding }: NextActionFacts, more: string): NextAction =>
  askedByTest(deciding, leakDown) ??
  own(
    "leak-down-and-listen",
    `leak-down on ${deciding.record.engine.cylinders.length === 1 ? "it" : "every cylinder"}${more}`,
    { minutes: minutes.leakDown, how: "leak-down" },
  );

const measuring: Step = ({ measureNow }) =>
  own("measure", "measure it while it is open", {
    minutes: measureNow.reduce((sum, one) => sum + one.minutes, 0),
    how: "teardown",
  });

/** The cylinder whose valve was seen or heard. */
const ofValve = (rows: readonly Row[]): string =>
  rows.find(({ row, cylinder }) => (row === "I1" || row === "B2") && cylinder !== undefined)?.cylinder ?? "";

const ownSteps: Readonly<Partial<Record<NextStep, Step>>> = {
  "run-warm-and-retest": ({ deciding }) =>
    askedByTest(deciding, ["retest-warm"]) ??
    own("retest-warm", "run it warm and test again the same day", { minutes: minutes.warm, how: "dry" }),
  "prove-gauge-throttle-battery": ({ deciding, found }) =>
    askedByTest(deciding, ["conditions"]) ??
    own("conditions", `${proving(found)}, then test again`, { minutes: minutes.day, how: "dry" }),
  "second-method": (facts) => leakDownOf(facts, ": gauge, throttle and speed are proved"),
  "second-method-with-sight": (facts) =>
    facts.deciding.leakDown === undefined
      ? { ...leakDownOf(facts, ""), text: `${leakDownOf(facts, "").text}; and look inside with a borescope` }
      : own("cranking", "a cranking test of every cylinder, and a look inside with a borescope", {
          minutes: minutes.cranking + minutes.look,
          how: "dry",
        }),
  "look-inside-and-retest": () =>
    own("borescope", "look inside with a borescope, then both tests again", {
      minutes: minutes.look + minutes.cranking + minutes.leakDown,
      how: "leak-down",
    }),
  "look-at-the-valve": ({ rows }) => {
    const label = ofValve(rows);
    return own("borescope", `look at the valves${label === "" ? "" : ` of ${label}`} with a borescope`, {
      minutes: minutes.look,
      how: "leak-down",
    });
  },
  "offered-test": (facts) => {
    const { decision } = facts;
    if (decision.testWorth?.what === "measurement" || facts.measureNow.length > 0) return measuring(facts);
    return decision.testWorth?.what === "leak-down"
      ? leakDownOf(facts, ", three repeats")
      : own("cranking", "read every cylinder three times", { minutes: minutes.cranking, how: "dry" });
  },
  "measure-again": () => own("measure", "measure it a second time, set up anew", { how: "teardown" }),
  "measure-before-ordering": () =>
    own("measure", "measure bores, ring gaps and bearings before you order", { how: "teardown" }),
};

const proofs = {
  gauge: "prove the gauge",
  throttle: "block the throttle wide open",
  "cranking speed": "note the cranking speed",
} as const;

const proving = ({ lowEverywhere }: DoubtsFound): string =>
  ["charge the battery", ...(lowEverywhere?.unproved ?? []).map((proof) => proofs[proof])].join(", ");
