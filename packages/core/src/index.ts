// The public face of the library: read a logbook's text, assess an engine, print numbers. Grouped by domain, low to high.

export * from "./problem/index.ts";
export * from "./quantity/index.ts";
export {
  gaugeStudy,
  leastSquares,
  leastSquaresThroughOrigin,
  mean,
  median,
  normalCdf,
  normalQuantile,
  pooledRepeatability,
  rangeUpperTail,
  sampleStandardDeviation,
  studentCdf,
  studentQuantile,
  theilSen,
  type GaugeStudy,
} from "./statistics/index.ts";
export * from "./air/index.ts";
export * from "./cranking/index.ts";
export * from "./leakdown/index.ts";
export * from "./record/index.ts";
export {
  appliesTo,
  judgeRules,
  readRuleSheet,
  ruleColumns,
  rulesFor,
  shippedRules,
  type EngineFacts,
  type Limit,
  type Rule,
  type RuleFinding,
  type RuleReading,
  type RuleSheet,
  type RuleVerdict,
  type TesterMatch,
} from "./rules/index.ts";
export * from "./procedure/index.ts";
export {
  forwardTest,
  spreadOf,
  type ForwardReading,
  type ForwardTest,
  type Spread,
  type Standing,
} from "./spread/index.ts";
export {
  analyseHistory,
  type CylinderHistory,
  type HistoryInput,
  type HistoryResult,
  type ServiceResult,
} from "./history/index.ts";
export * from "./teardown/index.ts";
export * from "./diagnosis/index.ts";
export * from "./decision/index.ts";
export * from "./assess/index.ts";
