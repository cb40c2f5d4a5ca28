// One cylinder at one tester shift, one oil factor and one term of the signs: what the sum asks of it, for many levels at
// once. Plain loops that write in place, for these are the ones that run a million times.

import { levelColumn, ofParts, toParts } from "./level-parts.ts";
import type { PreparedCylinder } from "./prepared.ts";
import { rowAt } from "./rows.ts";

/** Neighbouring places of the grid of levels, the last one excluded. */
export interface Levels {
  readonly from: number;
  readonly to: number;
}

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
  /** P·Lik of its own faults without the level, the same by part, and what is given by part. */
  readonly #weights: Float64Array;
  readonly #parts: Float64Array;
  readonly #given: Float64Array;
  /** By level: Σ over the faults of the cylinder itself of P·Lik, and that with the part of no fault. */
  readonly #faulty: Float64Array;
  readonly #own: Float64Array;
  /** By level, under the state looked at: Σ_h P(h | state)·Lik(h). */
  readonly #sums: Float64Array;
  /** By level: what weights over sums add up to, for its own faults and for no fault. */
  readonly #forFaults: Float64Array;
  readonly #forSound: Float64Array;
  constructor(
    prepared: PreparedCylinder,
    { local, oil }: { readonly local: readonly number[]; readonly oil: Float64Array },
    { levels, ...known }: { readonly levels: number; readonly sound: number; readonly pair: number },
  ) {
    const width = local.length;
    const parts = prepared.level.values.width;
    this.#prepared = prepared;
    this.#known = known;
    this.#oil = oil;
    this.#local = Float64Array.from(local);
    this.causes = new Float64Array(width);
    this.#unlevelled = new Float64Array(width);
    this.#weights = new Float64Array(width);
    this.#parts = new Float64Array(parts);
    this.#given = new Float64Array(parts);
    this.#faulty = new Float64Array(levels);
    this.#own = new Float64Array(levels);
    this.#sums = new Float64Array(levels);
    this.insteadOfSum = new Float64Array(levels);
    this.inPairs = new Float64Array(levels);
    this.#forFaults = new Float64Array(levels);
    this.#forSound = new Float64Array(levels);
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
    const parts = this.#parts;
    toParts(level, weights, parts);
    const { values } = level.values;
    const soundLevel = this.#levelOf(sound);
    const faulty = this.#faulty;
    const own = this.#own;
    for (let m = from; m < to; m += 1) {
      const row = rowAt(level.values, m);
      let sum = 0;
      for (let b = 0; b < parts.length; b += 1) sum += (parts[b] ?? 0) * (values[row + b] ?? 0);
      faulty[m] = sum;
      own[m] = sum + ofSound * (soundLevel[m] ?? 0);
    }
  }

  /** Multiplies the product of the cylinders by the sum of this one, by level. Under a state that meets all alike, no fault of
   *  its own means the cause of the state, with the level of an even engine; so does the same cause in the cylinder itself,
   *  which cannot be told from it. */
  multiply(product: Float64Array, { cause, share, even }: MeetsOne, { from, to }: Levels): void {
    const sums = this.#sums;
    const faulty = this.#faulty;
    const own = this.#own;
    const { alone, alike, seen } = this.#under(cause);
    if (share === undefined) {
      for (let m = from; m < to; m += 1) {
        sums[m] = (faulty[m] ?? 0) + alike * (even[m] ?? 0);
      }
      if (alone !== 0) add(sums, { amount: -alone, of: this.#levelOf(cause), levels: { from, to } });
    } else {
      for (let m = from; m < to; m += 1) {
        sums[m] = (1 - share) * (own[m] ?? 0);
      }
      if (share !== 0) add(sums, { amount: share * seen, of: this.#levelOf(cause), levels: { from, to } });
    }
    for (let m = from; m < to; m += 1) {
      product[m] = (product[m] ?? 0) * (sums[m] ?? 0);
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
  give(weights: Float64Array, { cause, share, even }: MeetsOne, { from, to }: Levels): void {
    const { inPairs } = this;
    const sums = this.#sums;
    const forFaults = this.#forFaults;
    const forSound = this.#forSound;
    const { alone, alike, seen } = this.#under(cause);
    const ofLevel = share === undefined ? -alone : share * seen;
    const level = ofLevel === 0 ? even : this.#levelOf(cause);
    const ofSound = share === undefined ? 0 : 1 - share;
    const ofFaults = share === undefined ? 1 : ofSound;
    let toPairs = 0;
    let toCause = 0;
    for (let m = from; m < to; m += 1) {
      const weight = weights[m] ?? 0;
      if (weight === 0) continue;
      const paired = inPairs[m] ?? 0;
      toPairs += paired;
      const perSum = (weight - paired) / (sums[m] ?? 0);
      forFaults[m] = (forFaults[m] ?? 0) + perSum * ofFaults;
      forSound[m] = (forSound[m] ?? 0) + perSum * ofSound;
      const alikeHere = share === undefined ? alike * (even[m] ?? 0) : 0;
      toCause += perSum * (alikeHere + ofLevel * (level[m] ?? 0));
    }
    const { causes } = this;
    const { pair } = this.#known;
    causes[pair] = (causes[pair] ?? 0) + toPairs;
    causes[cause] = (causes[cause] ?? 0) + toCause;
  }

  /** Gives what the levels have gathered to the causes that are its own, and begins anew. */
  settle({ from, to }: Levels): void {
    const { level } = this.#prepared;
    const { values } = level.values;
    const { sound } = this.#known;
    const soundLevel = this.#levelOf(sound);
    const given = this.#given.fill(0);
    const forFaults = this.#forFaults;
    const forSound = this.#forSound;
    let toSound = 0;
    for (let m = from; m < to; m += 1) {
      const amount = forFaults[m] ?? 0;
      const row = rowAt(level.values, m);
      for (let b = 0; b < given.length; b += 1) given[b] = (given[b] ?? 0) + amount * (values[row + b] ?? 0);
      toSound += (forSound[m] ?? 0) * (soundLevel[m] ?? 0);
      forFaults[m] = 0;
      forSound[m] = 0;
    }
    const { causes } = this;
    for (let h = 0; h < causes.length; h += 1) {
      const own = (this.#weights[h] ?? 0) * ofParts(level, given, h);
      causes[h] = (causes[h] ?? 0) + own;
    }
    const ofSound = (this.#local[sound] ?? 0) * (this.#unlevelled[sound] ?? 0);
    causes[sound] = (causes[sound] ?? 0) + ofSound * toSound;
  }

  /** Without the level: the cause of a state by itself and in place of no fault, both with their chances, and Lik. */
  #under(cause: number): { readonly alone: number; readonly alike: number; readonly seen: number } {
    const seen = this.#unlevelled[cause] ?? 0;
    const alone = this.#local[cause] ?? 0;
    const sound = this.#local[this.#known.sound] ?? 0;
    return { seen, alone: alone * seen, alike: (sound + alone) * seen };
  }

  #levelOf(cause: number): Float64Array {
    return levelColumn(this.#prepared.level, cause, this.#own.length);
  }
}

const add = (
  sums: Float64Array,
  {
    amount,
    of,
    levels: { from, to },
  }: { readonly amount: number; readonly of: Float64Array; readonly levels: Levels },
): void => {
  for (let m = from; m < to; m += 1) {
    sums[m] = (sums[m] ?? 0) + amount * (of[m] ?? 0);
  }
};
