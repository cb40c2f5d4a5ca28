// What one test shows against the earlier ones.

export interface SinceFirst {
  /** First test that counts since the last work on this cylinder. */
  readonly test: string;
  readonly date: string;
  /** Change against the others, a fraction: -0.05 = 5 % lost. */
  readonly change: number;
}

/** How far all cylinders together read lower than in an earlier test by the same gauge or one linked to it.
 *  Fractions. */
export interface LevelSince {
  /** First test that counts since the last work on all cylinders, by the same gauge or one linked to it. */
  readonly test: string;
  readonly date: string;
  /** Absent where the gauge was named in neither test: it is as said if it was the same one. */
  readonly gauge?: string;
  /** The gauge of the first test: the same, or one linked to it. */
  readonly before?: string;
  /** Cylinders read in both and not worked on in between: all of them read lower. */
  readonly labels: readonly string[];
  /** Change of the middle corrected reading, a fraction: -0.26 = 26 % lower; by speed too where both tests have it. */
  readonly change: number;
  /** Middle cranking speeds of the first test and of this one [rpm], where they differ and were not corrected: what they may
   *  have done is part of the uncertainty. */
  readonly speeds?: { readonly before: number; readonly after: number };
  /** Standard uncertainty of ln(1 + change). */
  readonly uncertainty: number;
}
