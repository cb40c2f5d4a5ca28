// How far one corrected reading, or the ratio of two, can be trusted (in the way of JCGM 100:2008; its clauses from
// memory). Uncertainties are standard ones, relative, unless they say otherwise.

import { normalCdf, rangeUpperTail } from "../statistics/index.ts";

/** One cylinder's reading: mean of `repeats` readings [Pa gauge]. */
export interface MeasuredPressure {
  readonly pressure: number;
  readonly repeats: number;
}

/** What is known of the gauge; what is absent adds nothing, so the figure is then a lower bound. */
export interface Instrument {
  /** Standard deviation of one reading, relative. */
  readonly repeatability: number;
  /** Smallest division [Pa]. */
  readonly division?: number;
  /** Accuracy class [percent of full scale] and full scale [Pa]. */
  readonly accuracy?: { readonly classPercent: number; readonly fullScale: number };
}

export interface ReadingUncertainty {
  /** Scatter and resolution, less with repeats. */
  readonly reading: number;
  /** The gauge's own error, the same in every reading of it near that pressure. */
  readonly gauge: number;
  /** All of it, with the correction to standard air and speed. */
  readonly relative: number;
  /** The same as a pressure [Pa]. */
  readonly absolute: number;
}

/** u^2 = [s^2 + (division/(sqrt12 p))^2]/m + (a/(sqrt3 p))^2 + u^2(ln K),  a = class % of full scale.
 *  @param correction - u(ln K), 0 for a reading not corrected @throws RangeError on pressure not above 0 or no repeats */
export const readingUncertainty = (
  measured: MeasuredPressure,
  instrument: Instrument,
  correction: number,
): ReadingUncertainty => {
  const reading = Math.sqrt(readingVariance(measured, instrument));
  const gauge = Math.sqrt(gaugeVariance(measured, instrument));
  const relative = Math.hypot(reading, gauge, correction);
  return { reading, gauge, relative, absolute: relative * measured.pressure };
};

/** Same gauge: its error is common to both readings and drops out. */
export type Gauges = "same-gauge" | "two-gauges";

export interface RatioUncertainty {
  /** lower / higher. */
  readonly ratio: number;
  /** u(ln ratio). */
  readonly relative: number;
  /** 95 % limits of the ratio, ratio exp(+-1.959964 u). */
  readonly low: number;
  readonly high: number;
  /** ln(higher/lower) / u. */
  readonly z: number;
}

/** Ratio of two cylinders of one test, where correction and gauge error are common and cancel:
 *  u^2(ln R) = sum over the two of [s^2 + (division/(sqrt12 p))^2]/m; with two gauges both class terms are added.
 *  @throws RangeError on a pressure not above 0, no repeats, or no uncertainty at all */
export const ratioUncertainty = (
  pair: { readonly lower: MeasuredPressure; readonly higher: MeasuredPressure },
  instrument: Instrument,
  gauges: Gauges,
): RatioUncertainty => {
  const both = [pair.lower, pair.higher];
  const variances = both.map(
    (one) =>
      readingVariance(one, instrument) + (gauges === "two-gauges" ? gaugeVariance(one, instrument) : 0),
  );
  const relative = Math.sqrt(variances.reduce((sum, variance) => sum + variance, 0));
  if (!(relative > 0)) throw new RangeError("ratioUncertainty: no uncertainty is known");
  const ratio = pair.lower.pressure / pair.higher.pressure;
  const reach = Math.exp(1.959963984540054 * relative);
  return { ratio, relative, low: ratio / reach, high: ratio * reach, z: -Math.log(ratio) / relative };
};

/** How the pair was picked: named beforehand, or as lowest and highest of so many. */
export type Picked = "named" | { readonly extremesOf: number };
export type Difference = "lower" | "probably-lower" | "no-difference-shown";

/** Is the lower one really lower? P = Phi(z) for a pair named beforehand; for lowest and highest of n the chance that a
 *  range of n equal cylinders stays below theirs, 1 - P(range > z sqrt2). `lower` from .95, `probably-lower` from .80. */
export const differenceShown = (
  z: number,
  picked: Picked,
): { readonly probability: number; readonly difference: Difference } => {
  const probability =
    picked === "named" ? normalCdf(z) : 1 - rangeUpperTail(Math.max(0, z) * Math.SQRT2, picked.extremesOf);
  const difference =
    probability >= 0.95 ? "lower" : probability >= 0.8 ? "probably-lower" : "no-difference-shown";
  return { probability, difference };
};

const readingVariance = (
  { pressure, repeats }: MeasuredPressure,
  { repeatability, division = 0 }: Instrument,
): number => {
  if (!(pressure > 0) || !(repeats >= 1))
    throw new RangeError(`uncertainty: pressure ${String(pressure)} Pa, ${String(repeats)} repeats`);
  return (repeatability ** 2 + (division / (Math.sqrt(12) * pressure)) ** 2) / repeats;
};

const gaugeVariance = ({ pressure }: MeasuredPressure, { accuracy }: Instrument): number =>
  accuracy === undefined
    ? 0
    : ((accuracy.classPercent / 100) * accuracy.fullScale) ** 2 / (3 * pressure ** 2);
