// Acting now against waiting: the difference, and the chance of need at which it turns.

import type { Act, Repair } from "../words.ts";
import { costsIf, expectedCost, type Costs } from "./expected.ts";
import type { MoneyCase } from "./money-case.ts";

/** Where acting now and waiting cost the same: E(idle) - E(act) = K p - G, with the chance p of need. */
export interface BreakEven {
  /** E(idle) - E(act) = K p - G. */
  readonly K: number;
  readonly G: number;
  /** p* = G/K, above which acting pays; absent where K is not above 0, and where it would be 1 or more: acting early
   *  never pays. At 0 or less it always does. */
  readonly probability?: number;
}

/** The cheaper of leaving and watching; the top end where that is due anyway and the re-ring is asked for beside it.
 *  @source handbook/decision.md 3 */
export const idleOf = (
  money: MoneyCase,
  act: Repair,
  { leave, watch }: Pick<Costs, "leave" | "watch">,
): Act => {
  if (isBesideTopEnd(money, act)) return "topEnd";
  return watch < leave ? "watch" : "leave";
};

const isBesideTopEnd = ({ certain }: MoneyCase, act: Repair): boolean =>
  act === "reRing" && certain.includes("top") && certain.length === 1;

/** Above 0 the act is cheaper than waiting. */
export const differenceOf = (money: MoneyCase, act: Repair): number => {
  const idle = isBesideTopEnd(money, act)
    ? expectedCost(money, "topEnd")
    : Math.min(expectedCost(money, "leave"), expectedCost(money, "watch"));
  return idle - expectedCost(money, act);
};

/** @param idle - held fixed  @source handbook/decision.md 3 */
export const breakEvenOf = (money: MoneyCase, act: Repair, idle: Act): BreakEven => {
  const [none, all] = [costsIf(money, 0), costsIf(money, 1)];
  const G = none[act] - none[idle];
  const K = all[idle] - all[act] + G;
  return K > 0 && G < K ? { K, G, probability: G / K } : { K, G };
};
