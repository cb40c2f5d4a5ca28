// The JSON of `rules`: sealtrend/rules@1.

import { type EngineRecord, type Rule, type RuleFinding, fromSi } from "@sealtrend/core";
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
  rules: [
    ...inForce.map((rule) =>
      ruleDocument(
        rule,
        findings.find(({ id }) => id === rule.id),
      ),
    ),
    ...findings.filter(({ id }) => id === "master").map(masterDocument),
  ],
  comparison: compared.map((rule) => ruleDocument(rule, undefined)),
});

/** The reading of a master orifice as the limit: no row of a sheet, for it is that of the day. */
const masterDocument = ({
  id,
  formula,
  limit,
  text,
  source,
  status,
  verdict,
  value,
  cylinder,
}: RuleFinding) => ({
  id,
  family: "leak-down",
  formula,
  compare: limit?.compare,
  limit: limit?.value,
  text,
  source,
  status,
  verdict,
  value,
  cylinder,
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
      : {
          verdict: finding.verdict,
          ...inUnit(finding.value),
          cylinder: finding.cylinder,
          tester: finding.tester,
        }),
  };
};

const withoutKind = ({
  use,
  ignition,
  cycle,
  cylinders,
  bore,
  tester,
}: Extract<Rule["applies"], { kind: "engines" }>) => ({
  use,
  ignition,
  cycle,
  cylinders,
  bore: bore === undefined ? undefined : { least_mm: mm(bore.least), below_mm: mm(bore.below) },
  tester:
    tester === undefined
      ? undefined
      : { restrictor_mm: mm(tester.restrictor), supply_kPa: kPa(tester.supply) },
});

const mm = (metres: number | undefined): number | undefined =>
  metres === undefined ? undefined : fromSi(metres, "mm");
