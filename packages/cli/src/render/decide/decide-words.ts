// Words and numbers of the decision: chances, money, years, what is done, where it wears.

import type { Act, DecisionAssessment, Repair, Verdict, WornPlace } from "@sealtrend/core/parts";
import { counted, fixed } from "../words.ts";

/** `about 4 in 10`; near the ends in 100, and never nearer to them than 1 in 100.
 *  @source handbook/decision.md 8 */
export const aboutChance = (chance: number): string => {
  if (chance < 0.01) return "less than 1 in 100";
  if (chance > 0.99) return "more than 99 in 100";
  const inTen = chance >= 0.07 && chance < 0.93;
  return inTen ? `about ${fixed(10 * chance, 0)} in 10` : inHundred(chance);
};

/** `about 4 in 100`, whatever its size. */
export const inHundred = (chance: number): string =>
  chance < 0.01 || chance > 0.99 ? aboutChance(chance) : `about ${fixed(100 * chance, 0)} in 100`;

/** Whole units, from 1000 on three digits: what is reckoned from prices that are guesses carries no more. */
export const aboutMoney = (amount: number, { prices }: Pick<DecisionAssessment, "prices">): string => {
  const digits = Math.abs(amount) >= 1000 ? Number(amount.toPrecision(3)) : amount;
  const places = amount !== 0 && Math.abs(amount) < 10 ? 1 : 0;
  return moneyText(fixed(digits, places), prices.currency);
};

/** A price as it was typed. */
export const typedMoney = (amount: number, { prices }: Pick<DecisionAssessment, "prices">): string =>
  moneyText(String(Number(amount.toPrecision(12))), prices.currency);

const moneyText = (number: string, currency: string | undefined): string =>
  currency === undefined ? number : `${number}\u00a0${currency}`;

/** `5 years`, `1.5 years`; below a year months. */
export const yearsText = (years: number): string => {
  if (years < 0.95) return counted(Math.max(1, Math.round(12 * years)), "month");
  const places = years >= 10 || Math.abs(years - Math.round(years)) < 0.05 ? 0 : 1;
  const number = fixed(years, places);
  return `${number} year${number === "1" ? "" : "s"}`;
};

/** What the work is, after "doing" or "for". */
export const workNames: Readonly<Record<Repair, string>> = {
  topEnd: "the top end",
  reRing: "rings and bearings",
  rebuild: "a rebuild",
};

export const actNames: Readonly<Record<Act, string>> = {
  leave: "leaving it",
  watch: "watching it",
  topEnd: "the top end",
  reRing: "the re-ring",
  rebuild: "the rebuild",
};

export const placeNames: Readonly<Record<WornPlace, string>> = {
  top: "valves, gasket or head",
  rings: "rings",
  bore: "bores or pistons",
  bottom: "crank or bearings",
};

/** The verdict in the words of the contract. */
export const verdictWords: Readonly<Record<Verdict, string>> = {
  "leave-it": "leave it",
  "test-again": "test again",
  "watch-it": "watch it",
  "open-the-top-end": "open the top end",
  "re-ring": "re-ring",
  rebuild: "rebuild",
};

/** Too near a limit, with the bottom end open and the head on: a leak-down is the one test that is left. */
export const isTestedOpen = ({ decision }: DecisionAssessment): boolean =>
  decision.access === "bottom-open" && decision.next.step === "retest-before-hard-use";

/** What is asked for cannot be tested while it is open: it is measured, closed and watched. */
export const isMeasuredFirst = ({ decision, measureNow }: DecisionAssessment): boolean =>
  decision.verdict === "watch-it" && decision.next.step === "retest-before-hard-use" && measureNow.length > 0;

export const isOpen = ({ done }: Pick<DecisionAssessment, "done">): boolean =>
  done.some((job) => job !== "engineOut");
