// The one step to make next. What the test gone by asks for stands first, so that all screens name the same; a guard or the
// open engine may ask for another.

import { type NextStep, ladder } from "../../decision/index.ts";
import type { NextTest } from "../assessment.ts";
import { beforeOpening } from "../before-opening.ts";
import { listed } from "../labels.ts";
import { isLeakOnly } from "../leak-only.ts";
import { afterWork } from "../run-in.ts";
import { howPageOf, shownTests } from "../shown-tests.ts";
import type { Deciding } from "./deciding.ts";
import type { DoubtsFound } from "./doubts.ts";
import { findTheSource } from "./find-the-source.ts";
import { type NextAction, type NextActionFacts, type Step, minutes, own } from "./own-step.ts";
import type { Row } from "./row.ts";

/** Undefined where the work itself is next, or the usual test at its date. Open, what cannot be tested as it stands is measured
 *  where that presses; the test waits until it is closed. */
export const nextActionOf = (facts: NextActionFacts): NextAction | undefined => {
  const { deciding, decision, speaks } = facts;
  const { step } = decision.next;
  const { verdict, basis, access } = decision;
  const first = ownSteps[step]?.(facts);
  if (first !== undefined) return asItStands(first, facts);
  if (verdict === "open-the-top-end" && access !== "head-off" && access !== "fully-open")
    return speaks === "today" ? sparing(deciding) : undefined;
  if (basis !== "nothing-shown") return undefined;
  const isPressureKnown = facts.rows.some(({ row }) => row === "E1" || row === "E2");
  if (decision.urgency === "no-hard-use" && access === "in-place" && !isPressureKnown) return pressureFirst;
  if (verdict !== "test-again" && (access === "head-off" || access === "fully-open"))
    return step === "retest-before-hard-use" && facts.measureNow.length > 0 ? measuring(facts) : undefined;
  const isWanted = verdict === "test-again" || facts.due === "due";
  const next = askedToday(facts) ?? (isWanted ? testAgain(facts) : undefined);
  return next === undefined ? undefined : asItStands(next, facts);
};

/** Bearing metal, and nobody knows the pressure: it takes minutes, and tells of the bearings. Common practice, no source. */
const pressureFirst = own(
  "oil-pressure",
  "read the hot oil pressure on a second gauge, with the right oil, before it is run hard",
  { minutes: minutes.look },
);

/** Out or open below, the starter does not turn it; open above, no test can be made at all. */
const asItStands = (action: NextAction, facts: NextActionFacts): NextAction => {
  const { access } = facts.decision;
  const isCranked = action.how !== undefined && action.how !== "leak-down" && action.how !== "teardown";
  if (access === "head-off" || access === "fully-open") return isTest(action) ? measuring(facts) : action;
  return isCranked && access !== "in-place" ? leakDownOf(facts, "") : action;
};

const isTest = ({ how }: NextAction): boolean => how !== undefined && how !== "teardown";

/** What the test gone by asks for, as long as it speaks, or as work after it asks for the next one. */
const askedToday = ({ deciding, speaks }: NextActionFacts): NextAction | undefined => {
  const { main, record } = deciding;
  const isAnew = main !== undefined && afterWork(record, main.test) !== undefined;
  return speaks === "today" || isAnew ? askedByTest(deciding) : undefined;
};

