// What the assessment of one test is made of.

import type { PressureCorrection } from "../cranking/index.ts";
import type { EngineRecord, Heard, PressureKind, Test } from "../record/index.ts";
import type { RuleFinding } from "../rules/index.ts";
import type { Spread, Standing } from "../spread/index.ts";
import type { LeakValue } from "./assess-leak-down.ts";
import type { SinceFirst } from "./since-first.ts";
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
}

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
  /** Flagged in the test before, dry. */
  readonly flaggedBefore: boolean;
  /** Below the maker's own limit, or below three quarters of the highest where the maker states none. */
  readonly belowLimit: boolean;
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
