// P_0: what a cylinder would read without losses. A matter of geometry and gauge, the same for all cylinders and years.

import { type GaugePressure, type Speed, gaugePressure } from "../../quantity/index.ts";
import type { UsualLossSpeed } from "./loss-speed.ts";

/** Where a P_0 comes from. */
export type LossFreeSource = "default" | "maker's figure" | "geometry" | "calibration";

/** P_0, what a cylinder would read without losses, with its doubt and where it came from. */
export interface LossFreePressure {
  /** P_0, in the air of the readings it came from or is for. */
  readonly pressure: GaugePressure;
  /** Standard uncertainty of ln P_0. */
  readonly uncertainty: number;
  /** What went into it, the most of it first. */
  readonly sources: readonly LossFreeSource[];
  /** How much of ln P_0 is that of the test's own middle reading, 0 to 1. */
  readonly ownShare: number;
}

/** A reading in reference air and the cranking speed it was taken at. */
export interface ReadingAtSpeed {
  readonly pressure: GaugePressure;
  readonly speed: Speed;
}

/** P(1 + N_s/(2N))^2, and u(N_s)/(N + N_s/2) of its ln. */
const withoutLoss = (
  { pressure, speed }: ReadingAtSpeed,
  { value, uncertainty }: UsualLossSpeed,
): { readonly pressure: GaugePressure; readonly uncertainty: number } => ({
  pressure: gaugePressure(pressure * (1 + value / (2 * speed)) ** 2),
  uncertainty: uncertainty / (speed + value / 2),
});

/** Where nothing else is known: the middle reading of the test with the usual loss taken off. */
export const lossFreeByDefault = (middle: ReadingAtSpeed, usual: UsualLossSpeed): LossFreePressure => {
  const { pressure, uncertainty } = withoutLoss(middle, usual);
  return { pressure, uncertainty, sources: ["default"], ownShare: 1 };
};

/** From the maker's reading of a new engine at a stated speed, itself good to 5 %. */
export const lossFreeFromNew = (asNew: ReadingAtSpeed, usual: UsualLossSpeed): LossFreePressure => {
  const { pressure, uncertainty } = withoutLoss(asNew, usual);
  return {
    pressure,
    uncertainty: Math.hypot(uncertainty, 0.05),
    sources: ["maker's figure"],
    ownShare: 0,
  };
};

/** The maker's figure in place of the default only where it is the higher one: wear hides P_0 and never raises it. */
export const defaultOrNew = (byDefault: LossFreePressure, fromNew?: LossFreePressure): LossFreePressure =>
  fromNew !== undefined && fromNew.pressure > byDefault.pressure ? fromNew : byDefault;

/** Independent estimates as one, weighted by 1/u^2 in ln P_0.
 *  @throws RangeError without any */
export const combineLossFree = (estimates: readonly LossFreePressure[]): LossFreePressure => {
  if (estimates.length === 0) throw new RangeError("combineLossFree: no estimate");
  const [first, ...others] = estimates;
  if (first !== undefined && others.length === 0) return first;
  const weighted = estimates
    .map((one) => ({ ...one, weight: one.uncertainty ** -2 }))
    .sort((a, b) => b.weight - a.weight);
  const total = weighted.reduce((sum, { weight }) => sum + weight, 0);
  const mean = (value: (one: LossFreePressure) => number): number =>
    weighted.reduce((sum, one) => sum + one.weight * value(one), 0) / total;
  return {
    pressure: gaugePressure(Math.exp(mean(({ pressure }) => Math.log(pressure)))),
    uncertainty: Math.sqrt(1 / total),
    sources: [...new Set(weighted.flatMap(({ sources }) => sources))],
    ownShare: mean(({ ownShare }) => ownShare),
  };
};
