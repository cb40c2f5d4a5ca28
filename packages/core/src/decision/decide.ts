// The decision: is work needed, and if not, is this a cheap moment? Evidence and money are kept apart.

import { checkInput } from "./check-input.ts";
import type { Decision } from "./decision.ts";
import type { DecisionInput } from "./input.ts";
import { layupNamed } from "./verdict/by-money.ts";
import { groundsOf, type Grounds } from "./verdict/grounds.ts";
import { guardsOf, guardsOfRepair } from "./verdict/guards.ts";
import { ifNotTested } from "./verdict/if-not-tested.ts";
import { nextStepOf, sayingOf, urgencyOf } from "./verdict/saying.ts";
import { wordOf, type Word } from "./verdict/word.ts";
import { verdictOf, type Act } from "./words.ts";
import type { Look } from "./money/money-case.ts";
import type { Outlook } from "./wear/outlook.ts";
import { accessOf } from "./worth/possible-tests.ts";

const acts: readonly Act[] = ["leave", "watch", "topEnd", "reRing", "rebuild"];

/** One pure function of rows, history line, prices, access, horizon and use. Money never makes work needed, and never
 *  chooses a rebuild.
 *  @param look - how far tipping points are looked for: no further than the margin asks for, or as far as they are told of
 *  @throws RangeError on input that no caller should make (check-input.ts)
 *  @source handbook/decision.md; all points, thresholds and starting values are judgement */
export const decide = (input: DecisionInput, look: Look = "far"): Decision => {
  checkInput(input);
  const grounds = groundsOf(input, look);
  const { evidence, years, next } = grounds;
  const word = wordOf(grounds);
  const { verdict, basis, reasons } = word;
  const guards = [
    ...guardsOf(grounds),
    ...(word.repair === undefined ? [] : guardsOfRepair(word.repair, grounds)),
  ];
  const { repair: need } = evidence.need;
  const urgency = urgencyOf(grounds, word);
  const otherwise = ifNotTested(grounds, word, urgency);
  return {
    verdict,
    basis,
    reasons,
    saying: sayingOf(grounds, word),
    guards,
    scores: evidence.scores,
    counted: evidence.counted,
    suspended: evidence.suspended,
    access: accessOf(input.done),
    years,
    options: optionsOf(grounds),
    next: { ...next, step: nextStepOf(word, guards, grounds) },
    missing: missingOf(grounds),
    licensed: input.use === "safety",
    unpricedFlips: flipsOf(grounds, word),
    ...(otherwise === undefined ? {} : { ifNotTested: otherwise }),
    ...marginOf(word, input),
    ...(urgency === undefined ? {} : { urgency }),
    ...(need === undefined ? {} : { need }),
    ...reckoned(grounds),
  };
};

/** No work now is never clear while a figure that could ask for work has not told yet. */
const marginOf = (
  { margin, basis }: Word,
  { tooClose }: Pick<DecisionInput, "tooClose">,
): Pick<Decision, "margin"> => {
  if (margin === undefined) return {};
  return { margin: tooClose === "yes" && margin === "clear" && basis !== "needed" ? "holds" : margin };
};

/** What could be reckoned; the rest is absent. */
const reckoned = (
  grounds: Grounds,
): Pick<
  Decision,
  | "chance"
  | "comparison"
  | "beside"
  | "ratio"
  | "due"
  | "keep"
  | "keepFromAge"
  | "plan"
  | "planBy"
  | "testWorth"
> => {
  const { outlook, comparison, beside, ratio, due, keep, keepFromAge, plan, worth } = grounds;
  const named = layupNamed(grounds);
  return {
    ...(outlook === undefined ? {} : { chance: chanceOf(outlook) }),
    ...(comparison === undefined ? {} : { comparison }),
    ...(beside === undefined ? {} : { beside }),
    ...(ratio === undefined ? {} : { ratio }),
    ...(due === undefined ? {} : { due }),
    ...(keep === undefined ? {} : { keep }),
    ...(keepFromAge === undefined ? {} : { keepFromAge }),
    ...(plan === undefined ? {} : { plan }),
    ...(named === undefined ? {} : { planBy: named.planBy }),
    ...(worth === undefined ? {} : { testWorth: worth }),
  };
};

/** Less likely than 1 in 100 no cylinder is named as the first to pass: nothing tells it from the others (ours). */
const leastNamed = 0.01;

const chanceOf = ({ probability, label, atMost }: Outlook): NonNullable<Decision["chance"]> => ({
  probability,
  atMost,
  ...(label === undefined || probability < leastNamed ? {} : { label }),
});

/** Watching turns only where the chance alone speaks for it or nothing does. */
const flipsOf = ({ flips }: Grounds, { verdict, reasons }: Word): Decision["unpricedFlips"] => {
  const alone = reasons.length === 1 && ["nothing-developing", "chance-above-risk"].includes(reasons[0]);
  return flips.filter(({ turns }) => verdict !== "test-again" && (turns === "acting" || alone));
};

const optionsOf = ({ costs }: Grounds): Decision["options"] =>
  acts.map((act) => ({
    code: verdictOf[act],
    ...(costs === undefined ? {} : { expectedCost: costs[act] }),
  }));

const missingOf = ({ input, outlook, keep }: Grounds): Decision["missing"] => {
  const { ownership, prices } = input;
  const forGood = ownership.kind === "for-good" && keep === undefined;
  return [
    ...(prices === undefined ? (["prices"] as const) : []),
    ...(outlook === undefined ? (["chance"] as const) : []),
    ...(forGood ? ([ownership.age === undefined ? "age" : "years-left"] as const) : []),
  ];
};
