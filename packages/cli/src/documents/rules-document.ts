// The JSON of `rules`: sealtrend/rules@1.

import type { EngineRecord, Rule, RuleFinding } from "@sealtrend/core";
import { kPa } from "../render/units.ts";

export interface RulesAnswer {
  readonly record: EngineRecord | undefined;
  /** The test they were held against. */
  readonly test?: string | undefined;
  readonly findings: readonly RuleFinding[];
  readonly inForce: readonly Rule[];
  /** Listed so that an owner can compare; never judged. */
  readonly compared: readonly Rule[];
  /** The user's own sheet. */
  readonly from: string | undefined;
}

/** What is undefined is left out when the document is written. */
export const rulesDocument = ({ record, test, findings, inForce, compared, from }: RulesAnswer) => ({
  schema: "sealtrend/rules@1",
  engine: record === undefined ? undefined : { id: record.engine.id, name: record.engine.name },
  test: test === undefined ? undefined : { id: test },
  sheet: from,
  rules: inForce.map((rule) =>
    ruleDocument(
      rule,
      findings.find(({ id }) => id === rule.id),
    ),
  ),
  comparison: compared.map((rule) => ruleDocument(rule, undefined)),
});

/** Limits and values in kPa, or as fractions. */
const ruleDocument = (
  { id, family, formula, holds, limit, applies, text, source, status }: Rule,
  finding: RuleFinding | undefined,
) => {
  const inUnit = (value: number | undefined): Readonly<Record<string, number | undefined>> =>
    holds === "pressure" ? { value_kPa: value === undefined ? undefined : kPa(value) } : { value };
  const bound =
    limit === undefined
      ? {}
      : holds === "pressure"
        ? { limit_kPa: kPa(limit.value) }
        : { limit: limit.value };
  return {
    id,
    family,
    formula,
    compare: limit?.compare,
    ...bound,
    applies: applies.kind === "comparison" ? undefined : withoutKind(applies),
    text,
    source,
    status,
    ...(finding === undefined
      ? {}
      : { verdict: finding.verdict, ...inUnit(finding.value), cylinder: finding.cylinder }),
  };
};

const withoutKind = ({ use, ignition, cycle, cylinders }: Extract<Rule["applies"], { kind: "engines" }>) => ({
  use,
  ignition,
  cycle,
  cylinders,
});
