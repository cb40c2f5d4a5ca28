// Which cylinders of one test read lower than healthy fellows would? A one-sided test that starts from the upper half,
// so that two low cylinders cannot hide each other.

import { mean, median } from "../statistics/index.ts";
import { criticalValue, type Level } from "./critical-values.ts";
import { crankingPrior, leakDownPrior, type OwnRepeatability, type Prior } from "./prior.ts";

/** One cylinder of one test. */
export type ForwardReading =
  /** `ln`: natural logarithm of the reading, or of 1 - fraction lost; mean of the repeats. `repeats`: 1 or more. */
  | { readonly kind: "read"; readonly ln: number; readonly repeats: number }
  | { readonly kind: "not-read" }
  /** A reading of 0, or all lost: no number for ln, so flagged outright and left out of all statistics. */
  | { readonly kind: "no-compression" };

export interface ForwardOptions {
  /** What is believed of healthy scatter: the usual figure of that kind of test, or one of the caller's. */
  readonly prior: "cranking" | "leak-down" | Prior;
  /** Counts for cranking only, from 20 degrees of freedom. */
  readonly own?: OwnRepeatability;
  /** Smallest division of the dial, in the unit whose logarithm the readings are (for leak-down as a fraction of the
   *  supply). Healthy scatter is never taken below division / (sqrt(12) middle reading). */
  readonly division?: number;
}

export type ChanceBand = "<1 %" | "<5 %" | ">5 %";

export type CylinderVerdict =
  | { readonly kind: "not-read" }
  | { readonly kind: "no-compression"; readonly flagged: true; readonly flaggedAt1: true }
  | {
      readonly kind: "read";
      /** Distance below the core in standard deviations; absent for the core itself and where nothing can be said. */
      readonly t?: number;
      /** Lower than chance alone makes one cylinder of a healthy engine in 20 tests; and in 100 tests. */
      readonly flagged: boolean;
      readonly flaggedAt1: boolean;
      /** How often a healthy engine shows such a cylinder; absent where nothing can be said. */
      readonly chance?: ChanceBand;
    };

/** Which cylinders of one test read lower than healthy fellows would. */
export interface ForwardTest {
  /** In the order of the readings. */
  readonly cylinders: readonly CylinderVerdict[];
  /** Cylinders compared; below 2 nothing can be said about any of them. */
  readonly compared: number;
  /** The healthy scatter used, after the floor, and the degrees of freedom it counts as. */
  readonly prior: Prior;
}

/** The forward test. x = ln readings, descending; core = the upper half (n/2 rounded up). From there downward:
 *  t_j = (mean core - x_j) / sqrt(s^2 (1 + 1/c)),  s^2 = (df sigma^2 + S) / (df + c - 1),  c = size of the core,
 *  S = sum over the core of (x - mean)^2. The first t_j above c_n(alpha) stops: x_j and all that read no more are low;
 *  until then x_j joins the core. Below the stop, t is given against the core as it stood at 5 %.
 *  Only low readings are found, and never more than half the cylinders.
 *  @throws RangeError on a reading that is not finite, repeats below 1, a prior or division that is not above 0 */
export const forwardTest = (readings: readonly ForwardReading[], options: ForwardOptions): ForwardTest => {
  const read = readings.filter((reading) => reading.kind === "read");
  const prior = priorOf(read, options);
  const sorted = read.map((reading) => reading.ln).sort((a, b) => b - a);
  const walks =
    sorted.length < 2 ? undefined : { at5: walk(sorted, prior, 0.05), at1: walk(sorted, prior, 0.01) };
  const cylinders = readings.map((reading): CylinderVerdict => {
    if (reading.kind === "not-read") return { kind: "not-read" };
    if (reading.kind === "no-compression") return { kind: "no-compression", flagged: true, flaggedAt1: true };
    if (walks === undefined) return { kind: "read", flagged: false, flaggedAt1: false };
    const flagged = reading.ln <= walks.at5.lowFrom;
    const flaggedAt1 = reading.ln <= walks.at1.lowFrom;
    const chance = flaggedAt1 ? "<1 %" : flagged ? "<5 %" : ">5 %";
    const t = walks.at5.t[rankOf(reading, read)];
    if (t === undefined) return { kind: "read", flagged, flaggedAt1, chance };
    return { kind: "read", t, flagged, flaggedAt1, chance };
  });
  return { cylinders, compared: sorted.length, prior };
};

type Read = Extract<ForwardReading, { kind: "read" }>;

/** Place in descending order; equal readings follow each other as they were given. */
const rankOf = (one: Read, all: readonly Read[]): number => {
  const own = all.indexOf(one);
  return all.filter((other, i) => other.ln > one.ln || (other.ln === one.ln && i < own)).length;
};

const priorOf = (read: readonly Read[], { prior, own, division }: ForwardOptions): Prior => {
  for (const { ln, repeats } of read)
    if (!Number.isFinite(ln) || !(repeats >= 1))
      throw new RangeError(`forwardTest: reading ln ${String(ln)} with ${String(repeats)} repeats`);
  const meanRepeats = read.length === 0 ? 1 : mean(read.map((reading) => reading.repeats));
  const usual =
    prior === "cranking" ? crankingPrior(meanRepeats, own) : prior === "leak-down" ? leakDownPrior : prior;
  const middle = read.length === 0 ? 1 : Math.exp(median(read.map((reading) => reading.ln)));
  const floor = division === undefined ? 0 : division / (Math.sqrt(12) * middle);
  if (!(usual.sigma > 0) || !(floor >= 0))
    throw new RangeError(`forwardTest: scatter ${String(usual.sigma)}, division ${String(division)}`);
  return { sigma: Math.max(usual.sigma, floor), df: usual.df };
};

interface Walk {
  /** By rank; absent for the first core. */
  readonly t: readonly (number | undefined)[];
  /** Readings of this or less are low; minus infinity when none is. */
  readonly lowFrom: number;
}

const walk = (sorted: readonly number[], prior: Prior, level: Level): Walk => {
  const critical = criticalValue(sorted.length, prior.df, level);
  const half = Math.ceil(sorted.length / 2);
  const core = sorted.slice(0, half);
  const t: (number | undefined)[] = core.map(() => undefined);
  let lowFrom = -Infinity;
  for (const x of sorted.slice(half)) {
    const distance = below(x, core, prior);
    t.push(distance);
    if (lowFrom > -Infinity) continue;
    if (distance > critical) lowFrom = x;
    else core.push(x);
  }
  return { t, lowFrom };
};

/** t of one reading against a core. */
const below = (x: number, core: readonly number[], prior: Prior): number => {
  const centre = mean(core);
  return (centre - x) / Math.sqrt(variance(core, centre, prior) * (1 + 1 / core.length));
};

const variance = (core: readonly number[], centre: number, { sigma, df }: Prior): number => {
  if (df === "known") return sigma * sigma;
  const scatter = core.reduce((sum, x) => sum + (x - centre) ** 2, 0);
  return (df * sigma * sigma + scatter) / (df + core.length - 1);
};
