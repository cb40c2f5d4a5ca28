// P(cause | all findings) of every cylinder, by the exact sum over states of the engine, gasket pairs, the level of the
// day, the share of the oil and the scale of the tester. Given these the cylinders are independent.

import type { Evidence } from "../evidence.ts";
import type { Faults } from "../faults/faults.ts";
import { type Day, dayOf, levelChances } from "./day.ts";
import { mostByOil, prepared } from "./prepared.ts";
import { type Priors, priorsOf } from "./priors.ts";
import { type SignTerm, signTerms } from "./signs.ts";
import { Sum, type Term } from "./sum.ts";

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
 *  @throws RangeError where the evidence holds a word that is no class of its finding, or tables lack a cause
 *  @source handbook/diagnosis.md 1 @checked tests/outside/diagnosis.test.ts (computed by another program) */
export const posteriorOf = (evidence: Evidence, faults: Faults): Posterior => {
  const day = dayOf(evidence, faults);
  const priors = priorsOf(evidence, faults);
  const context = { evidence, faults, day };
  const cylinders = evidence.cylinders.map((_, i) => prepared(i, context, priors.states));
  const chances = levelChances(day.levels, priors.states, context);
  const terms = signTerms(evidence, faults);
  const places = placesOf(day, chances);
  const sum = new Sum(priors, cylinders, faults);
  const worth =
    day.oilFactors.length === 1
      ? places
      : worthwhile(places, new Sum(priors, cylinders.map(mostByOil), faults), terms);
  for (const place of worth)
    for (const [c, oilFactor] of day.oilFactors.entries())
      for (const term of terms) sum.add({ ...place, ...term, c, oilFactor });
  return answer(sum, { priors, day, faults, evidence });
};

type DayPlace = Pick<Term, "m" | "k" | "level" | "shift" | "ofStates">;

/** Places of the day, and states there, that add less than this share at any oil are left out: the sum with oil would be
 *  thirteen times as long. */
const negligible = 1e-10;

/** @param reach - the sum with oil as kind to each cause as any. The first term of the signs is the largest and positive, so
 *  that what it reaches bounds what a state at a place can add */
const worthwhile = (
  places: readonly DayPlace[],
  reach: Sum,
  [first]: readonly SignTerm[],
): readonly DayPlace[] => {
  if (first === undefined) return places;
  const reached = places.map((place) => {
    const before = reach.states.slice();
    reach.add({ ...place, ...first, c: 0, oilFactor: 1 });
    return before.map((weight, e) => (reach.states[e] ?? 0) - weight);
  });
  const least = negligible * reach.total;
  return places.flatMap((place, i) => {
    const ofStates = place.ofStates.map((chance, e) => ((reached[i]?.[e] ?? 0) < least ? 0 : chance));
    return ofStates.every((chance) => chance === 0) ? [] : [{ ...place, ofStates }];
  });
};

/** Every level with every tester scale, and the chance of it under each state. */
const placesOf = (
  { levels, testerShifts }: Day,
  chances: readonly (readonly number[])[],
): readonly DayPlace[] =>
  testerShifts.flatMap(({ chance, shift }, k) =>
    (levels.length === 0 ? [1] : levels).map((level, m) => ({
      m,
      k,
      level,
      shift,
      ofStates: chances.map((row) => chance * (row[m] ?? 1)),
    })),
  );

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
    cylinders: sum.causes.map((row) => Array.from(row, of)),
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
