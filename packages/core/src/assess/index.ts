export { assessTest } from "./assess-test.ts";
export {
  type CylinderAssessment,
  type LimitMissed,
  type NextTest,
  type OilEvidence,
  type OilRise,
  type OilTest,
  type PressureValue,
  type TestAssessment,
} from "./assessment.ts";
export { type LeakValue } from "./assess-leak-down.ts";
export { type SinceFirst } from "./since-first.ts";
export { type ComparedCell, type GaugeComparison } from "./gauge-comparison.ts";
export { type LevelSince } from "./level-since.ts";
export { type DigitSlip } from "./slips.ts";
export { judgeTrust } from "./trust.ts";
export { type Trust, type TrustCode, type TrustReason } from "./trust-reason.ts";
export { type TrustReasonCode } from "./trust-words.ts";
export { figuresOf, type EngineFigures } from "./figures.ts";
export {
  assessHistory,
  placeText,
  type HistoryAssessment,
  type KindHistory,
  type Repeatability,
} from "./assess-history.ts";
export { type CountedTest } from "./counted-test.ts";
