// One act against waiting, in money.

import type { Outlook } from "../wear/outlook.ts";
import type { Act, Margin, Repair } from "../words.ts";
import { breakEvenOf, idleOf, type BreakEven } from "./break-even.ts";
import { expectedCosts, priceOfAct } from "./expected.ts";
import type { MoneyCase } from "./money-case.ts";
import { margins } from "../judgements.ts";
import { marginOf, tornadoOf, type Swing } from "./tornado.ts";

/** One act held against the cheaper way of waiting, in the unit of the prices. */
export interface Comparison {
  readonly act: Repair;
  /** What it is held against: the cheaper way of waiting, or the top end where that is due anyway. */
  readonly idle: Act;
  /** E(idle) - E(act): above 0 acting is cheaper. Where the need is established, the price of waiting. */
  readonly difference: number;
  /** Of the act itself, today. */
  readonly price: number;
  /** Absent where the need for this act is established: no chance is left to break even on. */
  readonly breakEven?: BreakEven;
  readonly swings: readonly Swing[];
  readonly margin: Margin;
  /** The two ways are within a hundredth of the job's price (ours): any input tips it. */
  readonly edge?: "on";
}

/** @source handbook/decision.md 3 and 4 */
export const comparisonOf = (money: MoneyCase, act: Repair, { probability, atMost }: Outlook): Comparison => {
  const costs = expectedCosts(money);
  const idle = idleOf(money, act, costs);
  const swings = tornadoOf(money, act);
  const margin = marginOf(money, act, swings);
  const difference = costs[idle] - costs[act];
  const price = priceOfAct(money, act);
  const edge = Math.abs(difference) < margins.edgeShare * price ? ({ edge: "on" } as const) : {};
  const compared = { act, idle, difference, price, swings, ...edge };
  const needed = money.certain.length > 0 && idle !== "topEnd";
  if (needed) return { ...compared, margin };
  const breakEven = breakEvenOf(money, act, idle);
  const turns = breakEven.probability;
  // several cylinders: the chance that any of them needs it lies between the worst and the sum
  const between = turns !== undefined && turns > probability && turns < atMost;
  return { ...compared, breakEven, margin: between && margin === "clear" ? "holds" : margin };
};
