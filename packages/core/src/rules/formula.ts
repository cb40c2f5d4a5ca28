// A rule's formula as a small tree of ours: plain values that can be stored as JSON and walked by one switch.

/** What a formula may speak of. `p` is the cylinder that is judged; the others are of all cylinders of the test.
 *  Pressures: min, max, mean, median, range (max - min), p. Numbers: ratio (min / max), cv (standard deviation
 *  over mean), n (how many cylinders).
 *  Leak-down, fractions of the supply: `lost` is the cylinder that is judged; leastLost, mostLost of all. */
export const variableNames = [
  "min",
  "max",
  "mean",
  "median",
  "range",
  "ratio",
  "cv",
  "n",
  "p",
  "lost",
  "leastLost",
  "mostLost",
] as const;
export type VariableName = (typeof variableNames)[number];

export const functionNames = ["min", "max", "abs", "round", "mean"] as const;
export type FunctionName = (typeof functionNames)[number];

export const arithmeticOperators = ["+", "-", "*", "/", "^"] as const;
export type ArithmeticOperator = (typeof arithmeticOperators)[number];

export const comparisons = ["<", "<=", ">", ">=", "==", "!="] as const;
export type Comparison = (typeof comparisons)[number];

export type Formula =
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "variable"; readonly name: VariableName }
  | { readonly kind: "negative"; readonly of: Formula }
  | {
      readonly kind: "arithmetic";
      readonly operator: ArithmeticOperator;
      readonly left: Formula;
      readonly right: Formula;
    }
  | {
      readonly kind: "comparison";
      readonly operator: Comparison;
      readonly left: Formula;
      readonly right: Formula;
    }
  | { readonly kind: "both" | "either"; readonly left: Formula; readonly right: Formula }
  | { readonly kind: "not"; readonly of: Formula }
  | { readonly kind: "function"; readonly name: FunctionName; readonly of: readonly Formula[] };

/** The variables a formula names. */
export const variablesOf = (formula: Formula): ReadonlySet<VariableName> =>
  new Set(
    formula.kind === "variable" ? [formula.name] : partsOf(formula).flatMap((part) => [...variablesOf(part)]),
  );

const ofLeak: ReadonlySet<VariableName> = new Set<VariableName>(["lost", "leastLost", "mostLost"]);

/** Whether a formula speaks of cranking readings, of leak-down, of both, or of neither. */
export const subjectOf = (formula: Formula): "cranking" | "leak-down" | "both" | "neither" => {
  const names = [...variablesOf(formula)].filter((name) => name !== "n");
  const leak = names.filter((name) => ofLeak.has(name)).length;
  if (leak === 0) return names.length === 0 ? "neither" : "cranking";
  return leak === names.length ? "leak-down" : "both";
};

/** The formulas directly inside a formula. */
const partsOf = (formula: Formula): readonly Formula[] => {
  switch (formula.kind) {
    case "number":
    case "variable":
      return [];
    case "negative":
    case "not":
      return [formula.of];
    case "function":
      return formula.of;
    case "arithmetic":
    case "comparison":
    case "both":
    case "either":
      return [formula.left, formula.right];
  }
};
