// How well a figure is known that was read, or made of readings.

import { type Length, length } from "../../quantity/index.ts";
import type { Instrument } from "./instrument-for.ts";
import { type Leaves, feelerBlur } from "./conforming.ts";

/** An instrument with the number of readings whose mean is taken, 1 or more. */
export interface Readings {
  readonly instrument: Instrument;
  readonly readings: number;
}

/** read²/n, or read² where repeats share what they are uncertain by. */
const readPart = ({ instrument, readings }: Readings): number => {
  if (!(readings >= 1)) throw new RangeError(`a mean needs a reading, got ${String(readings)}`);
  const helps = instrument.kind.repeatsHelp && instrument.stated !== true;
  return instrument.read ** 2 / (helps ? readings : 1);
};

/** Standard uncertainty of the mean of repeats at one place. u² = common² + read²/n
 *  @throws RangeError without a reading @source GUM; handbook values of the instruments (judgement)
 *  @checked data/reference/teardown-cases.json (computed) */
export const readingUncertainty = (taken: Readings): Length =>
  length(Math.sqrt(taken.instrument.common ** 2 + readPart(taken)));

const isSame = (one: Instrument, other: Instrument): boolean =>
  one.kind.code === other.kind.code && one.resolution === other.resolution;

/** Of the difference of two readings: taper, out-of-round, wear against an unworn spot, two gaps of one ring. What both
 *  share cancels when one instrument took both: u = √2·read; of two instruments both commons stay.
 *  @source GUM (correlated quantities) @checked data/reference/teardown-cases.json (computed) */
export const differenceUncertainty = (one: Readings, other: Readings): Length => {
  const shared = isSame(one.instrument, other.instrument)
    ? 0
    : one.instrument.common ** 2 + other.instrument.common ** 2;
  return length(Math.sqrt(readPart(one) + readPart(other) + shared));
};

/** Of a clearance made of a hole and a shaft. Where the gauge was set in the micrometer that measured the shaft, its scale
 *  cancels: u² = gauge² + 2·mic_read², the second for the setting; a gauge read by that micrometer leaves gauge² + mic_read².
 *  Of two micrometers both commons stay.
 *  @param set - `same-micrometer` where not given: hole and shaft are so near in size that one micrometer spans both
 *  @source GUM (correlated quantities) @checked data/reference/teardown-cases.json (computed) */
export const clearanceUncertainty = ({
  hole,
  shaft,
  set = "same-micrometer",
}: {
  readonly hole: Readings;
  readonly shaft: Readings;
  readonly set?: "same-micrometer" | "another";
}): Length => {
  const { instrument } = hole;
  const shares =
    set === "same-micrometer" &&
    shaft.instrument.kind.code === "micrometer" &&
    instrument.kind.carries !== undefined &&
    instrument.stated !== true &&
    shaft.instrument.stated !== true;
  if (!shares) return length(Math.hypot(readingUncertainty(hole), readingUncertainty(shaft)));
  const setting = instrument.kind.carries === "set in" ? shaft.instrument.read : 0;
  return length(Math.sqrt(readPart(hole) + setting ** 2 + readPart(shaft)));
};

/** Of a gap between the leaf that goes and the one that does not. u² = (b − a)²/12 + s² + common²
 *  @param common - of the straightedge, where there is one
 *  @checked data/reference/teardown-cases.json (computed) */
export const feelerUncertainty = ({ low, high }: Leaves, common: Length = length(0)): Length =>
  length(Math.hypot((high - low) / Math.sqrt(12), feelerBlur, common));
