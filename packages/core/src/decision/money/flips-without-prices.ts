// What would change the word where no price is known: the years of ownership and the limit, each alone.

import type { DecisionInput, Wear } from "../input.ts";
import { outlookOf, withBeside, withLimit, type Outlook } from "../wear/outlook.ts";
import { limitSpan, yearsSpan } from "./levers.ts";
import { sharesOf } from "./money-case.ts";
import { flipOf, type Flip, type Span } from "./tipping.ts";
import type { RatioView } from "./without-prices.ts";

/** Where the word would turn, with no price known: in years of ownership or in the limit, each alone. */
export interface UnpricedFlip extends Flip {
  readonly input: "years" | "limit";
  /** As it stands: years, or ln. */
  readonly value: number;
  /** What turns there: whether acting pays at the user's own ratio, or whether it is watched. */
  readonly turns: "acting" | "watching";
}

/** Acting turns where the chance of this very work reaches the break-even of the user's own ratio; without one, watching
 *  where the chance reaches the risk that is taken. A typed chance knows nothing of other years.
 *  @param risk - taken without watching  @source handbook/decision.md 3, 4 and 7 (step 3: no costs and p > risk) */
export const flipsWithoutPrices = (
  input: DecisionInput,
  outlook: Outlook | undefined,
  {
    ratio,
    risk,
    years,
  }: { readonly ratio: RatioView | undefined; readonly risk: number; readonly years: number },
): readonly UnpricedFlip[] => {
  const isKept = input.ownership.kind === "for-good";
  if (input.prices !== undefined || outlook?.wear.kind !== "line" || isKept) return [];
  const { line } = outlook.wear;
  const share = sharesOf(input)[ratio?.act === "topEnd" ? "top" : "rings"];
  const own = ratio?.own;
  const turns = own === undefined ? "watching" : "acting";
  const above = (wear: Wear, within: number): number => {
    const passed = outlookOf(withBeside(wear), within)?.probability ?? outlook.probability;
    return own === undefined ? passed - risk : share * passed - own.breakEven;
  };
  const now = above(input.wear, years);
  const turning = (
    what: "years" | "limit",
    span: Span,
    difference: (at: number) => number,
  ): UnpricedFlip[] => {
    const flip = flipOf(span, difference, now);
    return flip === undefined ? [] : [{ input: what, value: span.value, ...flip, turns }];
  };
  return [
    ...turning("years", yearsSpan(years), (at) => above(input.wear, at)),
    ...turning("limit", limitSpan(line), (limit) => above(withLimit(input.wear, line.limit, limit), years)),
  ];
};
