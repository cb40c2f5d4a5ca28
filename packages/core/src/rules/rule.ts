// A rule of a sheet: a formula over the readings of one test, a limit, and where it was published.

import type { PressureUnit } from "../quantity/index.ts";
import type { Applies } from "./applies.ts";
import type { Formula } from "./formula.ts";
import type { Holds } from "./formula-holds.ts";

/** What a rule looks at. A maker's own figure of a family takes the place of the sheet's rules of that family. */
export const ruleFamilies = ["ratio", "difference", "deviation", "minimum", "leak-down"] as const;
export type RuleFamily = (typeof ruleFamilies)[number];

/** How far the published rule was seen. */
export const ruleStatuses = [
  "read in the source",
  "excerpt seen",
  "second hand",
  "from memory",
  "common practice",
  "judgement",
] as const;
export type RuleStatus = (typeof ruleStatuses)[number];

export const limitComparisons = [">=", ">", "<=", "<"] as const;
export type LimitComparison = (typeof limitComparisons)[number];

/** The unit a limit was printed in; `1` and `%` are fractions. */
export type LimitUnit = PressureUnit | "1" | "%";

/** What a rule holds its value against. */
export interface Limit {
  /** Gauge pressure or difference [Pa], or a fraction. */
  readonly value: number;
  readonly unit: LimitUnit;
  readonly compare: LimitComparison;
}

/** One rule of a sheet: a formula over the readings of one test, its limit, and where it was published. */
export interface Rule {
  readonly id: string;
  readonly family: RuleFamily;
  /** The formula as written in the sheet, and as a tree. */
  readonly formula: string;
  readonly tree: Formula;
  readonly holds: Holds;
  /** Absent where the formula itself says yes or no. */
  readonly limit?: Limit;
  readonly applies: Applies;
  /** The rule in a sentence. */
  readonly text: string;
  readonly source: string;
  /** `engine record`: as the owner wrote it down. */
  readonly status: RuleStatus | "engine record";
}

/** The rules of one file. */
export interface RuleSheet {
  readonly file: string;
  readonly rules: readonly Rule[];
}