/** What goes before the head, as the screen of the test says. */
const sparing = (deciding: Deciding): NextAction | undefined => {
  const { main } = deciding;
  const spare = main === undefined ? undefined : beforeOpening(main);
  return spare === undefined ? askedByTest(deciding) : { ...spare, how: "leak-down", by: "test" };
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

const testAgain = ({ deciding: { main, record } }: NextActionFacts): NextAction => {
  const leakOnly = main !== undefined && isLeakOnly(main.test);
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

const measuring = ({ measureNow }: NextActionFacts): NextAction =>
  own("measure", "measure it while it is open", {
    minutes: measureNow.reduce((sum, one) => sum + one.minutes, 0),
    how: "teardown",
  });

/** The cylinder whose valve was seen or heard. */
const ofValve = (rows: readonly Row[]): string =>
  rows.find(({ row, cylinder }) => (row === "I1" || row === "B2") && cylinder !== undefined)?.cylinder ?? "";

const ownSteps: Readonly<Partial<Record<NextStep, Step>>> = {
  "find-the-source": findTheSource,
  "run-warm-and-retest": ({ deciding }) =>
    askedByTest(deciding, ["retest-warm"]) ??
    own("retest-warm", "run it warm and test again the same day", {
      minutes: minutes.warm,
      how: deciding.main !== undefined && isLeakOnly(deciding.main.test) ? "leak-down" : "dry",
    }),
  "prove-gauge-throttle-battery": ({ deciding, found }) =>
    askedByTest(deciding, ["conditions"]) ??
    own("conditions", `${proving(found)}, then test again`, { minutes: minutes.day, how: "dry" }),
  "second-method": (facts) => {
    const isDiesel = facts.deciding.record.engine.ignition === "compression";
    return leakDownOf(facts, `: gauge${isDiesel ? "" : ", throttle"} and speed are proved`);
  },
  "second-method-with-sight": (facts) => secondWithSight(facts),
  "look-inside-and-retest": (facts) =>
    (facts.decision.licensed ? undefined : askedToday(facts)) ??
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
      : thriceCranked(facts);
  },
  "measure-again": ({ measured }) => {
    const line = measured?.assessment.work.find(({ code }) => code === "measure-again");
    return own("measure", line?.text ?? "measure it a second time, set up anew", { how: "teardown" });
  },
  "measure-before-ordering": ({ decision: { guards } }) => {
    const open = guards.find(({ code }) => code === "subject-to-measuring");
    const parts = open?.code === "subject-to-measuring" ? open.open.map((part) => openParts[part]) : allParts;
    return parts.length === 0
      ? undefined
      : own("measure", `measure ${listed(parts)} before you order`, { how: "teardown" });
  },
};

/** Every cylinder read three times, in the way that the test gone by asks for where that reads them all. */
const thriceCranked = ({ deciding }: NextActionFacts): NextAction => {
  const asked = askedByTest(deciding, ["first-stroke", "cranking", "retest-warm"]);
  return asked === undefined
    ? own("cranking", "read every cylinder three times", { minutes: minutes.cranking, how: "dry" })
    : { ...asked, text: `${asked.text}; each three times` };
};

/** By a method that the verdict does not rest on yet, and with sight. Both tests made, sight alone is left; that as well, what
 *  the test asks for.  @source handbook/decision.md 2, G8 */
const secondWithSight = (facts: NextActionFacts): NextAction => {
  const { dry, leakDown, record } = facts.deciding;
  const isAlone = record.engine.cylinders.length === 1;
  const isSeen = facts.rows.some(({ row }) => ladder[row].line === "sight");
  const look = isSeen ? "" : "; and look inside with a borescope";
  if (leakDown === undefined) {
    const leak = leakDownOf(facts, "");
    return { ...leak, text: `${leak.text}${look}` };
  }
  if (dry === undefined)
    return own("cranking", `a cranking test${isAlone ? "" : " of every cylinder"}${look}`, {
      minutes: minutes.cranking + (isSeen ? 0 : minutes.look),
      how: "dry",
    });
  if (!isSeen)
    return own("borescope", "look inside with a borescope: both tests are made, and nobody looked", {
      minutes: minutes.look,
      how: "leak-down",
    });
  return askedToday(facts) ?? leakDownOf(facts, ", by another tester");
};

const openParts = { bore: "bores", "ring-gap": "ring gaps", bearings: "bearings" } as const;
const allParts = Object.values(openParts);

const proofs = {
  gauge: "prove the gauge",
  throttle: "block the throttle wide open",
  "cranking speed": "charge the battery and note the cranking speed",
} as const;

const proving = ({ lowEverywhere }: DoubtsFound): string =>
  (lowEverywhere?.unproved ?? []).map((proof) => proofs[proof]).join(", ");
