// How far readings of a healthy engine scatter, by kind of test. Choices of this project: no repeatability study of
// cranking compression was found. handbook/statistics.md A.3, B, F (cranking), L.10 (leak-down: one published series).

import type { HistoryKind } from "./input.ts";

export interface Noise {
  /** Standard deviation of ln of one reading, same gauge. */
  readonly reading: number;
  /** Cylinder by test: valve seating, temperature while testing. */
  readonly interaction: number;
  /** Common to one test: battery, warmth. */
  readonly common: number;
  /** From gauge to gauge. */
  readonly gauge: number;
}

export const noiseOf: Readonly<Record<HistoryKind, Noise>> = {
  cranking: { reading: 0.015, interaction: 0.01, common: 0.02, gauge: 0.03 },
  "leak-down": { reading: 0.007, interaction: 0.01, common: 0.02, gauge: 0.02 },
};

/** Degrees of freedom that the assumed scatter weighs, in pooling (C.3). */
export const priorDegrees = 6;

/** s0^2 = s_read^2/m + s_inter^2, m = mean repeats of a cell. */
export const cellVariance = (noise: Noise, repeats: number): number =>
  noise.reading ** 2 / repeats + noise.interaction ** 2;
