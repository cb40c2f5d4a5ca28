// One cylinder at one tester shift, one oil factor and one term of the signs: what the sum asks of it, for many levels at
// once. Plain loops that write in place, for these are the ones that run a million times.

import { type Levels, levelColumn, sumCauses, sumPlaces } from "./level-parts.ts";
import type { PreparedCylinder } from "./prepared.ts";
import { rowAt } from "./rows.ts";

/** A state of the engine as one cylinder sees it. */
export interface MeetsOne {
  readonly cause: number;
  /** The chance of being met; absent where all are met alike, with the likelihood of the level of an unharmed one, by level. */
  readonly share?: number;
  readonly even: Float64Array;
}

export class Looked {
  /** What the weights give to each cause. */
  readonly causes: Float64Array;
  /** By level, under the state looked at: what a factor of the product changes by when this cylinder surely leaks to its
   *  neighbour, and the weight of the pairs the cylinder is in. */
  readonly insteadOfSum: Float64Array;
  readonly inPairs: Float64Array;
  /** Likelihoods with the oil factor, aligned with the causes. */
  readonly #oil: Float64Array;
  readonly #prepared: PreparedCylinder;
  readonly #known: { readonly sound: number; readonly pair: number };
  readonly #local: Float64Array;
  /** Lik(h) with the keeps of the signs, without its level. */
  readonly #unlevelled: Float64Array;
  /** P·Lik of its own faults without the level, and what the levels give to each cause. */
  readonly #weights: Float64Array;
  readonly #given: Float64Array;
  /** By level: Σ over the faults of the cylinder itself of P·Lik, and that with the part of no fault. */
  readonly #faulty: Float64Array;
  readonly #own: Float64Array;
  /** By level, under the state looked at: Σ_h P(h | state)·Lik(h). */
  readonly #sums: Float64Array;
  /** By level: what weights over sums add up to, under the states that meet all alike and under the others; these alone
   *  leave room for no fault. */
  readonly #alikeGiven: Float64Array;
  readonly #someGiven: Float64Array;
  constructor(
    prepared: PreparedCylinder,
    { local, oil }: { readonly local: readonly number[]; readonly oil: Float64Array },
    { levels, ...known }: { readonly levels: number; readonly sound: number; readonly pair: number },
  ) {
    const width = local.length;
    this.#prepared = prepared;
    this.#known = known;
    this.#oil = oil;
    this.#local = Float64Array.from(local);
    this.causes = new Float64Array(width);
    this.#unlevelled = new Float64Array(width);
    this.#weights = new Float64Array(width);
    this.#given = new Float64Array(width);
    this.#faulty = new Float64Array(levels);
    this.#own = new Float64Array(levels);
    this.#sums = new Float64Array(levels);
    this.insteadOfSum = new Float64Array(levels);
    this.inPairs = new Float64Array(levels);
    this.#alikeGiven = new Float64Array(levels);
    this.#someGiven = new Float64Array(levels);
  }

  /** @param keeps - aligned with the causes: chance that one brings none of the signs @param levels - to look at */
  look(k: number, keeps: readonly number[], { from, to }: Levels): void {
    const { fixed, byTester, level } = this.#prepared;
    const oil = this.#oil;
    const fromTester = rowAt(byTester, k);
    const local = this.#local;
    const unlevelled = this.#unlevelled;
    const weights = this.#weights;
    for (let h = 0; h < local.length; h += 1) {
      const ofDay = (oil[h] ?? 0) * (byTester.values[fromTester + h] ?? 0);
      const value = (fixed[h] ?? 0) * ofDay * (keeps[h] ?? 0);
      unlevelled[h] = value;
      weights[h] = value * (local[h] ?? 0);
    }
    const { sound } = this.#known;
    const ofSound = weights[sound] ?? 0;
    weights[sound] = 0;
    const soundLevel = this.#levelOf(sound);
    const faulty = this.#faulty;
    const own = this.#own;
    sumCauses(level, weights, { sums: faulty, levels: { from, to } });
    for (let m = from; m < to; m += 1) own[m] = (faulty[m] ?? 0) + ofSound * (soundLevel[m] ?? 0);
  }

