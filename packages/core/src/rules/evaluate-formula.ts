// The value of a formula: one switch over numbers. Nothing here can throw, loop or reach anything else.

import type { ArithmeticOperator, Comparison, Formula, FunctionName, VariableName } from "./formula.ts";

export type Variables = Readonly<Partial<Record<VariableName, number>>>;

/** The value of a formula; undefined where a variable is not known or the result is no finite number. */
export const evaluateFormula = (formula: Formula, variables: Variables): number | boolean | undefined => {
  switch (formula.kind) {
    case "number":
      return finite(formula.value);
    case "variable":
      return finite(variables[formula.name]);
    case "negative":
      return negated(evaluateFormula(formula.of, variables));
    case "not":
      return inverse(evaluateFormula(formula.of, variables));
    case "arithmetic":
      return onNumbers(formula, variables, (a, b) => finite(calculate(formula.operator, a, b)));
    case "comparison":
      return onNumbers(formula, variables, (a, b) => compare(formula.operator, a, b));
    case "both":
      return onTruths(formula, variables, (a, b) => a && b);
    case "either":
      return onTruths(formula, variables, (a, b) => a || b);
    case "function":
      return apply(
        formula.name,
        formula.of.map((part) => evaluateFormula(part, variables)),
      );
  }
};

/** Whether two numbers stand in that relation; differences below one part in 1e9 are rounding, not pressure. */
export const compare = (operator: Comparison, a: number, b: number): boolean => {
  const same = Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));
  switch (operator) {
    case "==":
      return same;
    case "!=":
      return !same;
    case "<":
      return a < b && !same;
    case "<=":
      return a < b || same;
    case ">":
      return a > b && !same;
    case ">=":
      return a > b || same;
  }
};

const finite = (value: number | undefined): number | undefined =>
  value !== undefined && Number.isFinite(value) ? value : undefined;

type Value = number | boolean | undefined;
interface Pair {
  readonly left: Formula;
  readonly right: Formula;
}

const negated = (value: Value): Value => (typeof value === "number" ? -value : undefined);
const inverse = (value: Value): Value => (typeof value === "boolean" ? !value : undefined);

const onNumbers = (
  { left, right }: Pair,
  variables: Variables,
  then: (a: number, b: number) => Value,
): Value => {
  const a = evaluateFormula(left, variables);
  const b = evaluateFormula(right, variables);
  return typeof a === "number" && typeof b === "number" ? then(a, b) : undefined;
};

const onTruths = (
  { left, right }: Pair,
  variables: Variables,
  then: (a: boolean, b: boolean) => boolean,
): Value => {
  const a = evaluateFormula(left, variables);
  const b = evaluateFormula(right, variables);
  return typeof a === "boolean" && typeof b === "boolean" ? then(a, b) : undefined;
};

const calculate = (operator: ArithmeticOperator, a: number, b: number): number => {
  switch (operator) {
    case "+":
      return a + b;
    case "-":
      return a - b;
    case "*":
      return a * b;
    case "/":
      return a / b;
    case "^":
      return a ** b;
  }
};

const apply = (name: FunctionName, parts: readonly Value[]): number | undefined => {
  const values = parts.filter((part) => typeof part === "number");
  const [first] = values;
  if (first === undefined || values.length < parts.length) return undefined;
  switch (name) {
    case "min":
      return Math.min(...values);
    case "max":
      return Math.max(...values);
    case "mean":
      return finite(values.reduce((sum, value) => sum + value, 0) / values.length);
    case "abs":
      return Math.abs(first);
    case "round":
      return Math.round(first);
  }
};
