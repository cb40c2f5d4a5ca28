// P(cause | all findings) of every cylinder, by the exact sum over states of the engine, gasket pairs, the level of the
// day, the share of the oil and the scale of the tester. Given these the cylinders are independent.

import type { Evidence } from "../evidence.ts";
import type { Faults } from "../faults/faults.ts";
import { type Day, levelChances } from "./day.ts";
import { gridOf, prepared } from "./prepared.ts";
import type { Priors } from "./priors.ts";
import { type SignSeen, type SignTerm, signTerms } from "./signs.ts";
import { type Counted, Sum } from "./sum.ts";

export interface Posterior {
  /** Aligned with the cylinders, each with the causes of the tables; each adds up to 1. */
  readonly cylinders: readonly (readonly number[])[];
  /** States of the engine and of its banks; what they leave is none. */
  readonly states: readonly { readonly id: string; readonly cause: string; readonly probability: number }[];
  readonly pairs: readonly { readonly cylinders: readonly [number, number]; readonly probability: number }[];
  /** Means over the posterior: the level of sound cylinders [Pa gauge] (of its logarithm), what oil multiplies their reading by, the shift of
   *  ln alpha. */
  readonly level?: number;
  readonly oilFactor?: number;
  readonly testerShift: number;
}

/** Z = Σ_e P(e) Σ_g P(g) Σ_k P(k) Σ_M P(M|e) Σ_c P(c) Π_i Σ_h P(z_i=h | e,g)·Lik_i(h; M,c,k).
 *  What no sign of the engine changes is worked out once, however many sets of signs are asked for.
 *  @throws RangeError where the evidence holds a word that is no class of its finding, or tables lack a cause
 *  @source handbook/diagnosis.md 1 @checked tests/outside/diagnosis.test.ts (computed by another program) */
export const posteriors = (
  evidence: Evidence,
  { faults, day, priors }: { readonly faults: Faults; readonly day: Day; readonly priors: Priors },
): ((signs: readonly SignSeen[]) => Posterior) => {
  const context = { evidence, faults, day, grid: gridOf(day) };
  const cylinders = evidence.cylinders.map((_, i) => prepared(i, context, priors.states));
  const levels = levelChances(day.levels, priors.states, context);
  return (signs) => {
    const terms = signTerms(signs, faults);
    const sum = new Sum(cylinders, priors, { day, faults, levels });
    for (const [k, counted] of countedOf(sum, { day, terms }).entries())
      for (const term of terms) sum.add(k, term, counted);
    return answer(sum, { priors, day, faults, evidence });
  };
};

/** With oil the sum would be thirteen times as long: places of the day, and states there, that add less than this share at
 *  any oil are left out. */
const negligible = 1e-10;

/** Levels that count, by tester shift, then by state; undefined for none. The first term of the signs is the largest and
 *  positive, so that what a state at a place can reach with it, the oil as kind to each cause as any, bounds what it can add. */
const countedOf = (
  sum: Sum,
  {
    day: { levels, testerShifts, oilFactors },
    terms: [first],
  }: { readonly day: Day; readonly terms: readonly SignTerm[] },
): readonly (readonly (Counted | undefined)[])[] => {
  const all = { from: 0, to: Math.max(1, levels.length) };
  if (first === undefined || oilFactors.length === 1)
    return testerShifts.map(() => Array.from(sum.states, () => all));
  const reached = testerShifts.map((_, k) => sum.reach(k, first, all));
  const total = reached
    .flat()
    .reduce((whole, weights) => whole + weights.reduce((one, weight) => one + weight, 0), 0);
  return reached.map((states) => states.map((weights) => countedAmong(weights, negligible * total)));
};

const countedAmong = (weights: Float64Array, least: number): Counted | undefined => {
  const counts = (weight: number): boolean => !(weight < least);
  const from = weights.findIndex(counts);
  if (from === -1) return undefined;
  const to = weights.findLastIndex(counts) + 1;
  const left = new Set<number>();
  for (let m = from; m < to; m += 1) if (!counts(weights[m] ?? 0)) left.add(m);
  return left.size === 0 ? { from, to } : { from, to, left };
};

const answer = (
  sum: Sum,
  {
    priors,
    day,
    faults,
    evidence,
  }: {
    readonly priors: Priors;
    readonly day: Day;
    readonly faults: Faults;
    readonly evidence: Evidence;
  },
): Posterior => {
  const of = (value: number): number => value / sum.total;
  const hasOil = evidence.cylinders.some(({ dry, wet }) => dry !== undefined && wet !== undefined);
  return {
    cylinders: sum.causes.map((row) => row.map(of)),
    states: priors.states.map(({ id, cause }, e) => ({
      id,
      cause: faults.causes[cause]?.code ?? "",
      probability: of(sum.states[e + 1] ?? 0),
    })),
    pairs: priors.pairs.map(({ cylinders }, g) => ({ cylinders, probability: of(sum.pairs[g] ?? 0) })),
    ...(day.levels.length === 0 ? {} : { level: Math.exp(of(sum.lnLevel)) }),
    ...(hasOil ? { oilFactor: of(sum.oilFactor) } : {}),
    testerShift: of(sum.shift),
  };
};
