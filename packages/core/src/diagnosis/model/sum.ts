// The sum itself: at each place of the day every state and every pair, given which the cylinders are independent.
// Arrays are written in place, for this is the one loop that runs a million times.

import type { Faults } from "../faults/faults.ts";
import { pairCause, placeOfCause, soundCause } from "./known-causes.ts";
import type { PreparedCylinder } from "./prepared.ts";
import type { Priors, State } from "./priors.ts";

/** Where on the grids of the day, and what the day and the signs give there. */
export interface Term {
  /** Places of the level, the oil factor and the tester shift. */
  readonly m: number;
  readonly c: number;
  readonly k: number;
  /** Factor of this term, negative for every other one that present signs expand into. */
  readonly sign: number;
  /** Aligned with the causes: chance that one brings none of the signs of this term. */
  readonly keeps: readonly number[];
  /** Chance of the place, aligned with the states, the sound engine first. */
  readonly ofStates: readonly number[];
  readonly level: number;
  readonly oilFactor: number;
  readonly shift: number;
}

export class Sum {
  total = 0;
  /** Sums of the weight times the value, of the level times its logarithm. */
  lnLevel = 0;
  oilFactor = 0;
  shift = 0;
  /** The sound engine first. */
  readonly states: Float64Array;
  readonly pairs: Float64Array;
  readonly #priors: Priors;
  readonly #cylinders: readonly Looked[];

