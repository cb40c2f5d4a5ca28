export { assessTest, type AssessOptions } from "./assess-test.ts";
export { howPageOf, shownTests, type HowPage } from "./shown-tests.ts";
export { beforeOpening } from "./before-opening.ts";
export { runInSpans, runsIn } from "./run-in.ts";
export { type SwappedOrder } from "./swapped-order.ts";
export { standApart } from "./causes/heard-evidence.ts";
export { type Unexplained } from "./causes/unexplained-finding.ts";
export { isWorthExplaining } from "./causes/worth-explaining.ts";
export {
  type CylinderAssessment,
  type FullyCorrected,
  type LevelBelow,
  type LimitMissed,
  type NextTest,
  type PressureValue,
  type TestAssessment,
} from "./assessment.ts";
export { type LeakValue } from "./leak/assess-leak-down.ts";
export { openHolesOf, restrictorOf } from "./leak/leak-instrument.ts";
export { type LeakTest } from "./leak/leak-test.ts";
export { type LeakAndCranking, type ExplainedCylinder } from "./leak/leak-and-cranking.ts";
export { type LeakPart } from "./leak/leak-parts.ts";
export { type MasterUse } from "./leak/leak-master.ts";
export { type LevelSince, type SinceFirst } from "./years/changes.ts";
export { type ComparedCell, type GaugeComparison } from "./gauges/gauge-comparison.ts";
export { comparedReadings } from "./gauges/compared-readings.ts";
export {
  compareGauges,
  type GaugePair,
  type GaugeRepeats,
  type MeasuredStanding,
  type StandingRefused,
} from "./gauges/compare-gauges.ts";
export { type DayDifference } from "./gauges/day-difference.ts";
export { linkBetween, linkedGauges, type LinkedGauges } from "./gauges/linked-gauge.ts";
export { gaugeLink, type NewLink } from "./gauges/gauge-link.ts";
export { holeCalibration, type HoleCalibration, type HoleFinding } from "./gauges/hole-calibration.ts";
export {
  speedCalibration,
  type SpeedCalibration,
  type SpeedCalibrationRefused,
  type SpeedReadings,
} from "./gauges/speed-calibration.ts";
export { type RepeatsWord } from "./values/repeats-apart.ts";
export { type DigitSlip } from "./values/slips.ts";
export { type Trust, type TrustCode, type TrustReason } from "./trust/trust-reason.ts";
export { type TrustReasonCode } from "./trust/trust-words.ts";
export { type EngineFigures } from "./figures.ts";
export {
  assessHistory,
  placeText,
  type HistoryAssessment,
  type KindHistory,
  type Repeatability,
} from "./years/assess-history.ts";
export { type CountedTest } from "./years/counted-test.ts";
export { trueReading } from "./values/values.ts";
export { type BuildUp, type BuildUpPattern } from "./oil/build-up-finding.ts";
export { type GaugeHose } from "./gauges/gauge-hose.ts";
export { oilCautions } from "./oil/oil-caution.ts";
export { type OilDoubt, type OilEvidence, type OilRise, type OilTest } from "./oil/oil-finding.ts";
export { type SpeedAssessment } from "./speed/speed-assessment.ts";
export { type TestSpeed } from "./speed/history-speed.ts";
export { assessDecision } from "./deciding/assess-decision.ts";
export { openings, type DecisionChoices, type Opening } from "./deciding/choices.ts";
export { gather as gatherForDecision, type Deciding } from "./deciding/deciding.ts";
export {
  type CannotSee,
  type Conflict,
  type DecisionAssessment,
  type FoundRow,
  type Horizon,
  type OtherFault,
  type PricesKnown,
} from "./deciding/decision-assessment.ts";
export { type LowEverywhere } from "./deciding/low-everywhere.ts";
export { type MeasureNow } from "./deciding/measure-now.ts";
export { type MeasureLimit } from "./deciding/measure-limits.ts";
export { type NextAction } from "./deciding/own-step.ts";
export { type NextBy } from "./deciding/next-by.ts";
export { type NotItself } from "./deciding/not-itself.ts";
export { type OddTest } from "./deciding/odd-test.ts";
export { type Reach } from "./deciding/reach.ts";
export { type RingsDue } from "./deciding/rings-due.ts";
export { type TestAgain } from "./deciding/test-again.ts";
export { type TopWork } from "./deciding/top-work.ts";
export { type NotSeen } from "./deciding/not-seen.ts";
export { type WearChannel } from "./deciding/wear.ts";
export { latestTest } from "./latest-test.ts";
export { datedAhead } from "./dated-ahead.ts";
export { type YardCourse } from "./yard/yard-course.ts";
export { type YardDecision } from "./yard/yard-decision.ts";
export { type YardChoices, type YardRow, type YardTest, yardRow } from "./yard/yard-row.ts";
export { type YardWorst } from "./yard/worst.ts";
export {
  type YardOrder,
  type YardPlace,
  comparePlaces,
  yardCompare,
  yardOrders,
  yardPlace,
} from "./yard/yard-order.ts";
export { type YardTotals, noYard, withEngine } from "./yard/yard-totals.ts";
