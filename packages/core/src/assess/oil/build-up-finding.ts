// What the first strokes of a test say.

/** `builds-up`: low in the first stroke, then climbing more than the others: rings. `stays-flat`: nearly all of a low
 *  reading in the first stroke: valves. `as-others`: neither. */
export type BuildUpPattern = "builds-up" | "stays-flat" | "as-others";

export interface CylinderBuildUp {
  readonly label: string;
  /** First stroke / last. */
  readonly share: number;
  /** share / middle. */
  readonly relative: number;
  /** Standard uncertainty of ln share, by the scatter of the readings. */
  readonly uncertainty: number;
  /** Low cylinders only. */
  readonly pattern?: BuildUpPattern;
  /** Cylinders that are not low: a share outside the bounds and beyond the scatter of the readings. `late`: a low first
   *  stroke that builds up all the same; `early`: nearly all of the last at the first. Either is for reading again. */
  readonly odd?: "late" | "early";
}

/** What the first stroke of each cylinder reached beside its final reading: shares, 0 to 1. */
export interface BuildUp {
  /** Absent where no name was recorded. */
  readonly gauge?: string;
  /** Median share. */
  readonly middle: number;
  /** Relative shares below low and above high have a pattern. */
  readonly bounds: { readonly low: number; readonly high: number };
  readonly cylinders: readonly CylinderBuildUp[];
  /** Where the strokes were counted: about how much of its final reading the gauge had reached, if a gauge fills by the
   *  same share of what is missing in every stroke. */
  readonly reached?: { readonly strokes: number; readonly share: number };
}
