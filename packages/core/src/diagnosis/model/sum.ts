// The sum itself: at each place of the day every state and every pair, given which the cylinders are independent. At one
// tester shift, oil factor and term of the signs a state is summed over all levels at once.

import type { Faults } from "../faults/faults.ts";
import type { Day } from "./day.ts";
import { pairCause, placeOfCause, soundCause } from "./known-causes.ts";
import type { Levels } from "./level-parts.ts";
import type { Looked } from "./looked.ts";
import { type Met, metBy } from "./met.ts";
import type { PreparedCylinder } from "./prepared.ts";
import type { Priors } from "./priors.ts";
import type { SignTerm } from "./signs.ts";
import { type Views, viewsOf } from "./views.ts";

/** Levels that count under a state, but for those left out among them. */
export interface Counted extends Levels {
  readonly left?: ReadonlySet<number>;
}

/** Beside 1 a share so small cannot be seen in any digit that is told. */
const beyondDigits = 1e-14;

export class Sum {
  total = 0;
  /** Sums of the weight times the value, of the level times its logarithm. */
  lnLevel = 0;
  oilFactor = 0;
  shift = 0;
  /** The sound engine first. */
  readonly states: Float64Array;
  readonly pairs: Float64Array;
  readonly #day: Day;
  readonly #priors: Priors;
  readonly #cylinders: readonly Views[];
  readonly #met: readonly Met[];
  readonly #lnLevels: readonly number[];
  /** By level, under the state looked at: the product of the cylinders that are the same at any oil factor, of all of them,
   *  its weight with that of every pair, and the weight at all oil factors. */
  readonly #same: Float64Array;
  readonly #product: Float64Array;
  readonly #weights: Float64Array;
  readonly #atAnyOil: Float64Array;
  /** By pair, under the state looked at. */
  readonly #ofPairs: Float64Array;

  /** @param levels - P(M | state), by level, the sound engine first */
  constructor(
    prepared: readonly PreparedCylinder[],
    priors: Priors,
    {
      day,
      faults,
      levels,
    }: { readonly day: Day; readonly faults: Faults; readonly levels: readonly (readonly number[])[] },
  ) {
    const count = Math.max(1, day.levels.length);
    const sound = placeOfCause(faults, soundCause);
    const known = { levels: count, sound, pair: placeOfCause(faults, pairCause) };
    this.#day = day;
    this.#priors = priors;
    this.#cylinders = prepared.map((one, i) => viewsOf(one, priors.local[i] ?? [], known));
    this.#met = metBy(priors, prepared, { sound, levels });
    this.#lnLevels = day.levels.map((level) => Math.log(level));
    this.states = new Float64Array(this.#met.length);
    this.pairs = new Float64Array(priors.pairs.length);
    this.#same = new Float64Array(count);
    this.#product = new Float64Array(count);
    this.#weights = new Float64Array(count);
    this.#atAnyOil = new Float64Array(count);
    this.#ofPairs = new Float64Array(priors.pairs.length);
  }

  /** By cylinder, aligned with the causes. */
  get causes(): readonly (readonly number[])[] {
    return this.#cylinders.map(({ kindest, byOil }) =>
      Array.from(kindest.causes, (_, h) => byOil.reduce((sum, { causes }) => sum + (causes[h] ?? 0), 0)),
    );
  }

