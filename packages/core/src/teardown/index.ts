export type * from "./asked-for.ts";
export type * from "./teardown.ts";
export type * from "./typing/typing.ts";
export { startTyping } from "./typing/typing.ts";
export { readTypedLine } from "./typing/read-typed-line.ts";
export { rowOf } from "./typing/row-of.ts";
export { figureShapes, typingHelp, type TypingShape } from "./typing/typing-help.ts";
export { judgeTeardown } from "./judge-teardown.ts";
export { misprintOf } from "./consistency/limit-misprint.ts";
export { usualJournals } from "./consistency/usual-journals.ts";
export { countsToMeasure, isComplete } from "./consistency/part-counts.ts";
export { type Together, measuredTogether, timesMeasured } from "./measured-together.ts";
export { spoiltParts } from "./spoilt.ts";
export { atNamed, placeNamed } from "./places.ts";
export { currentFindings } from "./judging/findings.ts";
export { figureText } from "./judging/figure-text.ts";
export { staying as stayingVerdict } from "./judging/limits.ts";
export { wearFound, type MeasuredPlace, type WearFound } from "./wear-found.ts";
export {
  boreFigures,
  chamberAfterWork,
  chamberVolume,
  chooseOversize,
  chooseUndersize,
  compressionRatio,
  faceFlatness,
  journalFigures,
  ratioWarnings,
  type BoreFigures,
  type ChamberParts,
  type ChamberWork,
  type FaceFlatness,
  type FlatLine,
  type JournalFigures,
  type OversizeQuestion,
  type RatioWarning,
  type RoundReading,
  type UndersizeQuestion,
} from "./figures/index.ts";
export {
  allConform,
  instrumentFor,
  limitVerdict,
  probabilityOf,
  readingUncertainty,
  verdictOf,
  type Figure,
  type FigureOf,
  type Instrument,
} from "./conformity/index.ts";
