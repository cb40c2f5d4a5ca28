// Why a decision says its word, and why a test is doubtful, in the few words that a list has room for.

import type { YardDecision, YardRow } from "@sealtrend/core/parts";
import { joined } from "../words.ts";

/** A doubtful test is told with a decision and without; not where all its doubt is in readings that are told to contradict
 *  each other. */
export const reasonTexts = ({ decision, test, low = [] }: YardRow): readonly string[] => {
  const tooOld =
    decision?.reason === "test-doubtful" && decision.tooOld !== undefined ? ageText(decision) : undefined;
  const isTorn = low.some(({ standing, repeats }) => standing === "suspect" && repeats === "contradict");
  const doubts = (test?.reasons ?? []).filter(({ code }) => !isTorn || !ofRepeats.includes(code));
  if (test?.trust !== "doubtful" || (isTorn && doubts.length === 0)) {
    const reason = tooOld ?? (decision === undefined ? undefined : decisionReason(decision));
    return reason === undefined ? [] : [reason];
  }
  const doubt = `test doubtful${becauseText({ reasons: doubts })}`;
  const other =
    decision === undefined || decision.reason === "test-doubtful" ? tooOld : decisionReason(decision);
  return other === undefined ? [doubt] : [doubt, other];
};

/** `: cranked slowly, engine cold`; empty where it is trusted. */
export const becauseText = ({ reasons = [] }: Pick<NonNullable<YardRow["test"]>, "reasons">): string => {
  const short = [...new Set(reasons.map(({ code }) => doubtWords[code]))];
  return short.length === 0 ? "" : `: ${short.join(", ")}`;
};

const decisionReason = ({ prove, reason }: YardDecision): string | undefined =>
  prove === undefined || prove.length === 0
    ? reasons[reason]
    : `low everywhere: prove ${joined(prove)} first`;

/** `last test that counts (2025-08) over a year old`, where a later one does not. */
const ageText = ({ tooOld = "over-a-year", counts }: YardDecision): string =>
  counts === undefined
    ? ages[tooOld]
    : ages[tooOld].replace("last test", `last test that counts (${counts.slice(0, 7)})`);

const ages: Readonly<Record<NonNullable<YardDecision["tooOld"]>, string>> = {
  "over-a-year": "last test over a year old",
  "before-work": "last test made before the last work",
  "run-in": "new rings or bores: run it in, then test it",
};

type DoubtCode = NonNullable<NonNullable<YardRow["test"]>["reasons"]>[number]["code"];

const ofRepeats: readonly DoubtCode[] = ["repeats-apart", "leak-repeats-apart"];

const doubtWords: Readonly<Record<DoubtCode, string>> = {
  "throttle-closed": "throttle closed",
  "release-active": "compression release at work",
  "wrong-stroke": "leak-down on the wrong stroke",
  "all-pegged": "needle pegged",
  pegged: "needle pegged",
  "set-aside": "set aside",
  slip: "a slip of a digit?",
  "beyond-engine": "more than an engine makes",
  "below-engine": "less than an engine starts with",
  "dials-disagree": "the tester's dials disagree",
  "doubtful-cell": "readings marked doubtful",
  "too-slow": "cranked far too slowly",
  slow: "cranked slowly",
  cold: "engine cold",
  "strokes-differ": "strokes differ",
  seller: "a seller's sheet",
  "repeats-apart": "its repeats lie apart",
  "leak-repeats-apart": "its leak-down takes lie apart",
  "first-above-last": "first stroke above the last",
  "too-much-oil": "too much oil",
};

/** Those that say more than the readings do. */
const reasons: Readonly<Record<YardDecision["reason"], string | undefined>> = {
  "need-established": "the evidence agrees",
  "cheaper-now-than-later": "cheaper now than later",
  level: "now or later cost about the same",
  "nothing-developing": undefined,
  "source-unknown": "find the source first",
  "scored-bore": "a bore is scored",
  "test-void": undefined,
  "test-doubtful": "its last test does not carry a decision",
  "one-odd-test": "one reading out of step",
  "not-itself": "tested when it was not itself",
  "low-everywhere": "low everywhere",
  "one-method-only": "low everywhere: a leak-down first",
  "one-line-only": "one kind of evidence alone",
  "instruments-disagree": "the instruments disagree",
  "read-again": "to be read again",
  "leak-unplaced": "it leaks, and nobody heard where",
  "low-unexplained": "low, and nothing tells why",
  "rings-disturbed": "its rings were disturbed",
  "past-its-limit": "measured past its limit",
  "limit-too-near": "its limit is too near to watch",
  "outside-the-chance": "what was found outside the readings",
  "test-worth-making": "a test is worth its price",
  "safety-step": "lives hang on it",
  "wear-developing": "wear developing",
  "history-alarm": "an alarm over the years",
  "limit-in-sight": "its limit is in sight",
  "watching-cheaper": "watching is cheaper than waiting",
  "chance-above-risk": "its chance of need is above the risk taken",
  "work-in-sight": "work is in sight",
};
