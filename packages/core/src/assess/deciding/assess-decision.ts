// From the records of one engine to a decision: what was found, what nobody looked at, and what it comes to.

import { type Decision, type DecisionInput, type Job, decide, ladder } from "../../decision/index.ts";
import type { EngineRecord } from "../../record/index.ts";
import { doneOf, offeredTest } from "./access.ts";
import type { DecisionChoices } from "./choices.ts";
import type { CannotSee, Conflict, DecisionAssessment, FoundRow, OtherFault } from "./decision-assessment.ts";
import { type Deciding, gather, stillSpeaks } from "./deciding.ts";
import { doubtsOf } from "./doubts.ts";
import { measureNow } from "./measure-now.ts";
import { horizonOf, moneyOf, ownershipOf } from "./money.ts";
import { hoursPerYear, nextTestOf } from "./next-test.ts";
import { notSeenOf } from "./not-seen.ts";
import type { Row } from "./row.ts";
import { crankingRows } from "./rows-cranking.ts";
import { leakRows } from "./rows-leak.ts";
import { runningRows } from "./rows-running.ts";
import { sightRows } from "./rows-sight.ts";
import { sharesOf } from "./shares.ts";
import { type WearFound, wearOf } from "./wear.ts";

/** The whole way from the records to the decision. Nothing that nobody looked at becomes a row; every line of evidence is
 *  either a row or named as not seen.
 *  @throws RangeError where the test asked for is not of the record
 *  @source handbook/decision.md */
export const assessDecision = (record: EngineRecord, choices: DecisionChoices): DecisionAssessment => {
  const { today, opened } = choices;
  const deciding = gather(record, choices);
  const done = doneOf(opened, choices.engineOut === true ? "out" : "in");
  const horizon = horizonOf(record, choices);
  const money = moneyOf(record, choices);
  const wear = wearOf(deciding, horizon.years);
  const shares = sharesOf(deciding.main);
  const rows = rowsOf(deciding);
  const hours = hoursPerYear(record);
  const speaks = speaking(deciding);
  const input: DecisionInput = {
    rows: rows.map(({ row, text, restsOn, cylinder }) => ({
      id: row,
      text,
      restsOn,
      ...(cylinder === undefined ? {} : { cylinder }),
    })),
    trust: trustOf(deciding, speaks, done),
    doubts: speaks === "today" ? doubtsOf(deciding) : [],
    wear: wear.wear,
    shares: shares.shares,
    done,
    ...(money.prices === undefined ? {} : { prices: money.prices }),
    ...(money.accessRatio === undefined ? {} : { accessRatio: money.accessRatio }),
    chances: money.chances,
    ownership: ownershipOf(record, horizon, today),
    use: useOf(record),
    // open to the rings, they are the question; else the cheaper of top end and re-ring
    ...(done.includes("bottomOpen") ? { considered: "reRing" as const } : {}),
    test: offeredTest(done, deciding.main, money.prices?.test),
    ...(hours === undefined ? {} : { hoursPerYear: hours }),
  };
  const decision = decide(input);
  return {
    ...(deciding.main === undefined ? {} : { test: deciding.main }),
    speaks,
    history: deciding.history,
    today,
    decision,
    input,
    ...(opened === undefined ? {} : { opened }),
    done,
    horizon,
    prices: money.known,
    evidence: foundRows(rows, decision),
    notSeen: notSeenOf(deciding, rows),
    measureNow: measureNow(opened, record.engine.porting),
    wear: wear.channels,
    ...(wear.unknown === undefined ? {} : { chanceUnknown: wear.unknown }),
    sharesFrom: shares.from,
    conflicts: conflictsOf(decision),
    otherFaults: otherFaults(deciding),
    cannotSee: cannotSee(deciding, wear),
    nextTest: nextTestOf(record, decision.next, { today, last: deciding.main?.test.date }),
  };
};

const rowsOf = (deciding: Deciding): readonly Row[] => {
  const leak = leakRows(deciding);
  return [
    ...crankingRows(deciding),
    ...leak,
    ...runningRows(deciding, leak),
    ...sightRows(deciding),
  ].toSorted((a, b) => (a.row < b.row ? -1 : a.row > b.row ? 1 : 0));
};

const speaking = (deciding: Deciding): DecisionAssessment["speaks"] => {
  if (deciding.main === undefined) return "none";
  return stillSpeaks(deciding, deciding.main.test) ? "today" : "too-old";
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

const conflictsOf = ({ guards }: Decision): readonly Conflict[] =>
  guards.flatMap((guard): Conflict[] => {
    if (guard.code !== "instruments-disagree") return [];
    return guard.leakDown === "leaks"
      ? [{ code: "leak-down-leaks", text: "the leak-down finds a leak, the cranking readings are level" }]
      : [{ code: "leak-down-healthy", text: "cranking reads low, the leak-down is healthy" }];
  });

/** As noted, however long ago: nothing in the logbook tells that one was mended. */
const otherFaults = ({ record: { notes }, today }: Deciding): readonly OtherFault[] =>
  notes
    .filter(({ what, date }) => what === "other fault" && date <= today)
    .map(({ date, value, note }) => ({ date, text: [value, note].filter(Boolean).join(", ") }));

const cannotSee = (deciding: Deciding, { evenWear }: WearFound): readonly CannotSee[] => [
  ...(otherFaults(deciding).length > 0 ? (["the other fault"] as const) : []),
  "ring tension",
  "ring grooves",
  "bearings",
  ...(evenWear === "cannot be seen" ? (["wear of all cylinders alike"] as const) : []),
  "sudden faults",
];
