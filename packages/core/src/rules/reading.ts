// What the rules are judged on: a value a cylinder, with how far it can be trusted.

import type { GaugePressure } from "../quantity/index.ts";

/** Why a cylinder's value cannot carry a rule. */
export type ReadingGap = "not-taken" | "pegged" | "doubtful";

export interface RuleReading {
  readonly label: string;
  /** `taken`, or what is wrong with the reading. */
  readonly state: "taken" | ReadingGap;
  /** Corrected for air pressure; rules that compare the cylinders of one test use it [Pa gauge]. */
  readonly pressureCorrected?: GaugePressure;
  /** Corrected for air pressure and speed; limits and differences in pressure use it [Pa gauge]. */
  readonly fullyCorrected?: GaugePressure;
  /** Leak-down: fraction held of the supply, cylinder side over supply. */
  readonly held?: number;
  /** Standard uncertainty of this reading alone, relative: scatter and scale division. */
  readonly ownUncertainty: number;
  /** The same of the fully corrected value, where speed was corrected: leak or not is in it. */
  readonly fullOwnUncertainty?: number;
  /** Standard uncertainty shared by all readings of the test, relative: gauge class and correction. */
  readonly commonUncertainty: number;
}
