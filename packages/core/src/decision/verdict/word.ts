// The word, in the order of the handbook: gate, need, no need, money, test again, safety.

import { placesIn } from "../evidence/scores.ts";
import { linesForRebuild } from "../evidence/need.ts";
import { aboutReadings } from "../evidence/weighed.ts";
import type { DecisionInput, Doubt } from "../input.ts";
import { verdictOf, type Margin, type Repair, type Verdict } from "../words.ts";
import { momentOf, type Moment } from "./by-money.ts";
import type { Due, Grounds } from "./grounds.ts";
import { accessOf, canBeTested, possibleTests } from "../worth/possible-tests.ts";
import { disagreement } from "./disagreement.ts";
import { isRenewedScored, isSourceAsked } from "./stops.ts";
import { unseenPlaces } from "./unseen.ts";
import { watchReasons, type WatchReason } from "./idle-word.ts";

export type Basis = "needed" | "opportunity" | "nothing-shown";

/** Why a decision says its word and not a milder one. */
export type Reason =
  | "need-established"
  | "cheaper-now-than-later"
  | "level"
  | "nothing-developing"
  | "source-unknown"
  | "scored-bore"
  | "test-void"
  | "test-doubtful"
  | Doubt
  | "one-line-only"
  | "instruments-disagree"
  | "rings-disturbed"
  | "past-its-limit"
  | "limit-too-near"
  | "outside-the-chance"
  | "test-worth-making"
  | "safety-step"
  | NonNullable<DecisionInput["unsettled"]>
  | WatchReason;

export interface Word {
  readonly verdict: Verdict;
  readonly basis: Basis;
  /** Why this word and not a milder one; the deciding one first. */
  readonly reasons: readonly [Reason, ...Reason[]];
  readonly margin?: Margin;
  readonly repair?: Repair;
}

/** @source handbook/decision.md 7 */
export const wordOf = (grounds: Grounds): Word => {
  const { input, evidence } = grounds;
  const isAsked = isSourceAsked(grounds);
  const isTestable = canBeTested(input.done);
  if (input.trust === "void" && isTestable)
    return testAgain(isAsked ? ["source-unknown", "test-void"] : ["test-void"]);
  const needed = byNeed(grounds);
  if (needed !== undefined) return needed;
  if (isAsked) return testAgain(["source-unknown"]);
  const { due } = grounds;
  if (due !== undefined) return isRenewedScored(grounds) ? testAgain(["scored-bore"]) : goesInNew(due, input);
  if (evidence.inDoubt === "yes") {
    const [first, ...more] = [
      ...aboutReadings(input.doubts),
      ...(input.trust === "trusted" ? [] : [`test-${input.trust}` as const]),
    ];
    return safetyStep(grounds, testedFirst(input, [first ?? "test-doubtful", ...more]));
  }
  return safetyStep(grounds, withoutNeed(grounds));
};

const testAgain = (reasons: Word["reasons"]): Word => ({
  verdict: "test-again",
  basis: "nothing-shown",
  reasons,
});

/** Open, what cannot be tested is not asked for: it is measured, closed and watched, and tested then (our judgement). */
const testedFirst = ({ done }: Pick<DecisionInput, "done">, reasons: Word["reasons"]): Word =>
  canBeTested(done) ? testAgain(reasons) : watchIt(reasons);

const watchIt = (reasons: Word["reasons"]): Word => ({
  verdict: "watch-it",
  basis: "nothing-shown",
  reasons,
});

/** It rests on no reading of sealing: neither a doubt nor a price holds it.
 *  @source handbook/teardown.md 5 (TM 10-3930-647-14&P), 0 (what may stay in) */
const goesInNew = (
  { act }: Due,
  { ringsDue }: Pick<DecisionInput, "ringsDue">,
  ...more: readonly Reason[]
): Word => ({
  verdict: verdictOf[act],
  basis: "opportunity",
  reasons: [ringsDue === undefined ? "past-its-limit" : "rings-disturbed", ...more],
  repair: act,
});

