// What the assessment of one test is made of.

import type { PressureCorrection } from "../cranking/index.ts";
import type { EngineRecord, Heard, PressureKind, Test } from "../record/index.ts";
import type { RuleFinding } from "../rules/index.ts";
import type { Spread, Standing } from "../spread/index.ts";
import type { LeakValue } from "./assess-leak-down.ts";
import type { GaugeComparison } from "./gauge-comparison.ts";
import type { LevelSince } from "./level-since.ts";
import type { SinceFirst } from "./since-first.ts";
import type { DigitSlip } from "./slips.ts";
import type { Trust } from "./trust-reason.ts";

/** One kind of cranking reading of one cylinder [Pa gauge]. */
export interface PressureValue {
  readonly readings: readonly number[];
  readonly value: number;
  readonly corrected: number;
  /** Standard uncertainty of corrected; absent for a reading of 0. */
  readonly uncertainty?: number;
  readonly doubtful: boolean;
  readonly pegged: boolean;
  /** Dry readings only: a digit seems to have slipped. */
  readonly slip?: DigitSlip;
}

/** The maker's least pressure, largest difference to the highest, least share of it; or the usual share of three
 *  quarters, which counts only where the maker states none of these. */
export type LimitMissed = "maker-minimum" | "maker-difference" | "maker-ratio" | "usual-ratio";

export interface CylinderAssessment {
  readonly label: string;
  readonly pressures: Readonly<Partial<Record<PressureKind, PressureValue>>>;
  readonly leakDown?: LeakValue;
  readonly heard?: readonly Heard[];
  /** The worse of dry and leak-down; absent where neither was read, and in a test that is void. */
  readonly standing?: Standing;
  /** Of the dry readings alone. */
  readonly dryStanding?: Standing;
  /** Distance below the fellows in standard deviations, dry; absent for the core. */
  readonly t?: number;
  /** 1 - value / median of all. */
  readonly belowMedian?: number;
  /** 1 - value / median of the other cylinders. */
  readonly belowOthers?: number;
  /** How far it has moved against the others since the first test of its history, dry. */
  readonly sinceFirst?: SinceFirst;
  /** Further below its fellows than chance brings once in 20 tests, or no compression; dry. */
  readonly flagged: boolean;
  /** Flagged in the test before, dry. */
  readonly flaggedBefore: boolean;
  /** Below the maker's own limit, or below three quarters of the highest where the maker states none. */
  readonly belowLimit: boolean;
  /** Which of these limits it is below. */
  readonly limitsMissed: readonly LimitMissed[];
}

/** For worn rings or bore: none, weak, in favour, strong. */
export type OilEvidence = "none" | "weak" | "rings" | "strong";

export interface OilRise {
  readonly label: string;
  /** With oil / dry - 1. */
  readonly rise: number;
  /** Less the rise of the control; absent for the control, and where there is none. */
  readonly net?: number;
  /** Low cylinders only. */
  readonly evidence?: OilEvidence;
}

export interface OilTest {
  /** Every cylinder read both dry and with oil, in the engine's order. */
  readonly cylinders: readonly OilRise[];
  /** Labels of the sound cylinders that were oiled too. */
  readonly controls: readonly string[];
  /** Mean of their rises; absent where there is none. */
  readonly controlRise?: number;
}

export interface TestAssessment {
  readonly record: EngineRecord;
  readonly test: Test;
  readonly trust: Trust;
  readonly correction: PressureCorrection;
  readonly cylinders: readonly CylinderAssessment[];
  /** Of the dry readings corrected to reference air; absent when none was taken. */
  readonly spread?: Spread;
  /** Whether lowest and highest lie further apart than healthy cylinders do once in 20 tests. Where more than half have
   *  lost, no single one stands out and only this shows it; absent below two readings. */
  readonly apart?: "as-healthy" | "wider";
  /** Cylinders, less than half, that read so far above the rest that either they read high or all the rest have lost
   *  alike: one test cannot tell which. Absent where there are none, or where one stands out low. */
  readonly high?: readonly string[];
  /** Readings by gauges that do not count, where a test holds several. */
  readonly comparisons: readonly GaugeComparison[];
  /** What oil did to the readings; absent where no cylinder was read both dry and with oil. */
  readonly oil?: OilTest;
  /** The level of the whole engine against an earlier test; absent unless all read lower and beyond chance. */
  readonly levelSince?: LevelSince;
  readonly rules: readonly RuleFinding[];
  readonly nextTests: readonly NextTest[];
  readonly missing: readonly string[];
}

/** A measurement worth making next. */
export interface NextTest {
  readonly code:
    "repeat" | "conditions" | "retest-warm" | "second-gauge" | "wet" | "leak-down-and-listen" | "cranking";
  readonly text: string;
  readonly minutes: number;
}
