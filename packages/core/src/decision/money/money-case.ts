// One case to be reckoned in money: everything filled in, so that each input can be varied alone.

import type { DecisionInput, Prices, Shares, Wear } from "../input.ts";
import { usual, usualShares } from "../judgements.ts";
import {
  discountOf,
  outlookOf,
  passedBy,
  withBeside,
  type Outlook,
  type SingleWear,
} from "../wear/outlook.ts";
import type { CurePlace, Job, Repair } from "../words.ts";

export interface MoneyCase {
  readonly prices: Prices;
  readonly redo: Readonly<Record<Repair, number>>;
  readonly spoil: number;
  readonly caught: number;
  readonly testsPerYear: number;
  readonly interest: number;
  /** The horizon. */
  readonly years: number;
  readonly wear: SingleWear;
  /** All that is known of it: at other years another line may be the worst. */
  readonly all: Wear;
  /** Of wear, years and interest: worked out once. */
  readonly belief: Belief;
  readonly shares: Shares;
  /** Places where the need is established. */
  readonly certain: readonly CurePlace[];
  readonly done: readonly Job[];
  /** Whether tipping points are looked for far and wide, or at the ends of each range alone. */
  readonly look: Look;
}

export type Look = "far" | "ends";

/** p, the chance that a limit is passed within the horizon, and D, what a cost at that time is worth today. */
export interface Belief {
  readonly probability: number;
  readonly discount: number;
}

const beliefOf = ({ wear, years, interest }: Pick<MoneyCase, "wear" | "years" | "interest">): Belief => ({
  probability: passedBy(wear, years),
  discount: discountOf(wear, years, interest),
});

/** The same case with other wear or another horizon, by the line that is the worst there. */
export const withOutlook = (
  money: MoneyCase,
  { all = money.all, years = money.years }: Partial<Pick<MoneyCase, "all" | "years">>,
): MoneyCase => {
  const wear = outlookOf(withBeside(all), years)?.wear ?? money.wear;
  const changed = { ...money, all, years, wear };
  return { ...changed, belief: beliefOf(changed) };
};

export const sharesOf = ({ shares }: Pick<DecisionInput, "shares">): Shares =>
  typeof shares === "string" ? usualShares[shares] : shares;

export const yearsOf = ({ ownership }: Pick<DecisionInput, "ownership">): number =>
  ownership.years ?? usual.years;

export const redoOf = ({ chances }: Pick<DecisionInput, "chances">, repair: Repair): number =>
  chances?.redo?.[repair] ?? usual.redo;

/** What is judged and not measured: the owner's where he said it, else the usual. */
export const chancesOf = (
  input: DecisionInput,
): Pick<MoneyCase, "redo" | "spoil" | "caught" | "testsPerYear" | "shares"> => ({
  redo: {
    topEnd: redoOf(input, "topEnd"),
    reRing: redoOf(input, "reRing"),
    rebuild: redoOf(input, "rebuild"),
  },
  spoil: input.chances?.spoil ?? usual.spoil,
  caught: input.chances?.caught ?? usual.caught,
  testsPerYear: input.testsPerYear ?? usual.testsPerYear,
  shares: sharesOf(input),
});

/** @returns undefined without prices or without a chance */
export const moneyCaseOf = (
  input: DecisionInput,
  outlook: Outlook | undefined,
  { places, look = "far" }: { readonly places: readonly CurePlace[]; readonly look?: Look },
): MoneyCase | undefined => {
  const { prices, interest, done } = input;
  if (prices === undefined || outlook === undefined) return undefined;
  const timed = { wear: outlook.wear, years: yearsOf(input), interest: interest ?? 0 };
  return {
    prices,
    ...chancesOf(input),
    ...timed,
    all: input.wear,
    belief: beliefOf(timed),
    certain: places,
    done,
    look,
  };
};
