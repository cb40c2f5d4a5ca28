// What one leak-down reading says of the size of the leak, as far as its tester allows.

import {
  type HoleOfReading,
  type LeakJudgement,
  type Span,
  alphaOverSupplies,
  holeFromKnownHoles,
  judgeLeak,
  masterMargin,
} from "../../leakdown/index.ts";
import { type Length, gaugePressure, length } from "../../quantity/index.ts";
import {
  type LeakInstrument,
  isByHoles,
  pressuresOf,
  tellsSize,
  withUsualSupply,
} from "./leak-instrument.ts";
import { trueReading } from "../values/values.ts";

export interface LeakSizing {
  /** Absent where the tester tells a percent only, or the supply is not known. */
  readonly judgement?: LeakJudgement;
  /** A percent behind a known restrictor whose supply nobody wrote down: alpha over the supplies testers use. */
  readonly alphaSpan?: Span;
  /** By open holes of known size that the tester was read with; it may have no restrictor at all, so no alpha stands beside. */
  readonly byHoles?: HoleByHoles;
}

/** A hole, or why there is none. */
export type HoleByHoles =
  | { readonly kind: "measured"; readonly hole: Length; readonly uHole: number }
  | { readonly kind: "outside" | "too-few" | "contradictory" };

/** @param value - as the instrument holds it: gauge pressure [Pa] or fraction lost */
export const leakSizing = (instrument: LeakInstrument, cylinder: number, value: number): LeakSizing => {
  const reading = pressuresOf(instrument, cylinder, value);
  const byHoles = holeByHoles(instrument, cylinder, value);
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

const holeByHoles = (
  instrument: LeakInstrument,
  cylinder: number,
  value: number,
): HoleByHoles | undefined => {
  if (!isByHoles(instrument)) return undefined;
  const { holds, uDial, tester } = instrument;
  const holes = (tester?.knownHoles ?? [])
    .filter((hole) => hole.holds === holds)
    .map(({ hole, reads }) => ({
      hole,
      reads: holds === "pressure" ? trueReading(reads, tester?.readsHigh ?? 0) : reads,
    }));
  const [only] = holes;
  if (only !== undefined && holes.length === 1)
    return byOneHole(instrument, cylinder, { value, reads: only.reads, hole: only.hole });
  const scale = holds === "pressure" ? 1 : (withUsualSupply(instrument).supplies[cylinder] ?? 1);
  const found: HoleOfReading = holeFromKnownHoles(holes, value, { uReading: uDial / scale });
  return found.kind === "outside" ? { kind: "outside" } : found;
};

/** With one hole it serves as the master: hole * sqrt(margin), whatever the restrictor is. */
const byOneHole = (
  instrument: LeakInstrument,
  cylinder: number,
  { value, reads, hole }: { readonly value: number; readonly reads: number; readonly hole: Length },
): HoleByHoles | undefined => {
  const reading = pressuresOf(instrument, cylinder, value);
  if (reading === undefined || judgeLeak(reading, {}).kind !== "measured") return undefined;
  const master =
    instrument.holds === "pressure" ? gaugePressure(reads) : gaugePressure(reading.supply * (1 - reads));
  if (master <= 0 || master >= reading.supply) return { kind: "contradictory" };
  const { margin, uMargin } = masterMargin(reading, {
    reads: master,
    uReads: instrument.uDial,
    bore: hole,
  });
  const size = length(hole * Math.sqrt(margin));
  const uBore = 0.000_02 / (hole * Math.sqrt(3));
  return { kind: "measured", hole: size, uHole: size * Math.hypot(uMargin / (2 * margin), uBore) };
};
