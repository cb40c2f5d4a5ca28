// Everything a verdict rests on, worked out once.

import { weighed, type Weighed } from "../evidence/weighed.ts";
import type { DecisionInput } from "../input.ts";
import { comparisonOf, type Comparison } from "../money/comparison.ts";
import { expectedCosts, priceOfAct, type Costs } from "../money/expected.ts";
import { flipsWithoutPrices, type UnpricedFlip } from "../money/flips-without-prices.ts";
import { priceAgain, priceNow, priceOfRedoing } from "../money/jobs.ts";
import { keepFromAge, keepOf, type Keep } from "../money/keep.ts";
import { layupPlan, type LayupPlan } from "../money/layup.ts";
import { moneyCaseOf, sharesOf, yearsOf, type Look, type MoneyCase } from "../money/money-case.ts";
import { priceRatioBy, ratioView, ratioWhenKept, type RatioView } from "../money/without-prices.ts";
import { nextDate, type NextDate } from "../next/next-date.ts";
import { outlookOf, type Outlook } from "../wear/outlook.ts";
import type { Repair } from "../words.ts";
import { testWorth, type TestWorth } from "../worth/test-worth.ts";

export interface Grounds {
  readonly input: DecisionInput;
  readonly evidence: Weighed;
  readonly outlook?: Outlook;
  readonly years: number;
  readonly costs?: Costs;
  /** Of what is needed, or else of what is considered. */
  readonly comparison?: Comparison;
  /** The re-ring beside a top end that is due, with the engine open. */
  readonly beside?: Comparison;
  readonly ratio?: RatioView;
  readonly keep?: Keep;
  /** Kept for good, the age not known: from which on acting pays. */
  readonly keepFromAge?: number;
  readonly plan?: LayupPlan;
  readonly worth?: TestWorth;
  /** Without prices. */
  readonly flips: readonly UnpricedFlip[];
  /** Rings that were disturbed, or parts past their limit, go in new: nothing is left to compare, and this is what it costs
   *  today. */
  readonly due?: Due;
  readonly next: NextDate;
}

export interface Due {
  readonly act: "topEnd" | "reRing";
  /** Absent without prices. */
  readonly price?: number;
}

/** @param look - how far tipping points are looked for */
export const groundsOf = (input: DecisionInput, look: Look = "far"): Grounds => {
  const evidence = weighed(input);
  const { need } = evidence;
  const years = yearsOf(input);
  const outlook = outlookOf(input.wear, years);
  const due = dueOf(input, need);
  if (due !== undefined)
    return {
      input,
      evidence,
      years,
      ...(outlook === undefined ? {} : { outlook }),
      flips: [],
      due,
      next: nextDate(input, evidence.scores),
    };
  const money = moneyCaseOf(input, outlook, { places: need.places, look });
  const inMoney =
    money === undefined || outlook === undefined
      ? {}
      : comparedInMoney(input, money, { need: need.repair, outlook });
  const kept = keptForGood(input, money, { outlook, act: inMoney.beside?.act ?? inMoney.comparison?.act });
  const ratio = need.repair === undefined ? ratioOf(input, outlook, kept.keep) : undefined;
  const worth =
    need.repair === undefined && input.ownership.kind === "years"
      ? testWorth(input, outlook, { breakEven: inMoney.comparison?.breakEven, ratio, years })
      : undefined;
  const next = nextDate(input, evidence.scores);
  return {
    input,
    evidence,
    years,
    ...(outlook === undefined ? {} : { outlook }),
    ...inMoney,
    ...kept,
    ...(ratio === undefined ? {} : { ratio }),
    ...(worth === undefined ? {} : { worth }),
    flips: flipsWithoutPrices(input, outlook, { ratio, risk: next.risk, years }),
    next,
  };
};

/** Unless that is needed anyway, or more. A price hangs on no chance, so any will do. */
const dueOf = (input: DecisionInput, { repair, places }: Weighed["need"]): Due | undefined => {
  const act = input.ringsDue === undefined ? input.pastLimit : "reRing";
  if (act === undefined || repair === "reRing" || repair === "rebuild" || repair === act) return undefined;
  const any = outlookOf({ kind: "typed", probability: 0.5 }, yearsOf(input));
  const money = moneyCaseOf(input, any, { places });
  return {
    act,
    ...(money === undefined ? {} : { price: priceOfAct(money, act) }),
  };
};

const comparedInMoney = (
  input: DecisionInput,
  money: MoneyCase,
  { need, outlook }: { readonly need: Repair | undefined; readonly outlook: Outlook },
): Pick<Grounds, "costs" | "comparison" | "beside" | "plan"> => {
  const costs = expectedCosts(money);
  const act = need ?? consideredOf(input, costs);
  const comparison = comparisonOf(money, act, outlook);
  const open = input.done.length > 0;
  if (need === undefined)
    return { costs, comparison, ...(open || act === "rebuild" ? {} : { plan: layupPlan(money, act) }) };
  const asked = input.considered === undefined || input.considered === "reRing";
  return need === "topEnd" && open && asked
    ? { costs, comparison, beside: comparisonOf(money, "reRing", outlook) }
    : { costs, comparison };
};

/** What the owner thinks of; kept for good the renewal itself. Else in place the one that cures where need is likelier to
 *  arise (our judgement), out or open the cheaper.  @source handbook/decision.md 3 */
const consideredOf = (input: DecisionInput, costs: Costs): Repair => {
  const { considered, ownership, done } = input;
  if (considered !== undefined) return considered;
  if (ownership.kind === "for-good") return "reRing";
  const { top, rings } = sharesOf(input);
  const isRings = done.length === 0 ? rings >= top : costs.reRing <= costs.topEnd;
  return isRings ? "reRing" : "topEnd";
};

/** rho by the prices, or by the user's ratio. */
const keptForGood = (
  input: DecisionInput,
  money: MoneyCase | undefined,
  { outlook, act = "reRing" }: { readonly outlook: Outlook | undefined; readonly act: Repair | undefined },
): Pick<Grounds, "keep" | "keepFromAge"> => {
  const { ownership, interest = 0 } = input;
  if (ownership.kind === "years") return {};
  const ratio = money === undefined ? priceRatioBy(input) : priceRatioOf(money, act);
  const keep = keepOf(ownership, outlook?.wear, { ratio, interest });
  const from = keepFromAge(ownership, outlook?.wear, { ratio, interest });
  return {
    ...(keep === undefined ? {} : { keep }),
    ...(from === undefined ? {} : { keepFromAge: from }),
  };
};

const priceRatioOf = (money: MoneyCase, act: Repair): number => {
  const redo = priceOfRedoing(money, act);
  return (priceNow(money, act) + redo) / (priceAgain(money, act) + redo);
};

const ratioOf = (
  input: DecisionInput,
  outlook: Outlook | undefined,
  keep: Keep | undefined,
): RatioView | undefined => {
  if (input.prices !== undefined) return undefined;
  if (input.ownership.kind === "for-good")
    return keep === undefined ? undefined : ratioWhenKept(input, keep.used);
  return outlook === undefined ? undefined : ratioView(input, outlook.probability);
};
