export {
  type Limit,
  type LimitUnit,
  type Rule,
  type RuleFamily,
  type RuleSheet,
  type RuleStatus,
} from "./rule.ts";
export { appliesTo, type Applies, type EngineFacts } from "./applies.ts";
export { type Formula, type VariableName } from "./formula.ts";
export { evaluateFormula, type Variables } from "./evaluate-formula.ts";
export { parseFormula, type FormulaFault, type FormulaReading } from "./parse-formula.ts";
export { readRuleSheet } from "./read-rule-sheet.ts";
export {
  judgeRule,
  judgeRules,
  type RuleOnCylinder,
  type RuleFinding,
  type RuleVerdict,
  type TesterMatch,
} from "./judge-rules.ts";
export { judgeLeakRules, type TesterFacts } from "./judge-leak-rules.ts";
export { type ReadingGap, type RuleReading } from "./reading.ts";
export { rulesFor } from "./rules-for.ts";
export { shippedRules } from "./shipped.ts";
