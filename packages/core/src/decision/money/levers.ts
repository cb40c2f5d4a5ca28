// The inputs that are varied one at a time, each with its range and how far beyond it a tipping point is looked for.

import { ranges } from "../judgements.ts";
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

/** Up to a share of the job; more than that no buyer pays, so nothing is looked for beyond. */
const resaleLever = (money: MoneyCase, act: Repair): Lever => {
  const { prices } = money;
  const value = prices.resale?.[act] ?? 0;
  const range = around([0, ranges.resaleShare * priceOfAct(money, act)], value);
  const set = (price: number): MoneyCase => ({
    ...money,
    prices: { ...prices, resale: { ...prices.resale, [act]: price } },
  });
  return { input: `resale.${act}`, value, scale: "plain", range, beyond: range, set };
};

const wearLevers = (money: MoneyCase): readonly Lever[] => {
  const { wear, years } = money;
  if (wear.kind === "typed") {
    const value = wear.probability;
    const set = (probability: number): MoneyCase => withOutlook(money, { wear: { ...wear, probability } });
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
      ...limitSpan(line.limit),
      set: (limit) => withOutlook(money, { wear: { kind: "line", line: { ...line, limit } } }),
    },
    { input: "years", ...yearsSpan(years), set: (horizon) => withOutlook(money, { years: horizon }) },
  ];
};

/** @param limit - ln */
export const limitSpan = (limit: number): Span => ({
  value: limit,
  scale: "plain",
  range: [limit - ranges.limit, limit + ranges.limit],
  beyond: [limit - ranges.limitBeyond, limit + ranges.limitBeyond],
});

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
