// What would change the comparison: each input varied alone, the others fixed.

import type { Margin, Repair } from "../words.ts";
import { margins } from "../judgements.ts";
import { differenceOf } from "./break-even.ts";
import { priceOfAct } from "./expected.ts";
import { leversOf, type Lever } from "./levers.ts";
import type { Look, MoneyCase } from "./money-case.ts";
import { flipOf, flipWithin, type Flip } from "./tipping.ts";

/** What one input alone does to a comparison in money, from one end of its range to the other. */
export interface Swing {
  readonly input: string;
  readonly value: number;
  /** Ends of its range, and the difference (idle less act) there. */
  readonly low: { readonly at: number; readonly difference: number };
  readonly high: { readonly at: number; readonly difference: number };
  readonly flip?: Flip;
}

/** What cancels in both ways leaves the last digits of their costs. */
const rounding = 1e-9;

/** The widest first; inputs that change nothing are left out.  @source handbook/decision.md 4 */
export const tornadoOf = (money: MoneyCase, act: Repair): readonly Swing[] => {
  const now = differenceOf(money, act);
  return leversOf(money, act)
    .map((lever) => swingOf(lever, act, { now, look: money.look }))
    .filter((swing) => width(swing) > rounding * Math.max(1, Math.abs(now)) || swing.flip !== undefined)
    .toSorted((a, b) => width(b) - width(a));
};

/** close: the difference is below a tenth of the job, or an input tips it within half its range; holds: within its range.
 *  @source handbook/decision.md 4 (judgement) */
export const marginOf = (money: MoneyCase, act: Repair, swings: readonly Swing[]): Margin => {
  const tips = swings.map(({ flip }) => flip?.where);
  const level = Math.abs(differenceOf(money, act)) < margins.shareOfJob * priceOfAct(money, act);
  if (level || tips.includes("half-range")) return "close";
  return tips.includes("range") ? "holds" : "clear";
};

const width = ({ low, high }: Swing): number => Math.abs(high.difference - low.difference);

const swingOf = (
  lever: Lever,
  act: Repair,
  { now, look }: { readonly now: number; readonly look: Look },
): Swing => {
  const { input, value, range, set } = lever;
  const difference = (at: number): number => differenceOf(set(at), act);
  const end = (at: number): Swing["low"] => ({ at, difference: difference(at) });
  const flip = look === "far" ? flipOf(lever, difference, now) : flipWithin(lever, difference, now);
  return { input, value, low: end(range[0]), high: end(range[1]), ...(flip === undefined ? {} : { flip }) };
};
