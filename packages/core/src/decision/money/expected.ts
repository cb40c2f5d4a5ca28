// What each act is expected to cost while the engine is owned.

import { curePlaces, repairOf, type Act, type CurePlace, type Repair } from "../words.ts";
import { priceAgain, priceNow, priceOfRedoing } from "./jobs.ts";
import type { Belief, MoneyCase } from "./money-case.ts";

export type Costs = Readonly<Record<Act, number>>;

/** E(leave) = D sum p_c later_c + o H;  E(watch) = the same with e (1 - det) for e, + tests;
 *  E(k) = now_k + redo_k + D sum over what k does not cure of p_c later_c - resale_k e^(-dH).
 *  @source handbook/decision.md 3 (derived, computed) */
export const expectedCosts = (money: MoneyCase): Costs => costsAt(money, money.belief);

/** Of one act alone. */
export const expectedCost = (money: MoneyCase, act: Act): number => costAt(money, money.belief, act);

/** The same with another chance, the discount kept: a straight line in it. */
export const costsIf = (money: MoneyCase, probability: number): Costs =>
  costsAt(money, { ...money.belief, probability });

/** later_c = again + redo + e X: the repair of a place when the need comes; X of the rings is what a rebuild costs more.
 *  @param spoil - e, the chance that it has become a rebuild by then */
export const priceLater = (money: MoneyCase, place: CurePlace, spoil: number): number => {
  const repair = repairOf[place];
  const extra =
    place === "rings" ? Math.max(0, priceAgain(money, "rebuild") - priceAgain(money, "reRing")) : 0;
  return priceAgain(money, repair) + priceOfRedoing(money, repair) + spoil * extra;
};

/** What a repair cures; with the top end due a re-ring does both, and it helps a bottom end that nothing is established
 *  against.  @source handbook/decision.md 3 */
export const cures = ({ certain }: Pick<MoneyCase, "certain">, repair: Repair): readonly CurePlace[] => {
  if (repair === "rebuild") return curePlaces;
  if (repair === "topEnd") return ["top"];
  const top: readonly CurePlace[] = certain.includes("top") ? ["top"] : [];
  const bottom: readonly CurePlace[] = certain.includes("bottom") ? [] : ["bottom"];
  return [...top, "rings", ...bottom];
};

/** Price of the act itself: with the top end due a re-ring includes the work on the head. */
export const priceOfAct = (money: MoneyCase, repair: Repair): number =>
  priceNow(money, repair) +
  (repair === "reRing" && money.certain.includes("top") ? money.prices.work.topEnd : 0);

const costsAt = (money: MoneyCase, belief: Belief): Costs => ({
  leave: costAt(money, belief, "leave"),
  watch: costAt(money, belief, "watch"),
  topEnd: costAt(money, belief, "topEnd"),
  reRing: costAt(money, belief, "reRing"),
  rebuild: costAt(money, belief, "rebuild"),
});

const costAt = (money: MoneyCase, belief: Belief, act: Act): number => {
  if (act !== "leave" && act !== "watch") return repaired(money, belief, act);
  const { prices, spoil, caught, testsPerYear, years } = money;
  const waiting = (prices.runningPerYear ?? 0) * years;
  if (act === "leave") return toCome(money, belief, { places: curePlaces, spoil }) + waiting;
  const tests = (prices.test ?? 0) * testsPerYear * years;
  return toCome(money, belief, { places: curePlaces, spoil: spoil * (1 - caught) }) + waiting + tests;
};

const repaired = (money: MoneyCase, belief: Belief, repair: Repair): number => {
  const cured = cures(money, repair);
  const places = curePlaces.filter((place) => !cured.includes(place));
  const resale = (money.prices.resale?.[repair] ?? 0) * Math.exp(-money.interest * money.years);
  return (
    priceOfAct(money, repair) +
    priceOfRedoing(money, repair) +
    toCome(money, belief, { places, spoil: money.spoil }) -
    resale
  );
};

const toCome = (
  money: MoneyCase,
  { probability, discount }: Belief,
  { places, spoil }: { readonly places: readonly CurePlace[]; readonly spoil: number },
): number =>
  discount *
  places.reduce((sum, place) => {
    const chance = money.certain.includes(place) ? 1 : probability * money.shares[place];
    return sum + chance * priceLater(money, place, spoil);
  }, 0);
