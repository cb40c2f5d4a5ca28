// From the records of one engine to a decision: what was found, what nobody looked at, and what it comes to.

import {
  type Decision,
  type DecisionInput,
  type Job,
  decide,
  ladder,
  turnsOf,
} from "../../decision/index.ts";
import type { EngineRecord } from "../../record/index.ts";
import { doneOf, offeredTest } from "./access.ts";
import type { DecisionChoices } from "./choices.ts";
import { conflictsOf } from "./conflicts.ts";
import type { CannotSee, DecisionAssessment, FoundRow, OtherFault } from "./decision-assessment.ts";
import { damageOf } from "./damage.ts";
import { type Deciding, gather, stillSpeaks } from "./deciding.ts";
import { type DoubtsFound, doubtsOf } from "./doubts.ts";
import { measureNow } from "./measure-now.ts";
import { horizonOf, moneyOf, ownershipOf } from "./money.ts";
import { unmeasuredParts } from "./measured-not-seen.ts";
import { nextActionOf } from "./next-action.ts";
import { nextByOf } from "./next-by.ts";
import { hoursPerYear, lastOf, nextTestOf, runInTestOf } from "./next-test.ts";
import { notSeenOf } from "./not-seen.ts";
import { reachOf } from "./reach.ts";
import { ringsDueOf } from "./rings-due.ts";
import type { Row } from "./row.ts";
import { crankingRows } from "./rows-cranking.ts";
import { leakRows } from "./rows-leak.ts";
import { measuredRows } from "./rows-measured.ts";
import { runningRows } from "./rows-running.ts";
import { sightRows } from "./rows-sight.ts";
import { sharesOf } from "./shares.ts";
import { testAgainOf } from "./test-again.ts";
import { topWorkOf } from "./top-work.ts";
import { workAfter } from "../run-in.ts";
import { assessHistory } from "../years/assess-history.ts";
import { unsettledOf } from "./unsettled.ts";
import { type WearFound, wearOf } from "./wear.ts";

/** The whole way from the records to the decision. Nothing that nobody looked at becomes a row; every line of evidence is
 *  either a row or named as not seen.
 *  @param deciding - what it is made from, where another question was asked of the same test, day and sheets before
 *  @throws RangeError where the test asked for is not of the record
 *  @source handbook/decision.md */
export const assessDecision = (
  record: EngineRecord,
  choices: DecisionChoices,
  deciding: Deciding = gather(record, choices),
): DecisionAssessment => {
  const { today, opened, flips = "told" } = choices;
  const done = doneOf(opened, choices.engineOut === true ? "out" : "in");
  const horizon = horizonOf(record, choices);
  const money = moneyOf(record, choices);
  const shares = sharesOf(deciding.main);
  const rows = rowsOf(deciding);
  const hours = hoursPerYear(record);
  const speaks = speaking(deciding);
  const { doubts, ...found } = speaks === "today" ? doubtsOf(deciding, rows) : noDoubts;
  const { wear, without } = wearKnown(deciding, horizon.years, found);
  const rings = ringsDueOf(deciding, opened);
  const damage = damageOf(deciding).filter(
    ({ withNewShells }) => withNewShells === "open" || rings === undefined,
  );
  const { measured } = deciding;
  const { unsettled, unplaced, dead } = unsettledOf(deciding, rows);
  const input: DecisionInput = {
    rows: rows.map(({ row, text, restsOn, cylinder, times }) => ({
      id: row,
      text,
      restsOn,
      ...(cylinder === undefined ? {} : { cylinder }),
      ...(times === undefined ? {} : { times }),
    })),
    trust: trustOf(deciding, speaks, done),
    doubts,
    wear: wear.wear,
    shares: shares.shares,
    done,
    ...(money.prices === undefined ? {} : { prices: money.prices }),
    ...(money.accessRatio === undefined ? {} : { accessRatio: money.accessRatio }),
    chances: money.chances,
    ownership: ownershipOf(record, horizon, choices),
    use: useOf(record),
    // open to the rings, they are the question; else the cheaper of top end and re-ring
    ...(done.includes("bottomOpen") ? { considered: "reRing" as const } : {}),
    ...(rings === undefined ? {} : { ringsDue: "yes" as const }),
    ...pastLimitOf(rows, done),
    ...(damage.length === 0 ? {} : { damage: "unsettled" as const }),
    ...(speaks !== "today" || unsettled === undefined ? {} : { unsettled }),
    ...(measured?.found.some(({ open }) => open.length > 0) === true ? { tooClose: "yes" as const } : {}),
    test: offeredTest(done, deciding.main, money.prices?.test),
    ...(hours === undefined ? {} : { hoursPerYear: hours }),
  };
  const decision = decide(input, flips === "told" ? "far" : "ends");
  const measuring = measureNow(opened, {
    engine: record.engine,
    cylinder: decision.chance?.label ?? found.oddTest?.cylinder,
    measured,
  });
  const isAskedNow = input.unsettled === "read-again" || (dead === "some" && speaks === "today");
  const due = isAskedNow
    ? { date: today }
    : nextTestOf(record, decision.next, { today, last: lastOf(deciding) });
  const isDue = due.date > today ? "to-come" : "due";
  const action = nextActionOf({
    deciding,
    decision,
    found: { doubts, ...found },
    rows,
    damage,
    speaks,
    due: isDue,
    measureNow: measuring,
    measured,
  });
  const again = testAgainOf(decision, input, action);
  const reach = reachOf(wear.channels, horizon, decision);
  const isTop = decision.scores.top.state === "established" && decision.need !== "rebuild";
  const nextBy = nextByOf(decision, done, { due: isDue, dead, step: action?.code });
  return {
    ...(deciding.main === undefined ? {} : { test: deciding.main }),
    speaks,
    history: deciding.history,
    today,
    decision,
    turns: flips === "told" ? turnsOf(input) : [],
    input,
    ...found,
    unplacedLeaks: speaks === "today" ? unplaced : [],
    ...(rings === undefined ? {} : { ringsDue: rings }),
    ...(opened === undefined ? {} : { opened }),
    done,
    horizon,
    prices: money.known,
    evidence: foundRows(rows, decision),
    notSeen: notSeenOf(deciding, rows),
    measureNow: measuring,
    wear: wear.channels,
    ...(wear.unknown === undefined ? {} : { chanceUnknown: wear.unknown }),
    ...(without === undefined ? {} : { chanceWithout: without }),
    ...(reach === undefined ? {} : { reach }),
    sharesFrom: shares.from,
    conflicts: conflictsOf(decision, deciding),
    otherFaults: otherFaults(deciding),
    damage: damage.map(({ found: text }) => text),
    cannotSee: cannotSee(deciding, wear),
    nextTest:
      runInTestOf(deciding, hours, decision.next.cap) ??
      (decision.verdict === "test-again" ? { date: today } : due),
    nextBy,
    ...(action === undefined ? {} : { nextAction: action }),
    ...(again === undefined ? {} : { testAgain: again }),
    ...(isTop || decision.verdict === "open-the-top-end" ? { topWork: topWorkOf(rows, deciding.main) } : {}),
  };
};

