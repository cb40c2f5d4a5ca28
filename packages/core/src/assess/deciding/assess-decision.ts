// From the records of one engine to a decision: what was found, what nobody looked at, and what it comes to.

import { decide, turnsOf } from "../../decision/index.ts";
import type { EngineRecord } from "../../record/index.ts";
import { doneOf } from "./access.ts";
import { cannotSeeOf, otherFaultsOf } from "./cannot-see.ts";
import type { DecisionChoices } from "./choices.ts";
import { conflictsOf } from "./conflicts.ts";
import { damageOf } from "./damage.ts";
import { type Deciding, gather } from "./deciding.ts";
import type { DecisionAssessment } from "./decision-assessment.ts";
import { inputOf } from "./decision-input.ts";
import { type DoubtsFound, doubtsOf } from "./doubts.ts";
import { measureNow } from "./measure-now.ts";
import { horizonOf, moneyOf } from "./money.ts";
import { nextActionOf } from "./next-action.ts";
import { nextByOf } from "./next-by.ts";
import { lastOf, nextTestOf, runInTestOf } from "./next-test.ts";
import { notSeenOf } from "./not-seen.ts";
import { reachOf } from "./reach.ts";
import { ringsDueOf } from "./rings-due.ts";
import { rowsFound, usedRows } from "./rows-found.ts";
import { sharesOf } from "./shares.ts";
import { speaksOf } from "./speaks.ts";
import { testAgainOf } from "./test-again.ts";
import { topWorkOf } from "./top-work.ts";
import { unsettledOf } from "./unsettled.ts";
import { wearKnown } from "./wear-known.ts";

/** The whole way from the records to the decision. Nothing that nobody looked at becomes a row; every line of evidence is
 *  either a row or named as not seen.
 *  @param deciding - what it is made from, where another question was asked of the same test, day and sheets before
 *  @throws RangeError where `today` is no day, the test asked for is not of the record, or a price or chance is none
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
  const { rows, unplaced } = rowsFound(deciding);
  const speaks = speaksOf(deciding);
  const { doubts, ...found } = speaks === "today" ? doubtsOf(deciding, rows) : noDoubts;
  const { wear, without } = wearKnown(deciding, horizon.years, found);
  const rings = ringsDueOf(deciding, opened);
  const damage = damageOf(deciding).filter(
    ({ withNewShells }) => withNewShells === "open" || rings === undefined,
  );
  const { measured } = deciding;
  const unsettled = unsettledOf(deciding, { rows, unplaced });
  const input = inputOf({
    deciding,
    choices,
    rows,
    speaks,
    doubts,
    wear,
    shares,
    done,
    money,
    horizon,
    rings,
    damage,
    unsettled,
  });
  const decision = decide(input, flips === "told" ? "far" : "ends");
  const measuring = measureNow(opened, {
    engine: record.engine,
    cylinder: decision.chance?.label ?? found.oddTest?.cylinder,
    measured,
  });
  const isAskedNow = input.unsettled === "read-again" || (unsettled.dead === "some" && speaks === "today");
  const { main, notCounted } = deciding;
  const last = lastOf(deciding, main?.test);
  const due = isAskedNow
    ? { date: today }
    : {
        ...nextTestOf(record, decision.next, { today, last }),
        ...(notCounted === undefined || main === undefined || last !== main.test.date
          ? {}
          : { of: main.test.id }),
      };
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
  const otherFaults = otherFaultsOf(deciding);
  const nextBy = nextByOf(decision, done, { due: isDue, dead: unsettled.dead, step: action?.code });
  return {
    ...(main === undefined ? {} : { test: main }),
    ...(notCounted === undefined ? {} : { notCounted }),
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
    evidence: usedRows(rows, decision),
    notSeen: notSeenOf(deciding, rows),
    measureNow: measuring,
    wear: wear.channels,
    ...(wear.unknown === undefined ? {} : { chanceUnknown: wear.unknown }),
    ...(without === undefined ? {} : { chanceWithout: without }),
    ...(reach === undefined ? {} : { reach }),
    sharesFrom: shares.from,
    conflicts: conflictsOf(decision, deciding),
    otherFaults,
    damage: damage.map(({ found: text }) => text),
    cannotSee: cannotSeeOf(deciding, otherFaults, wear),
    nextTest:
      runInTestOf(deciding, input.hoursPerYear, decision.next.cap) ??
      (decision.verdict === "test-again" ? { date: today } : due),
    nextBy,
    ...(action === undefined ? {} : { nextAction: action }),
    ...(again === undefined ? {} : { testAgain: again }),
    ...(isTop || decision.verdict === "open-the-top-end" ? { topWork: topWorkOf(rows, deciding.main) } : {}),
  };
};

const noDoubts: DoubtsFound = { doubts: [] };
