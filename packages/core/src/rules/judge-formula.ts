// One formula on one test: yes, no, or too close to tell.

import { compare, evaluateFormula } from "./evaluate-formula.ts";
import type { Comparison, Formula } from "./formula.ts";
import { type Uncertain, uncertaintyOf } from "./uncertainty.ts";
import { leakVariablesFrom, variablesFrom } from "./variables.ts";

/** `near`: the limit lies within the 95 % interval, two standard uncertainties either way. */
export type Closeness = "met" | "near" | "not-met" | undefined;

/** The readings of a test, and which of them is `p`. */
export interface Bench {
  readonly readings: readonly Uncertain[];
  readonly own?: number;
  /** What `readings` are: gauge pressures, or fractions held in a leak-down. */
  readonly of: "pressures" | "held";
  readonly parts: "own" | "own-and-common";
}

/** Judges a formula that says yes or no; undefined where a value is missing. */
export const judgeFormula = (formula: Formula, bench: Bench): Closeness => {
  switch (formula.kind) {
    case "comparison":
      return judgeComparison(formula.operator, formula.left, formula.right, bench);
    case "not":
      return opposite(judgeFormula(formula.of, bench));
    case "both":
      return least(judgeFormula(formula.left, bench), judgeFormula(formula.right, bench));
    case "either":
      return opposite(
        least(opposite(judgeFormula(formula.left, bench)), opposite(judgeFormula(formula.right, bench))),
      );
    case "number":
    case "variable":
    case "negative":
    case "arithmetic":
    case "function":
      return undefined;
  }
};

/** The value of a formula that yields a number, at readings as taken or moved. */
export const valueOf = (formula: Formula, bench: Bench): number | undefined =>
  valueAt(formula, bench)(bench.readings.map(({ pressure }) => pressure));

/** Its standard uncertainty. */
export const uncertaintyOfFormula = (formula: Formula, bench: Bench): number | undefined =>
  uncertaintyOf(valueAt(formula, bench), bench.readings, bench.parts);

const valueAt =
  (formula: Formula, { own, of }: Bench) =>
  (pressures: readonly number[]): number | undefined => {
    const variables = of === "held" ? leakVariablesFrom : variablesFrom;
    const value = evaluateFormula(
      formula,
      variables(pressures, own === undefined ? undefined : pressures[own]),
    );
    return typeof value === "number" ? value : undefined;
  };

const judgeComparison = (operator: Comparison, left: Formula, right: Formula, bench: Bench): Closeness => {
  const a = valueOf(left, bench);
  const b = valueOf(right, bench);
  const u = uncertaintyOfFormula({ kind: "arithmetic", operator: "-", left, right }, bench);
  if (a === undefined || b === undefined || u === undefined) return undefined;
  if (Math.abs(a - b) < 2 * u) return "near";
  return compare(operator, a, b) ? "met" : "not-met";
};

const opposite = (closeness: Closeness): Closeness =>
  closeness === "met" ? "not-met" : closeness === "not-met" ? "met" : closeness;

/** Both must hold: one that surely fails settles it, then one that is unknown, then one that is near. */
const least = (a: Closeness, b: Closeness): Closeness => {
  if (a === "not-met" || b === "not-met") return "not-met";
  if (a === undefined || b === undefined) return undefined;
  return a === "near" || b === "near" ? "near" : "met";
};
