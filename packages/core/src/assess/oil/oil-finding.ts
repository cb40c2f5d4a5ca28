// What the assessment of an oil test is made of.

import type { OilShare } from "./oil-share.ts";

/** For worn rings or bore: none, weak, in favour, strong. */
export type OilEvidence = "none" | "weak" | "rings" | "strong";

/** Why a rise is a weak sign at most. `no-control`: nothing to take the oil's own rise from. `much-oil`: too much of it
 *  for a computed one. `unequal-oil`: the control had another amount. `other-gauge`: dry and oiled were read by two
 *  gauges, and no control shows what that did. `very-low`: below half of the others, where a share of so little is
 *  noise. `diesel`: a diesel whose maker does not allow it, where a little oil is much of the chamber. No sign at all:
 *  `too-much-oil`, more than half of the chamber; `fell`, it or the control reads lower with oil, which oil does not do. */
export type OilDoubt =
  "no-control" | "much-oil" | "unequal-oil" | "other-gauge" | "very-low" | "diesel" | "too-much-oil" | "fell";

/** What oil did to the cranking reading of one cylinder: fractions of its dry reading. */
export interface OilRise extends OilShare {
  readonly label: string;
  /** With oil / dry - 1. */
  readonly rise: number;
  /** Standard uncertainty of rise, by the scatter of the readings. */
  readonly uncertainty: number;
  /** Less the rise of the control, or less what the oil's room explains; absent where there is neither. */
  readonly net?: number;
  readonly netUncertainty?: number;
  /** Between which net lies 19 times in 20, by the scatter of the readings. */
  readonly netRange?: readonly [number, number];
  /** Low cylinders, and the only one of an engine; absent where the oil was too much. */
  readonly evidence?: OilEvidence;
  /** Present where so much of a rise may be the scatter of the readings (once in 20 times). */
  readonly withinScatter?: true;
  readonly doubts: readonly OilDoubt[];
}

/** The readings with oil of one test against the dry ones, and against those of sound cylinders that were oiled too. */
export interface OilTest {
  /** Every cylinder read both dry and with oil, in the engine's order. */
  readonly cylinders: readonly OilRise[];
  /** Labels of the sound cylinders that were oiled too. */
  readonly controls: readonly string[];
  /** Mean of their rises; absent where there is none. */
  readonly controlRise?: number;
  readonly controlUncertainty?: number;
  /** The controls rose by more than 5 % and beyond chance above what their oil's room explains: they may be worn too. */
  readonly controlsRoseToo?: true;
  /** Present where dry and oiled readings were not by one gauge, as far as was told: beside a control the rise stands, and no
   *  cause counts it. The names; absent where none was told. */
  readonly byTwo?: { readonly dry?: string; readonly wet?: string };
  /** What the rise of the others is held against. */
  readonly against?: "control" | "oil-volume";
}