/** Rings, or parts of the top end, measured past what may stay in while they can be got at. */
const pastLimitOf = (rows: readonly Row[], done: readonly Job[]): Pick<DecisionInput, "pastLimit"> => {
  const has = (id: Row["row"]): boolean => rows.some(({ row }) => row === id);
  if (has("J3") && done.includes("headOff") && done.includes("bottomOpen")) return { pastLimit: "reRing" };
  return has("J7") && done.includes("headOff") ? { pastLimit: "topEnd" } : {};
};

/** Where the one odd reading alone stops a line from being drawn on, the years without it: what holds if it does not come again. */
const wearKnown = (
  deciding: Deciding,
  years: number,
  { oddTest }: Pick<DoubtsFound, "oddTest">,
): { readonly wear: WearFound; readonly without?: string } => {
  const wear = wearOf(deciding, years);
  const isAlone = oddTest?.kind === "dry" && oddTest.before === undefined;
  if (wear.unknown === undefined || !isAlone) return { wear };
  const { record } = deciding;
  const tests = record.tests.filter(({ id }) => id !== oddTest.test);
  const other = wearOf({ ...deciding, history: assessHistory({ ...record, tests }) }, years);
  return other.unknown === undefined ? { wear: other, without: oddTest.test } : { wear };
};

const noDoubts: DoubtsFound = { doubts: [] };

const rowsOf = (deciding: Deciding): readonly Row[] => {
  const leak = leakRows(deciding);
  return [
    ...crankingRows(deciding),
    ...leak,
    ...runningRows(deciding, leak),
    ...sightRows(deciding),
    ...measuredRows(deciding),
  ].toSorted((a, b) => (a.row < b.row ? -1 : a.row > b.row ? 1 : 0));
};

/** Work on one cylinder, too, asks for a test of them all before anything is decided. */
const speaking = (deciding: Deciding): DecisionAssessment["speaks"] => {
  const { main, record } = deciding;
  if (main === undefined) return "none";
  const isWorkedOn = workAfter(record, main.test) !== undefined;
  return stillSpeaks(deciding, main.test) && !isWorkedOn ? "today" : "too-old";
};

/** No test tells nothing, as a void one does. One that is too old, or from before the last work, leaves today in doubt as
 *  long as it can still be tested; with the head off the years are all there is. */
const trustOf = (
  { main }: Deciding,
  speaks: DecisionAssessment["speaks"],
  done: readonly Job[],
): DecisionInput["trust"] => {
  if (main === undefined || speaks === "none") return "void";
  if (main.trust.code === "void") return main.trust.voids === "all" ? "void" : "doubtful";
  return speaks === "too-old" && !done.includes("headOff") ? "doubtful" : main.trust.code;
};

/** A boat that is hard to reach has no other engine to come home with. */
const useOf = ({ engine: { use, remote } }: EngineRecord): DecisionInput["use"] => {
  if (use === "aircraft" || (use === "boat" && remote)) return "safety";
  return remote ? "remote" : "ordinary";
};

const noPoints = { top: 0, rings: 0, bore: 0, bottom: 0 } as const;

const foundRows = (rows: readonly Row[], { suspended }: Decision): readonly FoundRow[] =>
  rows.map(({ row, cylinder, text, from }) => {
    const { line, points, status, source } = ladder[row];
    return {
      row,
      line,
      ...(cylinder === undefined ? {} : { cylinder }),
      text,
      from,
      points: { ...noPoints, ...points },
      status,
      source,
      use: suspended.some(({ id }) => id === row) ? "set-aside" : "counted",
    };
  });

/** As noted, however long ago: nothing in the logbook tells that one was mended. */
const otherFaults = ({ record: { notes }, today }: Deciding): readonly OtherFault[] =>
  notes
    .filter(({ what, date }) => what === "other fault" && date <= today)
    .map(({ date, value, note }) => ({ date, text: [value, note].filter(Boolean).join(", ") }));

const cannotSee = (deciding: Deciding, { evenWear }: WearFound): readonly CannotSee[] => [
  ...(otherFaults(deciding).length > 0 ? (["the other fault"] as const) : []),
  "ring tension",
  ...unmeasuredParts(deciding),
  ...(evenWear === "cannot be seen" ? (["wear of all cylinders alike"] as const) : []),
  "sudden faults",
];
