// How sure it is that a cylinder stays above its limits, in words and one digit.

import type { CylinderHistory, KindHistory } from "@sealtrend/core";
import { isEither } from "./history-headline.ts";
import { isAlone } from "./history-numbers.ts";
import { isStep } from "./history-outlook.ts";
import { dateOf, othersOf } from "./history-sentences.ts";
import { count, sentence } from "../words.ts";

interface Chance {
  readonly ahead: number;
  readonly probability: number;
}

/** One digit goes no further. */
const sure = 0.95;

/** `about 7 in 10`; a history is too short to be surer than that of what comes. */
const chanceText = (probability: number): string => {
  if (probability >= sure) return "more than 9 in 10";
  return probability < 1 - sure ? "less than 1 in 10" : `about ${(10 * probability).toFixed(0)} in 10`;
};

/** Of one cylinder asked for, else of the falling one that is likeliest to be under a limit, else of the weakest where all
 *  can be told. Nothing where a last reading is under its limit already, or where no year ahead lies ahead of today.
 *  @param shown - the cylinders that the screen is about  @param limits - whether the screen has named them before */
export const chanceSentence = (
  shown: readonly CylinderHistory[],
  kind: KindHistory,
  { today, limits }: { readonly today: string; readonly limits: "named" | "new" },
): readonly string[] | undefined => {
  const all = shown.length === kind.result.cylinders.length && shown.length > 1;
  const falling = shown.filter(({ course }) => course === "falling");
  if (all && falling.length === 0) return wholeSentence(kind, today);
  const [least] = (all ? falling : shown)
    .filter((cylinder) => !isEither(cylinder) && hasLine(cylinder))
    .flatMap((cylinder) => {
      const told = choice(chancesOf(cylinder), kind, today);
      return told === undefined ? [] : [{ cylinder, ...told }];
    })
    .toSorted((a, b) => a.probability - b.probability);
  if (least === undefined) return undefined;
  const { cylinder, probability, when } = least;
  const who = isAlone(kind) ? "it" : cylinder.label;
  const [first = "", ...rest] = limitsOf(cylinder, kind);
  const named = rest.length === 0 ? "its limit" : "its limits";
  return [
    said(probability, `${who} is above ${limits === "named" ? named : [first, ...rest].join(" and ")}`, when),
  ];
};

/** `About 5 in 10 that 3 is above its limits in 2029-10; a sudden fault aside.` */
const said = (probability: number, what: string, when: string): string =>
  `${sentence(chanceText(probability))} that ${what} in ${when}; a sudden fault aside.`;

/** Of all cylinders where that is as good as sure, else of the weakest. */
const wholeSentence = (kind: KindHistory, today: string): readonly string[] | undefined => {
  const { cylinders } = kind.result;
  const told = weakestOf(kind, today);
  if (told === undefined) return undefined;
  const { probability, allAtLeast, when, label } = told;
  const all = cylinders.length === 2 ? "both cylinders" : `all ${count(cylinders.length)} cylinders`;
  const [one] = cylinders.filter((cylinder) => cylinder.label === label);
  const limits = one === undefined ? "" : limitsOf(one, kind).join(" and ");
  if (allAtLeast >= sure) return [said(allAtLeast, `${all} are above ${limits}`, when)];
  const weak = cylinders.length === 2 ? "weaker" : "weakest";
  return [said(probability, `${label}, the ${weak}, is above ${limits}`, when)];
};

/** Between which chances all cylinders are above their limits, for the detail. */
export const allText = (kind: KindHistory, today: string): readonly string[] => {
  const told = weakestOf(kind, today);
  if (told === undefined) return [];
  const { probability, allAtLeast, when } = told;
  const [most, least] = [chanceText(probability), chanceText(allAtLeast)];
  const chances = most === least ? most : `${most} at most, ${least} at least`;
  return [
    `That all ${count(kind.result.cylinders.length)} are above their limits in ${when}: ${chances}; a sudden fault aside.`,
  ];
};

/** Where no last reading is under its limit already. */
const weakestOf = (
  kind: KindHistory,
  today: string,
): (KindHistory["result"]["weakest"][number] & { readonly when: string }) | undefined => {
  const { cylinders, weakest } = kind.result;
  return cylinders.length < 2 || cylinders.some(isUnder) ? undefined : choice(weakest, kind, today);
};

/** Whether its line can be drawn on: no step, no reading of nothing at last, not under a limit already. */
const hasLine = (cylinder: CylinderHistory): boolean =>
  !isStep(cylinder) && !cylinder.alarms.includes("no-compression") && !isUnder(cylinder);

/** By the limit that it is nearer to, where both can be told. */
const chancesOf = ({ stays, absolute }: CylinderHistory): readonly Chance[] => {
  const own = absolute?.stays;
  if (own === undefined || stays.length === 0) return own ?? stays;
  return stays.flatMap(({ ahead, probability }) => {
    const other = own.find((one) => one.ahead === ahead);
    return other === undefined ? [] : [{ ahead, probability: Math.min(probability, other.probability) }];
  });
};

/** The furthest year that is likelier than not, else the nearest; only what lies ahead of today. */
const choice = <T extends Chance>(
  chances: readonly T[],
  kind: KindHistory,
  today: string,
): (T & { readonly when: string }) | undefined => {
  const [year, month] = lastDate(kind).split("-");
  const ahead = chances
    .map((one) => ({ ...one, when: `${String(Number(year) + one.ahead)}-${month ?? ""}` }))
    .filter(({ when }) => when > today.slice(0, 7));
  return ahead.findLast(({ probability }) => probability >= 0.5) ?? ahead[0];
};

const lastDate = (kind: KindHistory): string =>
  dateOf(
    kind,
    kind.result.tests.findLastIndex(({ use }) => use === "full"),
  );

const isUnder = ({ limit, absolute }: CylinderHistory): boolean =>
  (limit !== undefined && limit.lastRatio < limit.value) ||
  (absolute !== undefined && absolute.last < absolute.minimum);

/** `0.75 of the others`, `the maker's minimum`. */
const limitsOf = ({ limit, absolute, stays }: CylinderHistory, kind: KindHistory): readonly string[] => [
  ...(limit === undefined || stays.length === 0 ? [] : [`${limit.value.toFixed(2)} of ${othersOf(kind)}`]),
  ...(absolute?.stays === undefined ? [] : ["the maker's minimum"]),
];
