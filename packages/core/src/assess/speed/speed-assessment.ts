// What the speed correction of one test came to.

import type { LossFreePressure, SpeedCorrected, SpeedRefusal } from "../../cranking/index.ts";

/** What the speed correction of one test came to, or why it was refused. */
export interface SpeedAssessment {
  /** Middle speed of the cylinders, and the reference speed [rpm]; absent where not known. */
  readonly from?: number;
  readonly to?: number;
  /** Slowest and fastest of the cylinders [rpm]. */
  readonly least?: number;
  readonly most?: number;
  /** In the engine's order [rpm]; undefined where it is not known, or nothing was read that compares. */
  readonly speeds: readonly (number | undefined)[];
  /** Where they differ by so much that it tells: the speed that the cylinders are compared at [rpm], or why they stand as
   *  read. A shortfall that the speed may explain then flags nobody. */
  readonly uneven?: { readonly to: number; readonly refused?: SpeedRefusal };
  readonly lossFree?: LossFreePressure;
  /** The middle reading that a kept P_0 was refused for [Pa]. */
  readonly middle?: number;
  /** What engine.json says of the calibration behind it. */
  readonly calibration?: string;
  /** Why the readings stand as they are; the reading in reference air then counts. */
  readonly refused?: SpeedRefusal;
  /** In the engine's order, from the reading in reference air; undefined where there is none to compare, all of them
   *  where refused. */
  readonly cylinders: readonly (SpeedCorrected | undefined)[];
}
