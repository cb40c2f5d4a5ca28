export {
  forwardTest,
  type ChanceBand,
  type CylinderVerdict,
  type ForwardOptions,
  type ForwardReading,
  type ForwardTest,
} from "./forward-test.ts";
export { criticalValue, type Level, type PriorDegrees } from "./critical-values.ts";
export { crankingPrior, isOwn, leakDownPrior, type OwnRepeatability, type Prior } from "./prior.ts";
export { spreadOf, type Spread } from "./spread-of.ts";
export { isConfirmed, standing, worse, type Standing, type StandingEvidence } from "./standing.ts";
export {
  differenceShown,
  ratioUncertainty,
  readingUncertainty,
  type Difference,
  type Gauges,
  type Instrument,
  type MeasuredPressure,
  type Picked,
  type RatioUncertainty,
  type ReadingUncertainty,
} from "./uncertainty.ts";
export { repeatsDrift } from "./repeats.ts";
