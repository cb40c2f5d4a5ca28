// The maker's own limits, as the engine's record states them, made into rules.

import type { EngineFacts } from "./applies.ts";
import type { Formula } from "./formula.ts";
import type { Limit, Rule, RuleFamily } from "./rule.ts";

/** Share of the new pressure that is taken as the least, where the maker states only the pressure of a new engine.
 *  Near the median of published pairs of least and new: 0.77 for petrol, about 0.86 (0.63 to 0.90) for diesel;
 *  a judgement, not a published limit. */
const leastShareOfNew = { spark: 0.75, compression: 0.82 } as const;

const p: Formula = { kind: "variable", name: "p" };
const max: Formula = { kind: "variable", name: "max" };

interface Made {
  readonly id: string;
  readonly family: RuleFamily;
  readonly formula: string;
  readonly tree: Formula;
  readonly holds: "pressure" | "fraction";
  readonly limit: Limit;
  readonly text: string;
}

/** Rules from `limits.compression` and `limits.leakDown`; none where nothing is stated. */
export const makerRules = (engine: EngineFacts): readonly Rule[] => {
  const { minimum, difference, lowestToHighest, source = "the engine's record" } = engine.compressionLimits;
  const stated: readonly (Made | undefined)[] = [
    minimum === undefined
      ? undefined
      : leastPressure("maker-minimum", minimum, "each cylinder at or above the maker's minimum"),
    difference === undefined ? undefined : mostDifference(difference),
    lowestToHighest === undefined ? undefined : leastRatio(lowestToHighest),
  ];
  const derived = minimum === undefined ? fromNew(engine) : undefined;
  const applies = { kind: "engines" } as const;
  return [
    ...stated
      .filter((rule) => rule !== undefined)
      .map((rule): Rule => ({ ...rule, applies, source, status: "engine record" })),
    ...(derived === undefined
      ? []
      : [
          {
            ...derived,
            applies,
            source: `derived from the new pressure, ${source}`,
            status: "judgement",
          } satisfies Rule,
        ]),
    ...mostLost(engine),
  ];
};

const mostLost = ({ leakDownLimits: { lost, source = "the engine's record" } }: EngineFacts): Rule[] =>
  lost === undefined
    ? []
    : [
        {
          id: "maker-leak-down",
          family: "leak-down",
          formula: "lost",
          tree: { kind: "variable", name: "lost" },
          holds: "fraction",
          limit: { value: lost, unit: "%", compare: "<=" },
          applies: { kind: "engines" },
          text: "no cylinder loses more than the maker allows",
          source,
          status: "engine record",
        },
      ];

const leastPressure = (id: string, value: number, text: string): Made => ({
  id,
  family: "minimum",
  formula: "p",
  tree: p,
  holds: "pressure",
  limit: { value, unit: "kPa", compare: ">=" },
  text,
});

const mostDifference = (value: number): Made => ({
  id: "maker-difference",
  family: "difference",
  formula: "max - p",
  tree: { kind: "arithmetic", operator: "-", left: max, right: p },
  holds: "pressure",
  limit: { value, unit: "kPa", compare: "<=" },
  text: "no cylinder further below the highest than the maker allows",
});

const leastRatio = (value: number): Made => ({
  id: "maker-ratio",
  family: "ratio",
  formula: "p / max",
  tree: { kind: "arithmetic", operator: "/", left: p, right: max },
  holds: "fraction",
  limit: { value, unit: "1", compare: ">=" },
  text: "each cylinder at or above the maker's share of the highest",
});

const fromNew = ({ ignition, compressionLimits }: EngineFacts): Made | undefined => {
  if (compressionLimits.new === undefined || ignition === "unknown") return undefined;
  const share = leastShareOfNew[ignition];
  const text = `each cylinder at or above ${String(share)} of the new pressure (no minimum stated; the share is a judgement)`;
  return leastPressure("derived-minimum", share * compressionLimits.new, text);
};
