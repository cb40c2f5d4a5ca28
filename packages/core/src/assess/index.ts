export { assessTest } from "./assess-test.ts";
export { type CylinderAssessment, type NextTest, type PressureValue, type TestAssessment } from "./assessment.ts";
export { type LeakValue } from "./assess-leak-down.ts";
export { figuresOf, judgeTrust, type EngineFigures, type Trust, type TrustCode, type TrustReason } from "./trust.ts";
export { type TrustReasonCode } from "./trust-words.ts";
export { assessHistory, placeText, type HistoryAssessment, type KindHistory } from "./assess-history.ts";
export { type CountedTest } from "./history-input.ts";
