// The JSON of `decide`, sealtrend/decide@1. Money in the user's own unit, chances 0 to 1, years; limits in ln.

import {
  type Comparison,
  type DecisionAssessment,
  type FoundRow,
  type MeasureNow,
  type PressureUnit,
  type Swing,
  type Turn,
  type WearChannel,
  fromSi,
  judgedOf,
  ladder,
} from "@sealtrend/core/parts";
import { flipText, flipsOf } from "../render/decide/decide-flips.ts";
import { guardText, guardTexts } from "../render/decide/decide-guards.ts";
import { limitDocument } from "../render/decide/decide-limit.ts";
import { measureMinutes } from "../render/decide/decide-measure.ts";
import { headline } from "../render/decide/decide-headline.ts";
import { reasonText } from "../render/decide/decide-reason.ts";

/** What is undefined is left out when the document is written. @param forGood - the decision if it were kept for good */
export const decideDocument = (
  assessment: DecisionAssessment,
  { unit, forGood }: { readonly unit: PressureUnit; readonly forGood?: DecisionAssessment },
) => {
  const { decision, horizon, history, test, prices, input } = assessment;
  const { scores, chance, comparison, keep, testWorth, ratio } = decision;
  return {
    schema: "sealtrend/decide@1",
    engine: { id: history.record.engine.id, name: history.record.engine.name },
    test: test === undefined ? undefined : { id: test.test.id, date: test.test.date, trust: test.trust.code },
    decision: {
      code: decision.verdict,
      text: headline(assessment),
      why: plain(reasonText(assessment, unit)),
    },
    basis: decision.basis,
    reasons: decision.reasons,
    margin: decision.margin,
    urgency: decision.urgency,
    access: decision.access,
    opened: assessment.opened,
    speaks: assessment.speaks,
    notCounted: assessment.notCounted,
    done: assessment.done,
    horizon_years: horizon.years,
    horizon: { kind: horizon.kind, from: horizon.from },
    scores: {
      top: scores.top.score,
      rings: scores.rings.score,
      bore: scores.bore.score,
      bottom: scores.bottom.score,
    },
    states: {
      top: scores.top.state,
      rings: scores.rings.state,
      bore: scores.bore.state,
      bottom: scores.bottom.state,
    },
    evidence: assessment.evidence.map(rowDocument),
    notSeen: assessment.notSeen,
    cannotSee: assessment.cannotSee,
    otherFaults: assessment.otherFaults,
    conflicts: assessment.conflicts,
    guards: decision.guards.map((guard) => ({ ...guard, text: guardText(guard, assessment) })),
    said: guardTexts(assessment),
    probability: chance?.probability,
    probabilityAtMost: chance?.atMost,
    probabilityOf: chance?.label,
    probabilityUnknown: assessment.chanceUnknown,
    wear: assessment.wear.map(channelDocument),
    shares: judgedOf(input).shares,
    sharesFrom: assessment.sharesFrom,
    breakEven: comparison?.breakEven,
    flipRatio: ratio?.flipRatio,
    ratio,
    currency: prices.currency,
    prices: { known: prices.known, missing: prices.missing, given: input.prices },
    judged: judgedOf(input),
    options: decision.options,
    comparison: comparisonDocument(comparison, assessment),
    beside: comparisonDocument(decision.beside, assessment),
    flips: flipsOf(assessment).map((flip) => ({
      ...flip,
      ...(flip.unit === "ln" ? limitDocument(assessment, flip.at, flip.value ?? flip.at) : {}),
      text: plain(flipText(flip, assessment, unit)),
    })),
    turns: assessment.turns.map((turn) => turnDocument(turn, assessment)),
    keep,
    keepFromAge: decision.keepFromAge,
    due: decision.due,
    ringsDue: assessment.ringsDue,
    oddTest: assessment.oddTest,
    unplacedLeaks: assessment.unplacedLeaks,
    notItself: assessment.notItself,
    lowEverywhere: assessment.lowEverywhere,
    testAgain: assessment.testAgain,
    topWork: assessment.topWork,
    reach: assessment.reach,
    chanceWithout: assessment.chanceWithout,
    forGood:
      forGood === undefined
        ? undefined
        : {
            code: forGood.decision.verdict,
            basis: forGood.decision.basis,
            margin: forGood.decision.margin,
            keep: forGood.decision.keep,
          },
    testWorth:
      testWorth === undefined
        ? undefined
        : {
            rho2: testWorth.share,
            evsi: testWorth.evsi,
            change: testWorth.change,
            evpi: testWorth.evpi,
            net: testWorth.net,
            what: testWorth.what,
            possible: testWorth.possible,
            asked: testWorth.asked,
            cost: input.test?.cost,
          },
    planBy: decision.planBy,
    plan: decision.plan,
    measureNow: assessment.measureNow.map(measureDocument),
    measureMinutes: measureMinutes(assessment),
    next: nextDocument(assessment),
    licensed: decision.licensed,
    missing: decision.missing,
  };
};

