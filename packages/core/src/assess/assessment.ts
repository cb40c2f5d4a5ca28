// What the assessment of one test is made of.

import type { PressureCorrection } from "../cranking/index.ts";
import type { Diagnosis, Evidence, Faults } from "../diagnosis/index.ts";
import type { EngineRecord, Heard, PressureKind, Service, Test } from "../record/index.ts";
import type { RuleFinding } from "../rules/index.ts";
import type { Spread, Standing } from "../spread/index.ts";
import type { LeakValue } from "./leak/assess-leak-down.ts";
import type { Unexplained } from "./causes/unexplained-finding.ts";
import type { GaugeComparison } from "./gauges/gauge-comparison.ts";
import type { BuildUp } from "./oil/build-up-finding.ts";
import type { GaugeHose } from "./gauges/gauge-hose.ts";
import type { LeakTest } from "./leak/leak-test.ts";
import type { LevelSince, SinceFirst } from "./years/changes.ts";
import type { OilTest } from "./oil/oil-finding.ts";
import type { RepeatsWord } from "./values/repeats-apart.ts";
import type { DigitSlip } from "./values/slips.ts";
import type { SpeedAssessment } from "./speed/speed-assessment.ts";
import type { Trust } from "./trust/trust-reason.ts";

/** A dry reading in reference air and at the reference speed [Pa gauge]: what limits and other years are held against. */
export interface FullyCorrected {
  readonly corrected: number;
  /** Standard uncertainty of corrected. */
  readonly uncertainty: number;
  /** Its parts, relative: of this reading alone, and shared by all readings of the test. */
  readonly own: number;
  readonly common: number;
  /** N_s [rpm]: grows with leak and wear. */
  readonly lossSpeed: number;
}

/** One kind of cranking reading of one cylinder [Pa gauge]. */
export interface PressureValue {
  readonly readings: readonly number[];
  /** Mean of the takes as read. */
  readonly read: number;
  /** The same without what the gauge is known to read too high. */
  readonly value: number;
  /** In reference air: what the readings of one test are compared by, unless `even` stands. */
  readonly corrected: number;
  /** Dry readings only, where the cylinders were cranked at differing speeds: in reference air and at the middle one of
   *  them; absent where that was refused. */
  readonly even?: number;
  /** Standard uncertainty of corrected; absent for a reading of 0. */
  readonly uncertainty?: number;
  /** Dry readings only: in reference air and at the reference speed; absent where that was refused. */
  readonly full?: FullyCorrected;
  readonly doubtful: boolean;
  readonly pegged: boolean;
  /** Dry readings only: a digit seems to have slipped. */
  readonly slip?: DigitSlip;
}

/** The maker's least pressure, largest difference to the highest, least share of it; or the usual share of three
 *  quarters, which counts only where the maker states none of these. */
export type LimitMissed = "maker-minimum" | "maker-difference" | "maker-ratio" | "usual-ratio";

/** One cylinder in one test: its readings, its place among its fellows, and what limits and rules it misses.
 *  Fractions, and Pa above the air around the gauge. */
export interface CylinderAssessment {
  readonly label: string;
  readonly pressures: Readonly<Partial<Record<PressureKind, PressureValue>>>;
  readonly leakDown?: LeakValue;
  readonly heard?: readonly Heard[];
  /** The worse of dry and leak-down; absent where neither was read, and in a test that is void. */
  readonly standing?: Standing;
  /** Of the dry readings alone. */
  readonly dryStanding?: Standing;
  /** Dry, where it was read more than once. */
  readonly repeats?: RepeatsWord;
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
  /** Low beyond the chance of one reading, dry: flagged in the test before as well, or on two readings that agree. */
  readonly confirmed?: true;
  /** Below the maker's own limit, or below three quarters of the highest where the maker states none. */
  readonly belowLimit: boolean;
  /** Low in its dry reading, which does not look like a leak: its leak-down is no worse than its fellows', no air was heard
   *  to leave it, and its leading cause lets none out. */
  readonly lowWithoutLeak?: true;
  /** Below these limits by less than the doubt of its reading: too close to call. */
  readonly atLimit?: true;
  /** Which of these limits it is below. */
  readonly limitsMissed: readonly LimitMissed[];
}

/** All cylinders against what a sound engine would read. */
export interface LevelBelow {
  readonly from: "maker" | "estimate";
  /** [Pa gauge], as the readings are compared. */
  readonly expected: number;
  /** Of the middle reading, a fraction: -0.27 = 27 % below. */
  readonly change: number;
  /** Standard uncertainty of ln(1 + change). */
  readonly uncertainty: number;
}

/** Everything that one test says: how far it can be trusted, what was corrected, each cylinder, the rules, the likely
 *  causes and what to test next. */
export interface TestAssessment {
  readonly record: EngineRecord;
  readonly test: Test;
  readonly trust: Trust;
  readonly correction: PressureCorrection;
  /** Of the dry readings; absent where there is none to compare. */
  readonly speed?: SpeedAssessment;
  /** What the gauge of the dry readings reads too high [Pa]: taken out of their values. */
  readonly readsHigh?: number;
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
  /** The first stroke beside the last; absent unless one gauge read both of at least three cylinders. */
  readonly buildUp?: BuildUp;
  /** What the hose of the gauge takes from the dry readings on this engine; absent where it takes nothing, or nothing is
   *  known of it. */
  readonly gaugeHose?: GaugeHose;
  /** The leak-down of this test as a whole; absent where none was read. */
  readonly leak?: LeakTest;
  /** What can hurt, from what was recorded and in what is to be done next. */
  readonly cautions: readonly string[];
  /** The level of the whole engine against an earlier test; absent unless all read lower and beyond chance. */
  readonly levelSince?: LevelSince;
  /** The level of the whole engine against the maker's figure or an estimate; absent unless all read lower and beyond
   *  chance. */
  readonly levelBelow?: LevelBelow;
  readonly rules: readonly RuleFinding[];
  /** Findings that no sound cylinder gives, where the causes say none; empty where no cause was looked for. */
  readonly unexplained: readonly Unexplained[];
  /** Likely causes and what would tell more; absent where the test is void or set aside, where nothing held anything, or was
   *  assessed without. */
  readonly diagnosis?: Diagnosis;
  /** What the diagnosis goes by. */
  readonly evidence?: Evidence;
  /** The tables it goes by. */
  readonly faults: Faults;
  readonly nextTests: readonly NextTest[];
  /** Work since which cylinders began anew, with no test after it yet: what was read here is of before it. */
  readonly workAfter?: Service;
  readonly missing: readonly string[];
}

/** A measurement worth making next. */
export interface NextTest {
  /** Of the tables of the diagnosis; or `timing-marks`, which they do not have. */
  readonly code: string;
  readonly text: string;
  readonly minutes: number;
  /** Expected to tell so much about which group of causes it is; absent where the diagnosis does not speak of it. */
  readonly bits?: number;
  readonly bitsPerHour?: number;
  /** Minutes, with what risk and a tool that is not owned count for. */
  readonly effort?: number;
  /** 0 none, 1 some, 2 pressurised air or a running engine. */
  readonly risk?: 0 | 1 | 2;
  /** Asked for by a plain rule, whatever it would tell; or by what the diagnosis expects it to tell. */
  readonly by: "rule" | "diagnosis";
  /** Among all that have bits: tells most for its effort, tells most of all, or both. Absent: others are better. */
  readonly rank?: "quickest" | "most-telling" | "both";
}
