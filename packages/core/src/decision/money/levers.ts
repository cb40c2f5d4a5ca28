// The inputs that are varied one at a time, each with its range and how far beyond it a tipping point is looked for.

import type { WearLine } from "../input.ts";
import { ranges } from "../judgements.ts";
import { levelToday } from "../wear/known.ts";
import { withLimit } from "../wear/outlook.ts";
import { jobs, repairs, type Repair } from "../words.ts";
import { priceOfAct } from "./expected.ts";
import { withOutlook, type MoneyCase } from "./money-case.ts";
import type { Span } from "./tipping.ts";

export interface Lever extends Span {
  /** A path of the prices, or `redo.…`, `spoil`, `limit`, `years`, `probability`. */
  readonly input: string;
  readonly set: (value: number) => MoneyCase;
}

/** A price of nothing is not varied; a typed chance keeps its horizon.  @source handbook/decision.md 4 (judgement) */
export const leversOf = (money: MoneyCase, act: Repair): readonly Lever[] => [
  ...priceLevers(money),
  ...chanceLevers(money),
  resaleLever(money, act),
  ...wearLevers(money),
];

const priceLevers = (money: MoneyCase): readonly Lever[] => {
  const { prices } = money;
  const priced = (input: string, value: number | undefined, rest: Rest): readonly Lever[] =>
    value === undefined || value <= 0
      ? []
      : [
          {
            input,
            value,
            scale: "ratio",
            range: [value / rest.by, value * rest.by],
            beyond: [value / ranges.beyond, value * ranges.beyond],
            set: (price) => ({ ...money, prices: { ...prices, ...rest.prices(price) } }),
          },
        ];
  return [
    ...jobs.flatMap((job) =>
      priced(`jobs.${job}`, prices.jobs[job], {
        by: ranges.work,
        prices: (price) => ({ jobs: { ...prices.jobs, [job]: price } }),
      }),
    ),
    ...repairs.flatMap((repair) =>
      priced(`work.${repair}`, prices.work[repair], {
        by: ranges.work,
        prices: (price) => ({ work: { ...prices.work, [repair]: price } }),
      }),
    ),
    ...priced("day", prices.day, { by: ranges.yearly, prices: (day) => ({ day }) }),
    ...priced("runningPerYear", prices.runningPerYear, {
      by: ranges.yearly,
      prices: (runningPerYear) => ({ runningPerYear }),
    }),
  ];
};

interface Rest {
  readonly by: number;
  readonly prices: (price: number) => Partial<MoneyCase["prices"]>;
}

const chanceLevers = (money: MoneyCase): readonly Lever[] => [
  ...repairs.map((repair): Lever => {
    const value = money.redo[repair];
    const set = (redo: number): MoneyCase => ({ ...money, redo: { ...money.redo, [repair]: redo } });
    return {
      input: `redo.${repair}`,
      value,
      scale: "plain",
      range: around(ranges.redo, value),
      beyond: [0, 1],
      set,
    };
  }),
  {
    input: "spoil",
    value: money.spoil,
    scale: "plain",
    range: around(ranges.spoil, money.spoil),
    beyond: [0, 1],
    set: (spoil) => ({ ...money, spoil }),
  },
];

/** Up to a share of the job; more than the whole of it no buyer pays, so nothing is looked for beyond. */
const resaleLever = (money: MoneyCase, act: Repair): Lever => {
  const { prices } = money;
  const value = prices.resale?.[act] ?? 0;
  const price = priceOfAct(money, act);
  const range = around([0, ranges.resaleShare * price], value);
  const set = (added: number): MoneyCase => ({
    ...money,
    prices: { ...prices, resale: { ...prices.resale, [act]: added } },
  });
  return { input: `resale.${act}`, value, scale: "plain", range, beyond: around([0, price], value), set };
};

const wearLevers = (money: MoneyCase): readonly Lever[] => {
  const { wear, years } = money;
  if (wear.kind === "typed") {
    const value = wear.probability;
    const set = (probability: number): MoneyCase =>
      withOutlook(money, { all: { kind: "typed", probability } });
    return [
      {
        input: "probability",
        value,
        scale: "odds",
        range: [byOdds(value, 1 / ranges.odds), byOdds(value, ranges.odds)],
        beyond: [byOdds(value, 1 / ranges.beyond), byOdds(value, ranges.beyond)],
        set,
      },
    ];
  }
  const { line } = wear;
  return [
    {
      input: "limit",
      ...limitSpan(line),
      set: (limit) => withOutlook(money, { all: withLimit(money.all, line.limit, limit) }),
    },
    { input: "years", ...yearsSpan(years), set: (horizon) => withOutlook(money, { years: horizon }) },
  ];
};

/** To the level of today and beyond, where it is passed as good as certainly. */
export const limitSpan = (line: WearLine): Span => {
  const { limit } = line;
  const level = levelToday(line);
  return {
    value: limit,
    scale: "plain",
    range: [limit - ranges.limit, limit + ranges.limit],
    beyond: [Math.min(limit, level) - ranges.limitBeyond, Math.max(limit, level) + ranges.limitBeyond],
  };
};

export const yearsSpan = (years: number): Span => {
  const [least, most] = ranges.yearsBeyond;
  return {
    value: years,
    scale: "plain",
    range: [Math.max(Math.min(least, years), years - ranges.years), years + ranges.years],
    beyond: [Math.min(least, years), Math.max(most, years + ranges.years)],
  };
};

/** The range, widened to hold the value itself. */
const around = ([low, high]: readonly [number, number], value: number): readonly [number, number] => [
  Math.min(low, value),
  Math.max(high, value),
];

const byOdds = (probability: number, factor: number): number => {
  const odds = (factor * probability) / (1 - probability);
  return odds / (1 + odds);
};
