// What the speed correction of one test came to.

import type { LossFreePressure, SpeedCorrected, SpeedRefusal } from "../../cranking/index.ts";

export interface SpeedAssessment {
  /** Middle speed of the cylinders, and the reference speed [rpm]; absent where not known. */
  readonly from?: number;
  readonly to?: number;
  /** Slowest and fastest of the cylinders [rpm]. */
  readonly least?: number;
  readonly most?: number;
  readonly lossFree?: LossFreePressure;
  /** What engine.json says of the calibration behind it. */
  readonly calibration?: string;
  /** Why the readings stand as they are; the reading in reference air then counts. */
  readonly refused?: SpeedRefusal;
  /** In the engine's order, from the reading in reference air; undefined where there is none to compare, all of them
   *  where refused. */
  readonly cylinders: readonly (SpeedCorrected | undefined)[];
}