/** With its condition. */
const rowDocument = (found: FoundRow) => ({ ...found, when: ladder[found.row].when });

/** A text with ordinary spaces. */
const plain = (text: string): string => text.replaceAll("\u00a0", " ");

/** Limits in mm. */
const measureDocument = ({ limits, ...measure }: MeasureNow) => ({
  ...measure,
  limits: limits.map(({ low, high, ...limit }) => ({
    ...limit,
    ...(low === undefined ? {} : { low_mm: fromSi(low, "mm") }),
    ...(high === undefined ? {} : { high_mm: fromSi(high, "mm") }),
  })),
});

const nextDocument = ({ decision, nextTest, nextBy, nextAction }: DecisionAssessment) => {
  const { years, hours, why, riskYears, risk, cap, usualCap, tellsAfter, sharpens, floor, step } =
    decision.next;
  return {
    by: nextTest.date,
    when: nextBy,
    action: nextAction,
    since: nextTest.since,
    of: nextTest.of,
    meter: nextTest.meter,
    why,
    step,
    in_years: years,
    hours,
    risk,
    risk_years: riskYears,
    interval_years: cap,
    usualInterval_years: usualCap,
    tellsAfter_years: tellsAfter,
    sharpens,
    floor,
  };
};

/** `difference` is waiting less acting; flips are listed above in words. */
const comparisonDocument = (comparison: Comparison | undefined, assessment: DecisionAssessment) =>
  comparison === undefined
    ? undefined
    : {
        act: comparison.act,
        idle: comparison.idle,
        difference: comparison.difference,
        price: comparison.price,
        margin: comparison.margin,
        edge: comparison.edge,
        breakEven: comparison.breakEven,
        tornado: comparison.swings.map((swing) => swingDocument(swing, assessment)),
      };

const swingDocument = ({ input, value, low, high, flip }: Swing, assessment: DecisionAssessment) => {
  const placed = <Place extends { readonly at: number }>(place: Place) =>
    input === "limit" ? { ...place, ...limitDocument(assessment, place.at, value) } : place;
  return {
    input: input === "years" ? "horizon" : input,
    value,
    low: placed(low),
    high: placed(high),
    flip: flip === undefined ? undefined : placed(flip),
  };
};

const turnDocument = ({ verdict, input, ...turn }: Turn, assessment: DecisionAssessment) => ({
  ...turn,
  input: input === "years" ? "horizon" : input,
  code: verdict,
  ...(input === "limit" ? limitDocument(assessment, turn.at, turn.value) : {}),
});

/** The limit in the unit of its kind. */
const channelDocument = ({ limit, ...channel }: WearChannel) => ({
  ...channel,
  ...(channel.against === "maker-minimum" ? { limit_kPa: fromSi(limit, "kPa") } : { limit_ratio: limit }),
});