  /** Multiplies the product of the cylinders by the sum of this one, by level. Under a state that meets all alike, no fault of
   *  its own means the cause of the state, with the level of an even engine; so does the same cause in the cylinder itself,
   *  which cannot be told from it. */
  multiply(product: Float64Array, meets: MeetsOne, { from, to }: Levels): void {
    const sums = this.#sums;
    const { own, ofOwn, even, ofEven, level, ofLevel } = this.#under(meets);
    for (let m = from; m < to; m += 1) {
      const sum = ofOwn * (own[m] ?? 0) + ofEven * (even[m] ?? 0) + ofLevel * (level[m] ?? 0);
      sums[m] = sum;
      product[m] = (product[m] ?? 0) * sum;
    }
  }

  /** Makes ready for the pairs the cylinder may be in, after `multiply`. */
  pair({ from, to }: Levels): void {
    const { pair } = this.#known;
    const seen = this.#unlevelled[pair] ?? 0;
    const level = this.#levelOf(pair);
    const sums = this.#sums;
    const { insteadOfSum, inPairs } = this;
    for (let m = from; m < to; m += 1) {
      insteadOfSum[m] = (seen * (level[m] ?? 0)) / (sums[m] ?? 0);
      inPairs[m] = 0;
    }
  }

  /** Shares the weight of a state out, by level: to the pair's cause, to the state's cause, the rest to what is its own. */
  give(weights: Float64Array, meets: MeetsOne, { from, to }: Levels): void {
    const { causes, inPairs } = this;
    const sums = this.#sums;
    const { ofOwn, even, ofEven, level, ofLevel } = this.#under(meets);
    const given = meets.share === undefined ? this.#alikeGiven : this.#someGiven;
    let toPairs = 0;
    let toCause = 0;
    for (let m = from; m < to; m += 1) {
      const weight = weights[m] ?? 0;
      if (weight === 0) continue;
      const paired = inPairs[m] ?? 0;
      const perSum = (weight - paired) / (sums[m] ?? 0);
      toPairs += paired;
      toCause += perSum * (ofEven * (even[m] ?? 0) + ofLevel * (level[m] ?? 0));
      given[m] = (given[m] ?? 0) + perSum * ofOwn;
    }
    const { pair } = this.#known;
    causes[pair] = (causes[pair] ?? 0) + toPairs;
    causes[meets.cause] = (causes[meets.cause] ?? 0) + toCause;
  }

  /** Gives what the levels have gathered to the causes that are its own, and begins anew. */
  settle({ from, to }: Levels): void {
    const { sound } = this.#known;
    const soundLevel = this.#levelOf(sound);
    const given = this.#given;
    const alikeGiven = this.#alikeGiven;
    const someGiven = this.#someGiven;
    let toSound = 0;
    for (let m = from; m < to; m += 1) {
      const some = someGiven[m] ?? 0;
      toSound += some * (soundLevel[m] ?? 0);
      alikeGiven[m] = (alikeGiven[m] ?? 0) + some;
    }
    sumPlaces(this.#prepared.level, alikeGiven, { sums: given, levels: { from, to } });
    alikeGiven.fill(0, from, to);
    someGiven.fill(0, from, to);
    const { causes } = this;
    for (let h = 0; h < causes.length; h += 1)
      causes[h] = (causes[h] ?? 0) + (this.#weights[h] ?? 0) * (given[h] ?? 0);
    const ofSound = (this.#local[sound] ?? 0) * (this.#unlevelled[sound] ?? 0);
    causes[sound] = (causes[sound] ?? 0) + ofSound * toSound;
  }

  /** Σ_h P(h | state)·Lik(h), by level, in three terms: its own faults, where it is not met with no fault among them; the cause
   *  of the state in an even engine; the same cause with the level that it has in one cylinder. */
  #under({ cause, share, even }: MeetsOne) {
    const seen = this.#unlevelled[cause] ?? 0;
    if (share === undefined) {
      const alone = this.#local[cause] ?? 0;
      const sound = this.#local[this.#known.sound] ?? 0;
      const level = this.#levelOf(cause);
      return {
        own: this.#faulty,
        ofOwn: 1,
        even,
        ofEven: (sound + alone) * seen,
        level,
        ofLevel: -alone * seen,
      };
    }
    const own = this.#own;
    // a level of no account is not worth making
    const level = share * seen === 0 ? own : this.#levelOf(cause);
    return { own, ofOwn: 1 - share, even: own, ofEven: 0, level, ofLevel: share * seen };
  }

  #levelOf(cause: number): Float64Array {
    return levelColumn(this.#prepared.level, cause);
  }
}