  constructor(priors: Priors, cylinders: readonly PreparedCylinder[], faults: Faults) {
    const known = { sound: placeOfCause(faults, soundCause), pair: placeOfCause(faults, pairCause) };
    this.#priors = priors;
    this.#cylinders = cylinders.map(
      (one, i) => new Looked(one, { ...known, local: priors.local[i] ?? [], cylinder: i }),
    );
    this.states = new Float64Array(priors.states.length + 1);
    this.pairs = new Float64Array(priors.pairs.length);
  }

  /** By cylinder, aligned with the causes. */
  get causes(): readonly Float64Array[] {
    return this.#cylinders.map(({ causes }) => causes);
  }

  /** @returns the weight of the place */
  add(term: Term): number {
    for (const cylinder of this.#cylinders) cylinder.look(term);
    let weight = this.#addState(undefined, 0, term);
    const { states } = this.#priors;
    for (let e = 0; e < states.length; e += 1) weight += this.#addState(states[e], e + 1, term);
    for (const cylinder of this.#cylinders) cylinder.giveOwn();
    this.total += weight;
    this.lnLevel += weight * Math.log(term.level);
    this.oilFactor += weight * term.oilFactor;
    this.shift += weight * term.shift;
    return weight;
  }

  /** No pair and every pair, under one state. @returns their weight */
  #addState(state: State | undefined, e: number, { sign, ofStates, m }: Term): number {
    const { noState, noPair, pairs } = this.#priors;
    let product = sign * (state?.chance ?? noState) * (ofStates[e] ?? 0);
    if (product === 0) return 0;
    for (const cylinder of this.#cylinders) product *= cylinder.under(state, e, m);
    if (product === 0) return 0;
    let weight = product * noPair;
    for (let g = 0; g < pairs.length; g += 1) weight += this.#addPair(g, product);
    this.states[e] = (this.states[e] ?? 0) + weight;
    for (const cylinder of this.#cylinders) cylinder.give(state, weight);
    return weight;
  }

  #addPair(g: number, product: number): number {
    const pair = this.#priors.pairs[g];
    if (pair === undefined) return 0;
    const one = this.#cylinders[pair.cylinders[0]];
    const other = this.#cylinders[pair.cylinders[1]];
    if (one === undefined || other === undefined) return 0;
    const weight = product * pair.chance * one.insteadOfSum() * other.insteadOfSum();
    this.pairs[g] = (this.pairs[g] ?? 0) + weight;
    one.setApart(weight);
    other.setApart(weight);
    return weight;
  }
}

/** One cylinder at one place of the day. */
class Looked {
  /** What the weights give to each cause. */
  readonly causes: Float64Array;
  readonly #prepared: PreparedCylinder;
  readonly #local: readonly number[];
  readonly #sound: number;
  readonly #pair: number;
  readonly #cylinder: number;
  /** Lik(h) with the keeps of the signs, and the same without its level. */
  readonly #seen: Float64Array;
  readonly #unlevelled: Float64Array;
  /** Σ over the faults of the cylinder itself; the part of no fault. */
  #faulty = 0;
  #sounds = 0;
  /** Under the state looked at: the sum, its even part, the weight of the pairs the cylinder is in. */
  #sum = 0;
  #even = 0;
  #inPairs = 0;
  /** What weights over sums add up to, for its own faults and for no fault. */
  #forFaults = 0;
  #forSound = 0;

  constructor(
    one: PreparedCylinder,
    known: {
      readonly local: readonly number[];
      readonly sound: number;
      readonly pair: number;
      readonly cylinder: number;
    },
  ) {
    this.#prepared = one;
    this.#local = known.local;
    this.#sound = known.sound;
    this.#pair = known.pair;
    this.#cylinder = known.cylinder;
    this.causes = new Float64Array(one.fixed.length);
    this.#seen = new Float64Array(one.fixed.length);
    this.#unlevelled = new Float64Array(one.fixed.length);
  }

  look({ m, c, k, keeps }: Term): void {
    const { fixed, byLevel, byOil, byTester } = this.#prepared;
    const ofLevel = byLevel[m];
    const ofOil = byOil[c];
    const ofTester = byTester[k];
    if (ofLevel === undefined || ofOil === undefined || ofTester === undefined) return;
    let faulty = 0;
    for (let h = 0; h < fixed.length; h += 1) {
      const value = (fixed[h] ?? 0) * (ofOil[h] ?? 0) * (ofTester[h] ?? 0) * (keeps[h] ?? 0);
      const seen = value * (ofLevel[h] ?? 0);
      this.#unlevelled[h] = value;
      this.#seen[h] = seen;
      if (h !== this.#sound) faulty += (this.#local[h] ?? 0) * seen;
    }
    this.#faulty = faulty;
    this.#sounds = (this.#local[this.#sound] ?? 0) * (this.#seen[this.#sound] ?? 0);
    this.#forFaults = 0;
    this.#forSound = 0;
  }

  /** Σ_h P(h | state)·Lik(h). Under a state that meets all alike, no fault of its own means the cause of the state, with
   *  the level of an even engine; so does the same cause in the cylinder itself, which cannot be told from it. */
  under(state: State | undefined, e: number, m: number): number {
    this.#inPairs = 0;
    this.#sum = this.#faulty + this.#sounds;
    if (state?.meets.kind === "all") {
      const ofLevel = this.#prepared.even[e - 1]?.[m] ?? 0;
      const own = this.#local[state.cause] ?? 0;
      const chance = (this.#local[this.#sound] ?? 0) + own;
      this.#even = chance * (this.#unlevelled[state.cause] ?? 0) * ofLevel;
      this.#sum = this.#faulty - own * (this.#seen[state.cause] ?? 0) + this.#even;
    } else if (state !== undefined) {
      const share = this.#shareOf(state);
      this.#sum = (1 - share) * this.#sum + share * (this.#seen[state.cause] ?? 0);
    }
    return this.#sum;
  }

  #shareOf({ meets }: State): number {
    return meets.kind === "all" ? 0 : (meets.shares[this.#cylinder] ?? 0);
  }

  /** What a factor of the product changes by when this cylinder surely leaks to its neighbour. */
  insteadOfSum(): number {
    return (this.#seen[this.#pair] ?? 0) / this.#sum;
  }

  setApart(weight: number): void {
    this.#inPairs += weight;
  }

  /** Shares the weight of a state out: to the pair's cause, to the state's cause, the rest to what is its own. */
  give(state: State | undefined, weight: number): void {
    this.#add(this.#pair, this.#inPairs);
    const perSum = (weight - this.#inPairs) / this.#sum;
    if (state === undefined) {
      this.#forFaults += perSum;
      this.#forSound += perSum;
    } else if (state.meets.kind === "all") {
      this.#forFaults += perSum;
      const own = (this.#local[state.cause] ?? 0) * (this.#seen[state.cause] ?? 0);
      this.#add(state.cause, perSum * (this.#even - own));
    } else {
      const share = this.#shareOf(state);
      this.#forFaults += perSum * (1 - share);
      this.#forSound += perSum * (1 - share);
      this.#add(state.cause, perSum * share * (this.#seen[state.cause] ?? 0));
    }
  }

  #add(cause: number, amount: number): void {
    this.causes[cause] = (this.causes[cause] ?? 0) + amount;
  }

  giveOwn(): void {
    for (let h = 0; h < this.causes.length; h += 1) {
      const part = h === this.#sound ? this.#forSound : this.#forFaults;
      this.#add(h, part * (this.#local[h] ?? 0) * (this.#seen[h] ?? 0));
    }
  }
}
