// What one leak-down reading says of the size of the leak, as far as its tester allows.

import {
  type HoleOfReading,
  type LeakJudgement,
  type Span,
  alphaOverSupplies,
  holeByHoles,
  judgeLeak,
} from "../../leakdown/index.ts";
import { type LeakInstrument, isByHoles, openHolesOf, pressuresOf, tellsSize } from "./leak-instrument.ts";

export interface LeakSizing {
  /** Absent where the tester tells a percent only, or the supply is not known. */
  readonly judgement?: LeakJudgement;
  /** A percent behind a known restrictor whose supply nobody wrote down: alpha over the supplies testers use. */
  readonly alphaSpan?: Span;
  /** By open holes of known size that the tester was read with; it may have no restrictor at all, so no alpha stands beside. */
  readonly byHoles?: HoleOfReading;
}

/** @param value - as the instrument holds it: gauge pressure [Pa] or fraction lost */
export const leakSizing = (instrument: LeakInstrument, cylinder: number, value: number): LeakSizing => {
  const reading = pressuresOf(instrument, cylinder, value);
  const byHoles = bySizeOfHoles(instrument, cylinder, value);
  const part = byHoles === undefined ? {} : { byHoles };
  if (reading !== undefined) {
    const judgement = judgeLeak(reading, instrument.restrictor);
    const hasRestrictor = tellsSize(instrument) && !isByHoles(instrument);
    return hasRestrictor || judgement.kind === "no-seal" ? { judgement, ...part } : part;
  }
  const isPart = value > 0 && value < 1;
  return instrument.holds === "lost" && tellsSize(instrument) && isPart
    ? { alphaSpan: alphaOverSupplies(value, instrument.ambient), ...part }
    : part;
};

const bySizeOfHoles = (
  instrument: LeakInstrument,
  cylinder: number,
  value: number,
): HoleOfReading | undefined => {
  if (!isByHoles(instrument)) return undefined;
  const { holds, uDial, tester, supplies } = instrument;
  return holeByHoles({
    holes: openHolesOf(tester, holds, supplies[cylinder]),
    holds,
    value,
    uDial,
    reading: pressuresOf(instrument, cylinder, value),
  });
};