/** With the top end due and the engine open, the re-ring beside it where that pays and is not close. */
const byNeed = (grounds: Grounds): Word | undefined => {
  const { evidence, comparison, beside, keep, input } = grounds;
  const { repair } = evidence.need;
  if (repair === undefined) return undefined;
  if (repair === "rebuild" && linesForRebuild(evidence.needScores, evidence.needRows) === "one-only")
    return testAgain(["one-line-only"]);
  if (grounds.due !== undefined) return goesInNew(grounds.due, input, "need-established");
  const forGood = input.ownership.kind === "for-good";
  const pays = forGood
    ? keep?.priceRatio !== undefined && keep.priceRatio < keep.used
    : (beside?.difference ?? 0) > 0;
  const margin = forGood ? keep?.margin : beside?.margin;
  if (beside !== undefined && pays && margin !== undefined && margin !== "close")
    return {
      verdict: "re-ring",
      basis: "opportunity",
      reasons: ["cheaper-now-than-later", "need-established"],
      margin,
      repair: "reRing",
    };
  return {
    verdict: verdictOf[repair],
    basis: "needed",
    reasons: ["need-established"],
    repair,
    ...(comparison === undefined ? {} : { margin: comparison.margin }),
  };
};

/** Open, with wear developing that the chance does not cover, it is measured before anything else is decided; a re-ring waits
 *  for the measurements anyway. Two instruments that contradict each other are never left (G7): a cylinder that cranks low is tested
 *  again, a leak that cranking does not show is watched, as in handbook/decision.md 9, example 10. Nor is left what is to be read
 *  again, or reads low for no known reason; far past its limit that is not watched either (our judgement). */
const withoutNeed = (grounds: Grounds): Word => {
  const { input, worth } = grounds;
  const moment = momentOf(grounds);
  const reRings = moment.kind === "now" && moment.act === "reRing";
  if (isOneMethod(input)) return testAgain(["one-method-only"]);
  if (unseenPlaces(grounds).length > 0 && !reRings) return testAgain(["outside-the-chance"]);
  if (worth?.asked === "yes") return { ...testAgain(["test-worth-making"]), ...marginOf(grounds, moment) };
  const settled = settledWord(grounds);
  const isFarPast = settled.verdict === "watch-it" && input.farPast !== undefined;
  if (settled.verdict !== "leave-it" && !isFarPast) return settled;
  const torn = disagreement(grounds.evidence.counted);
  if (torn === undefined)
    return input.unsettled === undefined ? settled : testedFirst(input, [input.unsettled]);
  return torn === "healthy"
    ? testedFirst(input, ["instruments-disagree"])
    : watchIt(["instruments-disagree"]);
};

const marginOf = (grounds: Grounds, { margin }: Moment): Pick<Word, "margin"> => {
  const firm = margin === "clear" && unseenPlaces(grounds).length > 0 ? "holds" : margin;
  return firm === undefined ? {} : { margin: firm };
};

/** The word where no test is asked for by what it would tell. Too near a limit to be watched, it is tested all the same; where
 *  it is open and cannot be, it is measured, closed and tested then. */
export const settledWord = (grounds: Grounds): Word => {
  const { input, next } = grounds;
  const moment = momentOf(grounds);
  const margin = marginOf(grounds, moment);
  if (moment.kind === "now")
    return {
      verdict: verdictOf[moment.act],
      basis: "opportunity",
      reasons: ["cheaper-now-than-later"],
      repair: moment.act,
      ...margin,
    };
  const watching = [
    ...watchReasons(grounds),
    ...(moment.kind === "later" ? (["work-in-sight"] as const) : []),
  ];
  const [first, ...more] = watching;
  const level = moment.kind === "level" ? (["level"] as const) : [];
  if (first === undefined)
    return {
      verdict: "leave-it",
      basis: "nothing-shown",
      reasons: ["nothing-developing", ...level],
      ...margin,
    };
  if (next.floor === "kept") return { ...watchIt([first, ...more, ...level]), ...margin };
  return canBeTested(input.done)
    ? { ...testAgain(["limit-too-near"]), ...margin }
    : { ...watchIt(["limit-too-near", ...watching, ...level]), ...margin };
};

/** Another method is asked for only where it can be made. */
const isOneMethod = ({ doubts = [], done }: DecisionInput): boolean =>
  doubts.includes("one-method-only") && possibleTests[accessOf(done)].includes("leak-down");

/** One step to the careful side; it moves inspection, not metal, and no price takes it back: what is developing is looked at
 *  and tested whatever else the money asks for.  @source handbook/decision.md 2, G8 */
const safetyStep = ({ input, evidence }: Grounds, word: Word): Word => {
  if (input.use !== "safety") return word;
  const reasons: Word["reasons"] = ["safety-step", ...word.reasons];
  if (word.verdict === "leave-it") return { ...word, verdict: "watch-it", reasons };
  const isDeveloping = placesIn(evidence.scores, "developing").length > 0;
  const isWork = word.repair !== undefined && input.done.length > 0;
  if (!isDeveloping || isWork) return word;
  return { ...testAgain(reasons), ...(word.margin === undefined ? {} : { margin: word.margin }) };
};
