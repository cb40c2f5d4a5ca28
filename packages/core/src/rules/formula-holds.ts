// What a formula yields, found before it meets a reading: a pressure, a plain number, or yes and no.
// A formula that adds a pressure to a number is a slip of the pen in every unit but one; it is refused.

import type { Formula, FunctionName, VariableName } from "./formula.ts";

/** `pressure` in the unit of the readings, `fraction` a plain number, `truth` yes or no. */
export type Holds = "pressure" | "fraction" | "truth";

/** What the formula yields; undefined where its parts do not go together. */
export const formulaHolds = (formula: Formula): Holds | undefined => {
  const power = powerOf(formula);
  if (power === "truth") return "truth";
  if (power === 0) return "fraction";
  return power === 1 ? "pressure" : undefined;
};

/** The power of pressure, "truth", or undefined where the parts do not go together. */
type Power = number | "truth" | undefined;

const powerOf = (formula: Formula): Power => {
  switch (formula.kind) {
    case "number":
      return 0;
    case "variable":
      return powers[formula.name];
    case "negative":
      return numeric(powerOf(formula.of));
    case "not":
      return powerOf(formula.of) === "truth" ? "truth" : undefined;
    case "both":
    case "either":
      return powerOf(formula.left) === "truth" && powerOf(formula.right) === "truth" ? "truth" : undefined;
    case "comparison":
      return same([formula.left, formula.right]) === undefined ? undefined : "truth";
    case "function":
      return functionPower(formula.name, same(formula.of));
    case "arithmetic":
      return arithmeticPower(formula);
  }
};

const powers: Readonly<Record<VariableName, number>> = {
  min: 1,
  max: 1,
  mean: 1,
  median: 1,
  range: 1,
  p: 1,
  ratio: 0,
  cv: 0,
  n: 0,
  lost: 0,
  leastLost: 0,
  mostLost: 0,
};

/** Rounding a pressure would round it in pascals, which nobody means. */
const functionPower = (name: FunctionName, power: number | undefined): Power =>
  name === "round" && power !== 0 ? undefined : power;

const arithmeticPower = ({ operator, left, right }: Extract<Formula, { kind: "arithmetic" }>): Power => {
  if (operator === "+" || operator === "-") return same([left, right]);
  const a = numeric(powerOf(left));
  const b = numeric(powerOf(right));
  if (a === undefined || b === undefined) return undefined;
  if (operator === "*") return a + b;
  if (operator === "/") return a - b;
  return right.kind === "number" ? a * right.value : undefined;
};

const numeric = (power: Power): number | undefined => (power === "truth" ? undefined : power);

const same = (parts: readonly Formula[]): number | undefined => {
  const [first, ...rest] = parts.map((part) => numeric(powerOf(part)));
  return rest.every((power) => power === first) ? first : undefined;
};
