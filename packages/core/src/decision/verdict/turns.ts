// Where the word itself turns as one input moves, and to which: it may be level or a test long before the balance tips.

import type { DecisionInput } from "../input.ts";
import { leversOf, type Lever } from "../money/levers.ts";
import { moneyCaseOf, type MoneyCase } from "../money/money-case.ts";
import { nearestTurned, placed, type Flip, type Walk } from "../money/tipping.ts";
import { recounted } from "../wear/outlook.ts";
import { jobs, type Repair, type Verdict } from "../words.ts";
import { groundsOf } from "./grounds.ts";
import { wordOf, type Word } from "./word.ts";

/** Where the word itself turns as one input moves, and to which word. */
export interface Turn extends Flip {
  /** `years`, `limit`, `probability`, or a path of the prices. */
  readonly input: string;
  readonly value: number;
  /** The word just beyond. */
  readonly verdict: Verdict;
  /** The two ways are level there: no work, and the owner's choice. */
  readonly level?: "yes";
}

/** Years, limit, chance, the price of the work and of its way in, and what it adds at sale; the nearest value each, all others
 *  fixed. None without prices (there `unpricedFlips` tell), for an engine that is kept for good, and of a word that hangs on no
 *  money. */
export const turnsOf = (input: DecisionInput): readonly Turn[] => {
  const { comparison, evidence, outlook } = groundsOf(input, "ends");
  const { need } = evidence;
  const money = moneyCaseOf(input, outlook, { places: need.places, look: "ends" });
  const hangsOnNone = need.repair !== undefined || input.ownership.kind === "for-good";
  if (money === undefined || comparison === undefined || hangsOnNone) return [];
  const now = wordAt(input);
  if (!byMoney(now)) return [];
  return leversOf(money, comparison.act)
    .filter((lever) => isAsked(lever, comparison.act, money))
    .flatMap((lever) => turnOf(lever, input, now));
};

/** Words that a doubt of the readings does not already settle. */
const byMoney = ({ verdict, reasons: [first] }: Word): boolean =>
  verdict !== "test-again" || first === "test-worth-making" || first === "limit-too-near";

/** Of the ways in the dearest alone. */
const isAsked = ({ input }: Lever, act: Repair, { prices }: MoneyCase): boolean => {
  const dearest = jobs.toSorted((a, b) => (prices.jobs[b] ?? 0) - (prices.jobs[a] ?? 0))[0] ?? "";
  return [
    "years",
    "limit",
    "probability",
    `work.${act}`,
    `resale.${act}`,
    `jobs.${dearest}`,
    "runningPerYear",
  ].includes(input);
};

/** A word takes far longer than a difference. */
const coarse: Walk = { steps: 6, halvings: 9 };

const turnOf = (lever: Lever, input: DecisionInput, now: Word): Turn[] => {
  const turned = (value: number): boolean =>
    nameOf(wordAt(withMoney(input, lever.set(value)))) !== nameOf(now);
  const at = nearestTurned(lever, turned, coarse);
  if (at === undefined) return [];
  const word = wordAt(withMoney(input, lever.set(at)));
  return [
    {
      input: lever.input,
      value: lever.value,
      ...placed(lever, at),
      verdict: word.verdict,
      ...(isLevel(word) ? { level: "yes" } : {}),
    },
  ];
};

const wordAt = (input: DecisionInput): Word => wordOf(groundsOf(input, "ends"));

const isLevel = ({ reasons }: Word): boolean => reasons.includes("level");

const nameOf = (word: Word): string => (isLevel(word) ? "level" : word.verdict);

/** The input that such a case is reckoned from. */
const withMoney = (
  input: DecisionInput,
  { prices, redo, spoil, caught, all, years }: MoneyCase,
): DecisionInput => ({
  ...input,
  prices,
  chances: { redo, spoil, caught },
  wear: recounted(all, years),
  ownership: { kind: "years", years },
});
