// Rules on the readings of one test: a verdict each, with the cylinder that is worst.

import type { EngineFacts, RuleTester } from "./applies.ts";
import { type Formula, variablesOf } from "./formula.ts";
import { type Bench, judgeFormula, uncertaintyOfFormula, valueOf } from "./judge-formula.ts";
import type { ReadingGap, RuleReading } from "./reading.ts";
import type { Limit, Rule } from "./rule.ts";
import { rulesFor } from "./rules-for.ts";

/** `near`: the limit lies within two standard uncertainties of the value, so either word may be right. */
export type RuleVerdict = "met" | "near" | "not-met" | "cannot-tell";

export interface RuleOnCylinder {
  readonly label: string;
  readonly verdict: RuleVerdict;
  /** [Pa], or a fraction. */
  readonly value?: number;
}

/** One rule held against one test: the verdict, by what value and limit, and where the rule was published. */
export interface RuleFinding {
  readonly id: string;
  readonly verdict: RuleVerdict;
  readonly holds: Rule["holds"];
  /** [Pa], or a fraction; of the worst cylinder where the rule is judged cylinder by cylinder. */
  readonly value?: number;
  /** Standard uncertainty of value. */
  readonly uncertainty?: number;
  readonly limit?: Limit;
  readonly formula: string;
  readonly text: string;
  readonly source: string;
  readonly status: Rule["status"];
  /** The worst cylinder, where the rule is judged cylinder by cylinder and can be told. */
  readonly cylinder?: string;
  readonly byCylinder?: readonly RuleOnCylinder[];
  /** Where the verdict is cannot-tell: the readings that are in the way. */
  readonly gaps?: readonly Gap[];
  /** Leak-down: what is to be said of the tester the limit is for. */
  readonly tester?: TesterMatch;
  /** The tester it is for, where that kept it from being judged. */
  readonly testerAsked?: RuleTester;
}

/** `as-read`: the limit names no tester; `matches`; `another`: it is for another one, so not applied; `unknown`: restrictor
 *  or supply of this test is not recorded, so not applied. */
export type TesterMatch = "as-read" | "matches" | "another" | "unknown";

interface Gap {
  readonly label: string;
  readonly gap: ReadingGap;
}

/** Judges every rule on cranking that is in force for the engine: the maker's own figures, then those of `sheet` that
 *  apply. */
export const judgeRules = (
  sheet: readonly Rule[],
  readings: readonly RuleReading[],
  engine: EngineFacts,
): readonly RuleFinding[] =>
  rulesFor(engine, sheet)
    .filter(({ family }) => family !== "leak-down")
    .map((rule) => judgeRule(rule, readings));

/** Judges one rule, whether or not it applies to the engine. */
export const judgeRule = (rule: Rule, readings: readonly RuleReading[]): RuleFinding => {
  const { id, holds, formula, text, source, status } = rule;
  const base = {
    id,
    holds,
    formula,
    text,
    source,
    status,
    ...(rule.limit === undefined ? {} : { limit: rule.limit }),
  };
  const names = variablesOf(rule.tree);
  if (!names.has("p") && !names.has("lost"))
    return { ...base, ...without(judgeOn(rule, readings, undefined)) };
  const alone = [...names].every((name) => name === "p" || name === "lost");
  const each = readings.map((reading) => ({
    label: reading.label,
    ...(alone ? judgeOn(rule, [reading], 0) : judgeOn(rule, readings, readings.indexOf(reading))),
  }));
  const worst = each.toSorted((a, b) => rank(b.verdict) - rank(a.verdict) || a.margin - b.margin)[0];
  if (worst === undefined) return { ...base, verdict: "cannot-tell" };
  const { label, ...rest } = worst;
  const byCylinder = each.map(({ label: name, verdict, value }) => ({
    label: name,
    verdict,
    ...(value === undefined ? {} : { value }),
  }));
  const gaps = worst.verdict === "cannot-tell" ? gapsOf(rule, readings) : undefined;
  return {
    ...base,
    ...without(rest),
    ...(rest.verdict === "cannot-tell" ? {} : { cylinder: label }),
    ...(gaps === undefined ? {} : { gaps }),
    byCylinder,
  };
};

interface Judged {
  readonly verdict: RuleVerdict;
  readonly value?: number;
  readonly uncertainty?: number;
  readonly gaps?: readonly Gap[];
  /** How far inside the limit; the least is the worst. */
  readonly margin: number;
}

const without = ({ margin: _, ...rest }: Judged): Omit<Judged, "margin"> => rest;

const rank = (verdict: RuleVerdict): number => ["met", "near", "cannot-tell", "not-met"].indexOf(verdict);

/** Which value counts: against a limit in pressure the fully corrected one; among themselves, cylinders are
 *  corrected for air pressure only. */
const valueFor = (rule: Rule, reading: RuleReading): number | undefined => {
  if (rule.family === "leak-down") return reading.held;
  return rule.holds === "pressure" ? reading.fullyCorrected : reading.pressureCorrected;
};

const ownOf = (rule: Rule, { ownUncertainty, fullOwnUncertainty }: RuleReading): number =>
  rule.holds === "pressure" ? (fullOwnUncertainty ?? ownUncertainty) : ownUncertainty;

const gapsOf = (rule: Rule, readings: readonly RuleReading[]): readonly Gap[] =>
  readings.flatMap((reading) => {
    if (reading.state !== "taken") return [{ label: reading.label, gap: reading.state }];
    return valueFor(rule, reading) === undefined ? [{ label: reading.label, gap: "not-taken" as const }] : [];
  });

const judgeOn = (rule: Rule, readings: readonly RuleReading[], own: number | undefined): Judged => {
  const gaps = gapsOf(rule, readings);
  if (gaps.length > 0 || readings.length === 0) return { verdict: "cannot-tell", gaps, margin: 0 };
  const bench: Bench = {
    readings: readings.flatMap((reading) => {
      const pressure = valueFor(rule, reading);
      return pressure === undefined
        ? []
        : [{ pressure, own: ownOf(rule, reading), common: reading.commonUncertainty }];
    }),
    of: rule.family === "leak-down" ? "held" : "pressures",
    parts: rule.holds === "pressure" || rule.family === "leak-down" ? "own-and-common" : "own",
    ...(own === undefined ? {} : { own }),
  };
  if (rule.limit === undefined)
    return { verdict: judgeFormula(rule.tree, bench) ?? "cannot-tell", margin: 0 };
  const value = valueOf(rule.tree, bench);
  const uncertainty = uncertaintyOfFormula(rule.tree, bench);
  const verdict = judgeFormula(limited(rule.tree, rule.limit), bench) ?? "cannot-tell";
  if (value === undefined || uncertainty === undefined) return { verdict, margin: 0 };
  return { verdict, value, uncertainty, margin: marginOf(value, rule.limit) };
};

const limited = (left: Formula, { compare, value }: Limit): Formula => ({
  kind: "comparison",
  operator: compare,
  left,
  right: { kind: "number", value },
});

const marginOf = (value: number, { compare, value: limit }: Limit): number =>
  compare === ">=" || compare === ">" ? value - limit : limit - value;
