export {
  clearanceVolume,
  cylinderFault,
  sweptVolume,
  trappedRatio,
  volumeAt,
  type Cylinder,
  type CylinderFault,
  type CylinderSizes,
} from "./cycle/cylinder.ts";
export { crankingCycle, type Cycle } from "./cycle/cycle.ts";
export type { CycleInput } from "./cycle/cycle-rates.ts";
export type { EngineKind } from "./expected/expected-assumptions.ts";
export type { InputName, KnownOfCylinder } from "./expected/model-input.ts";
export {
  expectedFault,
  statedFault,
  type ExpectedFault,
  type StatedNumbers,
} from "./expected/expected-limits.ts";
export { unlikelyOf, type Unlikely } from "./expected/unlikely.ts";
export {
  expectedPressure,
  leastOnADial,
  type BandStanding,
  type ExpectedInput,
  type ExpectedPressure,
} from "./expected/expected.ts";
export { conductivityOfAir, gammaOfAir, viscosityOfAir } from "./cycle/gas.ts";
export { apparentExponent, polytropicPressure } from "./cycle/polytropic.ts";
export { heatTransfer, type WallHeat } from "./cycle/wall-heat.ts";
export {
  correctReading,
  pressureCorrection,
  type AirOfTheDay,
  type CorrectionBasis,
  type PressureCorrection,
} from "./pressure-correction.ts";
export { knownChamber } from "./gauge/chamber.ts";
export {
  fillLimit,
  fillSeries,
  reachedBy,
  stillMissing,
  strokesTo,
  type Filling,
} from "./gauge/fill-series.ts";
export { hoseShare, type HosedCylinder } from "./gauge/hose.ts";
export { oilAmount, oilRise, suggestedOil, type OilAmount } from "./gauge/oil-volume.ts";
export { throttledReading } from "./gauge/throttle.ts";
export { speedDoubt, usualSpeedEffect } from "./speed/speed-doubt.ts";
export { lossSpeed, usualLossSpeed, type UsualLossSpeed } from "./speed/loss-speed.ts";
export {
  combineLossFree,
  defaultOrNew,
  lossFreeByDefault,
  lossFreeFromNew,
  type LossFreePressure,
  type LossFreeSource,
  type ReadingAtSpeed,
} from "./speed/loss-free-pressure.ts";
export { lossFreeFromGeometry, type StatedSizes } from "./speed/loss-free-geometry.ts";
export {
  lossFreeFromTwoSpeeds,
  lossFreeOfCylinders,
  type CalibratedLossFree,
  type CalibrationOutcome,
  type CalibrationReading,
  type TwoSpeedsRefusal,
} from "./speed/two-speeds.ts";
export {
  commonSpeedDoubt,
  correctSpeed,
  pressureAtSpeed,
  speedCorrectedUncertainty,
  speedRatioUncertainty,
  type LeakEvidence,
  type SpeedCorrected,
  type SpeedStep,
} from "./speed/speed-correction.ts";
export {
  refusedLossFree,
  refusedSpeeds,
  speedRefusal,
  type SpeedRefusal,
  type SpeedRefusalCode,
} from "./speed/speed-refusal.ts";
