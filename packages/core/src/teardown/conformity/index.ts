export {
  allConform,
  bothSides,
  guardFactor,
  insideByFeeler,
  isNeverInside,
  probabilityOf,
  verdictOf,
  type Figure,
  type Leaves,
} from "./conforming.ts";
export { instrumentNamed, type InstrumentCode, type InstrumentKind } from "./instruments.ts";
export {
  instrumentFor,
  instrumentText,
  type DivisionBy,
  type Instrument,
  type InstrumentQuestion,
} from "./instrument-for.ts";
export {
  clearanceUncertainty,
  differenceUncertainty,
  feelerUncertainty,
  readingUncertainty,
  type Readings,
} from "./uncertainty.ts";
export { settlementOf, type FigureKind, type FigureOf } from "./settlement.ts";
export { notByCaliper } from "./not-by-caliper.ts";
export { limitVerdict, type KindOfLimit } from "./limit-verdict.ts";