  /** What each state would weigh at a tester shift, were the oil as kind to each cause as any.
   *  @returns by state, then by level */
  reach(k: number, { sign, keeps }: SignTerm, levels: Levels): readonly Float64Array[] {
    const views = this.#cylinders.map(({ kindest }) => kindest);
    for (const one of views) one.look(k, keeps, levels);
    return this.#met.map((met) => {
      this.#begin(met, this.#chanceOf(k, sign), levels);
      this.#multiply(views, met, levels);
      this.#weigh(views, levels);
      return this.#weights.slice();
    });
  }

  /** Adds what counts at a tester shift, at every oil factor. @param counted - levels, by state; undefined for none */
  add(k: number, { sign, keeps }: SignTerm, counted: readonly (Counted | undefined)[]): void {
    const some = counted.filter((levels) => levels !== undefined);
    const from = Math.min(...some.map((levels) => levels.from));
    const to = Math.max(...some.map((levels) => levels.to));
    const views = this.#cylinders.flatMap(({ byOil }) => byOil);
    for (const one of views) one.look(k, keeps, { from, to });
    for (let e = 0; e < this.#met.length; e += 1) {
      const met = this.#met[e];
      const levels = counted[e];
      if (met === undefined || levels === undefined) continue;
      this.#begin(met, this.#chanceOf(k, sign), levels);
      this.#addState(e, { met, levels, shift: this.#day.testerShifts[k]?.shift ?? 0 });
    }
    for (const one of views) one.settle({ from, to });
  }

  #chanceOf(k: number, sign: number): number {
    return sign * (this.#day.testerShifts[k]?.chance ?? 0);
  }

  /** Under one state, before any cylinder. */
  #begin(met: Met, chance: number, { from, to, left }: Levels & Pick<Counted, "left">): void {
    const ofState = chance * met.chance;
    for (let m = from; m < to; m += 1)
      this.#product[m] = left?.has(m) === true ? 0 : ofState * (met.levels[m] ?? 1);
  }

  /** The cylinders that are there, in their places. */
  #multiply(views: readonly (Looked | undefined)[], met: Met, levels: Levels): void {
    const isPaired = this.pairs.length > 0;
    for (let i = 0; i < views.length; i += 1) {
      const one = views[i];
      const meets = met.cylinders[i];
      if (one === undefined || meets === undefined) continue;
      one.multiply(this.#product, meets, levels);
      if (isPaired) one.pair(levels);
    }
  }

  /** No pair and every pair. */
  #weigh(views: readonly (Looked | undefined)[], { from, to }: Levels): void {
    const { noPair, pairs } = this.#priors;
    const product = this.#product;
    const weights = this.#weights;
    for (let m = from; m < to; m += 1) weights[m] = (product[m] ?? 0) * noPair;
    for (let g = 0; g < pairs.length; g += 1) {
      const pair = pairs[g];
      const one = views[pair?.cylinders[0] ?? 0];
      const other = views[pair?.cylinders[1] ?? 0];
      if (pair === undefined || one === undefined || other === undefined) continue;
      const { inPairs, insteadOfSum } = one;
      const { inPairs: otherInPairs, insteadOfSum: otherInstead } = other;
      let sum = 0;
      for (let m = from; m < to; m += 1) {
        const ofState = product[m] ?? 0;
        if (ofState === 0) continue;
        const weight = ofState * pair.chance * (insteadOfSum[m] ?? 0) * (otherInstead[m] ?? 0);
        weights[m] = (weights[m] ?? 0) + weight;
        inPairs[m] = (inPairs[m] ?? 0) + weight;
        otherInPairs[m] = (otherInPairs[m] ?? 0) + weight;
        sum += weight;
      }
      this.#ofPairs[g] = sum;
    }
  }

  /** Weighs a state at every oil factor and shares its weight out. */
  #addState(
    e: number,
    { met, levels, shift }: { readonly met: Met; readonly levels: Levels; readonly shift: number },
  ): void {
    const { oilFactors } = this.#day;
    const same = this.#cylinders.map(({ byOil }) => (byOil.length === 1 ? byOil[0] : undefined));
    this.#multiply(same, met, levels);
    this.#same.set(this.#product);
    this.#atAnyOil.fill(0);
    for (let c = 0; c < oilFactors.length; c += 1) {
      const oiled = this.#cylinders.map(({ byOil }) => (byOil.length === 1 ? undefined : byOil[c]));
      this.#product.set(this.#same);
      this.#multiply(oiled, met, levels);
      this.#weigh(
        this.#cylinders.map(({ byOil }) => byOil[byOil.length === 1 ? 0 : c]),
        levels,
      );
      const weight = this.#gather(levels);
      this.#give(oiled, this.#weights, { met, levels });
      this.states[e] = (this.states[e] ?? 0) + weight;
      for (let g = 0; g < this.pairs.length; g += 1)
        this.pairs[g] = (this.pairs[g] ?? 0) + (this.#ofPairs[g] ?? 0);
      this.total += weight;
      this.oilFactor += weight * (oilFactors[c] ?? 1);
      this.shift += weight * shift;
    }
    this.#give(same, this.#atAnyOil, { met, levels });
  }

  #give(
    views: readonly (Looked | undefined)[],
    weights: Float64Array,
    { met, levels }: { readonly met: Met; readonly levels: Levels },
  ): void {
    for (let i = 0; i < views.length; i += 1) {
      const meets = met.cylinders[i];
      if (meets !== undefined) views[i]?.give(weights, meets, levels);
    }
  }

  /** Adds the weights of one oil factor to those of all; what is lost beside the sum so far is nothing. @returns their sum */
  #gather({ from, to }: Levels): number {
    const weights = this.#weights;
    const atAnyOil = this.#atAnyOil;
    const lost = this.total * beyondDigits;
    let sum = 0;
    for (let m = from; m < to; m += 1) {
      const weight = weights[m] ?? 0;
      if (Math.abs(weight) <= lost) {
        weights[m] = 0;
        continue;
      }
      atAnyOil[m] = (atAnyOil[m] ?? 0) + weight;
      sum += weight;
      this.lnLevel += weight * (this.#lnLevels[m] ?? 0);
    }
    return sum;
  }
}
