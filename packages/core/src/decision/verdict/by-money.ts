// Nothing is needed: is this a cheap moment all the same?

import type { LayupPlan } from "../money/layup.ts";
import type { Margin, Repair } from "../words.ts";
import type { Grounds } from "./grounds.ts";

export type Moment =
  | { readonly kind: "now"; readonly act: Repair; readonly margin?: Margin }
  /** In place: acting pays, but not yet or not on this evidence. */
  | { readonly kind: "later"; readonly act: Repair; readonly margin?: Margin }
  /** The two ways are level. */
  | { readonly kind: "level"; readonly act: Repair; readonly margin: "close" }
  | { readonly kind: "no"; readonly margin?: Margin };

/** Open: what pays, unless it is close. In place: only at once (planBy 0), not close, and with wear of that place developing
 *  on more than cranking. A rebuild is never chosen by money.  @source handbook/decision.md 7, step 4 */
export const momentOf = (grounds: Grounds): Moment => {
  const found = payingOf(grounds);
  if (found === undefined || found.act === "rebuild")
    return { kind: "no", ...(found?.margin === undefined ? {} : { margin: found.margin }) };
  const { act, pays, margin } = found;
  if (grounds.input.done.length > 0) {
    if (margin === "close") return { kind: "level", act, margin };
    return pays === "yes" ? { kind: "now", act, margin } : { kind: "no", margin };
  }
  const { plan, years } = grounds;
  const planned = plan !== undefined && plan.best < years && plan.planBy < years;
  if (pays === "no" && !planned) return { kind: "no", margin };
  const atOnce = pays === "yes" && plan?.planBy === 0 && margin !== "close" && developing(grounds, act);
  return { kind: atOnce ? "now" : "later", act, margin };
};

/** The layup to name: none where waiting to the end of the horizon is as cheap. */
export const layupNamed = ({ plan, years }: Grounds): LayupPlan | undefined =>
  plan !== undefined && plan.planBy < years ? plan : undefined;

interface Paying {
  readonly act: Repair;
  readonly pays: "yes" | "no";
  readonly margin: Margin;
}

/** Kept for good by the share of life used up, else by expected cost, without prices by the user's own ratio. */
const payingOf = (grounds: Grounds): Paying | undefined => {
  const { comparison, keep, ratio, input } = grounds;
  const act = comparison?.act ?? ratio?.act;
  if (act === undefined) return undefined;
  if (input.ownership.kind === "for-good")
    return keep?.priceRatio === undefined
      ? undefined
      : { act, pays: keep.priceRatio < keep.used ? "yes" : "no", margin: keep.margin ?? "clear" };
  if (comparison !== undefined)
    return { act, pays: comparison.difference > 0 ? "yes" : "no", margin: comparison.margin };
  return ratio?.own === undefined ? undefined : { act, pays: ratio.own.pays, margin: ratio.own.margin };
};

const developing = ({ evidence: { scores } }: Grounds, act: Repair): boolean => {
  const { state, linesFor } = scores[act === "topEnd" ? "top" : "rings"];
  return state === "developing" && linesFor.some((line) => line !== "cranking");
};
