// In place: at which layup is the repair cheapest?

import { nearlyFree } from "../judgements.ts";
import { passedBy } from "../wear/outlook.ts";
import { curePlaces, type Repair } from "../words.ts";
import { cures, priceLater, priceOfAct } from "./expected.ts";
import { priceOfRedoing } from "./jobs.ts";
import type { MoneyCase } from "./money-case.ts";

export interface LayupPlan {
  /** Years from now and C(u) of acting then if it lasts till then; the last is the horizon, never acting. */
  readonly costs: readonly { readonly years: number; readonly cost: number }[];
  readonly best: number;
  /** The latest that costs hardly more than the best; at the horizon: no layup is named. */
  readonly planBy: number;
}

/** C(u) = F(u) sum w_c later_c + (1 - F(u) sum w_c)(now + redo), c cured by the repair; C(H) = F(H) sum w_c later_c.
 *  @source handbook/decision.md 3 (finite-horizon age replacement: Barlow & Proschan 1965, from memory) */
export const layupPlan = (money: MoneyCase, repair: Repair): LayupPlan => {
  const cured = curePlaces.filter((place) => cures(money, repair).includes(place));
  const share = cured.reduce((sum, place) => sum + money.shares[place], 0);
  const later = cured.reduce(
    (sum, place) => sum + money.shares[place] * priceLater(money, place, money.spoil),
    0,
  );
  const planned = priceOfAct(money, repair) + priceOfRedoing(money, repair);
  const layups = Array.from({ length: Math.ceil(money.years) }, (_, year) => year);
  const costs = [
    ...layups.map((years) => {
      const passed = passedBy(money.wear, years);
      return { years, cost: passed * later + (1 - passed * share) * planned };
    }),
    { years: money.years, cost: passedBy(money.wear, money.years) * later },
  ];
  const least = costs.reduce((a, b) => (b.cost < a.cost ? b : a));
  const latest = costs.findLast(({ cost }) => cost <= nearlyFree * least.cost) ?? least;
  return { costs, best: least.years, planBy: latest.years };
};
