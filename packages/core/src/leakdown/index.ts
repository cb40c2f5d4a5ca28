export { answerLeak } from "./answer.ts";
export {
  type HolesRefusal,
  type KnownHoles,
  type LeakAnswer,
  type LeakQuestion,
  type Typed,
} from "./leak-question.ts";
export {
  alphaOf,
  alphaUncertainty,
  cylinderOfLost,
  lostUncertainty,
  sensitivityOf,
  type LeakReading,
} from "./alpha.ts";
export {
  classLimit,
  dialUncertainty,
  usualDivision,
  usualFullScale,
  usualLimit,
  usualSupply,
  type Dial,
} from "./dials.ts";
export {
  leakExplains,
  type CrankingLeak,
  type LeakExplanation,
  type MeasuredLeak,
} from "./explains-cranking.ts";
export { isentropicFlow, isoFlow, type FlowModel } from "./flow-model.ts";
export { judgeLeak, type LeakJudgement, type LeakLimit } from "./judge.ts";
export { holeByHoles } from "./hole-by-holes.ts";
export { holeFromKnownHoles, type HoleOfReading, type HoleReading } from "./known-holes.ts";
export { inParallel, leakFigures, partClosed, type LeakFigures, type LeakSize } from "./leak.ts";
export { masterMargin, type MasterMargin, type MasterReading } from "./master.ts";
export { readingOfAlpha, readingOn, type Tester, type TesterReading } from "./reading.ts";
export {
  boreUncertainty,
  dischargeOf,
  dischargeUncertainty,
  thinPlateCd,
  type Discharge,
  type Restrictor,
  type RestrictorProfile,
} from "./restrictor.ts";
export { testerFactor, type TesterFactor } from "./same-day.ts";
export { alphaOverSupplies, marginOverSupplies, usualSupplies, type Span } from "./unknown-supply.ts";
export { usualSupplyTemperature, usualTemperatureHalfWidth, warmthOf, type Warmth } from "./warmth.ts";
export {
  restate,
  type ComparedTesters,
  type OtherTester,
  type RestateRefusal,
  type Restatement,
} from "./restate.ts";
