// What a repair costs: the work inside and the way in.

import { jobs, type Job, type Repair } from "../words.ts";
import type { MoneyCase } from "./money-case.ts";

/** The jobs that a repair needs; to a re-ring the engine out only where that has a price, and where the bottom end is not open
 *  already with the engine in: then it is plain that it can be done in place.  @source handbook/decision.md 3 */
export const wayInto = (repair: Repair, done: readonly Job[]): readonly Job[] => {
  if (repair === "topEnd") return ["headOff"];
  const isInPlace = done.includes("bottomOpen") && !done.includes("engineOut");
  return repair === "reRing" && isInPlace ? ["headOff", "bottomOpen"] : jobs;
};

/** now_k = work + jobs not done yet + days now. What is done is sunk.  @source handbook/decision.md 3 */
export const priceNow = (money: MoneyCase, repair: Repair): number => {
  const open = wayInto(repair, money.done).filter((job) => !money.done.includes(job));
  return money.prices.work[repair] + wayIn(money, open) + daysOut(money, money.prices.daysNow?.[repair] ?? 0);
};

/** again_k = work + all jobs + days later: the same when it comes of its own.  @source handbook/decision.md 3 */
export const priceAgain = (money: MoneyCase, repair: Repair): number =>
  money.prices.work[repair] +
  wayIn(money, wayInto(repair, money.done)) +
  daysOut(money, money.prices.daysLater?.[repair] ?? 0);

/** redo_k = q again_k, q the chance that the repair does not hold.  @source handbook/decision.md 3 */
export const priceOfRedoing = (money: MoneyCase, repair: Repair): number =>
  money.redo[repair] * priceAgain(money, repair);

const wayIn = ({ prices }: MoneyCase, needed: readonly Job[]): number =>
  needed.reduce((sum, job) => sum + (prices.jobs[job] ?? 0), 0);

const daysOut = ({ prices }: MoneyCase, days: number): number => (prices.day ?? 0) * days;
