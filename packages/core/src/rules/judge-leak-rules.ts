// Rules on the part lost in a leak-down. A limit counts on the tester it was made for: the same leak shows another percent
// through another restrictor.

import type { GaugePressure, Length } from "../quantity/index.ts";
import type { EngineFacts, RuleTester } from "./applies.ts";
import { type RuleFinding, type TesterMatch, judgeRule } from "./judge-rules.ts";
import type { RuleReading } from "./reading.ts";
import type { Rule } from "./rule.ts";
import { rulesFor } from "./rules-for.ts";

/** What is known of the tester of one test. */
export interface TesterFacts {
  readonly restrictor?: Length;
  readonly supply?: GaugePressure;
}

/** Testers are one where bore and supply differ by no more than this; judgement: a maker calls 1 mm and 0.040 in
 *  equivalent (1.6 %). At 25 % lost, 2 % of the bore is 1.6 points, less than dials of 2 psi leave in doubt. */
const sameBore = 0.02;
const sameSupply = 0.05;

/** Judges every leak-down rule in force for the engine. */
export const judgeLeakRules = (
  sheet: readonly Rule[],
  {
    readings,
    engine,
    tester,
  }: {
    readonly readings: readonly RuleReading[];
    readonly engine: EngineFacts;
    readonly tester: TesterFacts;
  },
): readonly RuleFinding[] =>
  rulesFor(engine, sheet)
    .filter(({ family }) => family === "leak-down")
    .map((rule): RuleFinding => {
      const finding = judgeRule(rule, readings);
      const match = testerMatch(rule, tester);
      if (match === "as-read" || match === "matches") return { ...finding, tester: match };
      const { id, holds, limit, formula, text, source, status } = finding;
      return {
        id,
        verdict: "cannot-tell",
        holds,
        ...(limit === undefined ? {} : { limit }),
        formula,
        text,
        source,
        status,
        tester: match,
        ...askedOf(rule),
      };
    });

const askedOf = ({ applies }: Rule): Pick<RuleFinding, "testerAsked"> =>
  applies.kind === "engines" && applies.tester !== undefined ? { testerAsked: applies.tester } : {};

const testerMatch = ({ applies }: Rule, tester: TesterFacts): TesterMatch => {
  const asked = applies.kind === "engines" ? applies.tester : undefined;
  if (asked === undefined) return "as-read";
  return matches(asked, tester);
};

const matches = (asked: RuleTester, { restrictor, supply }: TesterFacts): TesterMatch => {
  const isFar = (own: number | undefined, wanted: number, share: number): boolean =>
    own !== undefined && Math.abs(own / wanted - 1) > share;
  if (isFar(restrictor, asked.restrictor, sameBore) || isFar(supply, asked.supply, sameSupply))
    return "another";
  return restrictor === undefined || supply === undefined ? "unknown" : "matches";
};
