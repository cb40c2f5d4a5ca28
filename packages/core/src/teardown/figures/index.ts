export { boreFigures, type BoreFigures } from "./bore-figures.ts";
export { journalFigures, type JournalFigures } from "./journal-figures.ts";
export {
  boreAxes,
  diameterRange,
  journalAxes,
  largestInSize,
  meanAt,
  outsOfRound,
  ovalitySeen,
  tapers,
  type Difference,
  type RoundReading,
} from "./round-part.ts";
export {
  clearance,
  clearanceRange,
  clearanceWithShells,
  fineStepShells,
  type ClearanceRange,
} from "./clearance.ts";
export { diameterChange, gapChange, gapInBore, leastRingGap, taperFromRing } from "./ring-gap.ts";
export {
  threadClearance,
  threadReadsLow,
  threadSection,
  threadUncertainty,
  type Sure,
} from "./plastic-thread.ts";
export { bendOfRunout, clearanceOfRocking } from "./indicated-travel.ts";
export {
  alreadyBored,
  barOffset,
  boringSize,
  chooseOversize,
  neededDiameter,
  usualHoneStock,
  type OversizeQuestion,
  type WornBore,
} from "./oversize.ts";
export {
  chooseUndersize,
  grindTo,
  underRange,
  usualGrindStock,
  type UndersizeQuestion,
} from "./undersize.ts";
export {
  chamberAfterWork,
  chamberVolume,
  compressionRatio,
  ratioWarnings,
  type ChamberParts,
  type ChamberWork,
  type RatioWarning,
} from "./displacement.ts";
export {
  faceFlatness,
  type FaceFlatness,
  type FlatLine,
  type FlatPoint,
  type LocalGap,
  type OverallGap,
} from "./flatness.ts";
export { warmPistonError } from "./thermal.ts";
