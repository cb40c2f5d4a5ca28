// What a decision says: the word, what it rests on, and what would change it.

import type { Scores } from "./evidence/scores.ts";
import type { EvidenceRow } from "./input.ts";
import type { Comparison } from "./money/comparison.ts";
import type { Keep } from "./money/keep.ts";
import type { LayupPlan } from "./money/layup.ts";
import type { RatioView } from "./money/without-prices.ts";
import type { NextDate } from "./next/next-date.ts";
import type { UnpricedFlip } from "./money/flips-without-prices.ts";
import type { Due } from "./verdict/grounds.ts";
import type { Guard } from "./verdict/guards.ts";
import type { IfNotTested } from "./verdict/if-not-tested.ts";
import type { NextStep, Saying, Urgency } from "./verdict/saying.ts";
import type { Basis, Reason } from "./verdict/word.ts";
import type { Margin, Repair, Verdict } from "./words.ts";
import type { Access } from "./worth/possible-tests.ts";
import type { TestWorth } from "./worth/test-worth.ts";

/** What a decision says: the word, what it rests on, and what would change it. Money in the unit of the prices. */
export interface Decision {
  readonly verdict: Verdict;
  readonly basis: Basis;
  /** Why this word; the deciding one first. */
  readonly reasons: readonly [Reason, ...Reason[]];
  /** How firm it stands against its inputs; absent where nothing was reckoned that could tip it. */
  readonly margin?: Margin;
  readonly urgency?: Urgency;
  /** The case of handbook/decision.md 8. */
  readonly saying: Saying;
  readonly guards: readonly Guard[];
  /** What is established as needed, whatever the money says. */
  readonly need?: Repair;
  readonly scores: Scores;
  readonly counted: readonly EvidenceRow[];
  /** Rows that a guard set aside. */
  readonly suspended: readonly EvidenceRow[];
  readonly access: Access;
  /** The horizon [years]. */
  readonly years: number;
  /** That the worst passes its limit within the horizon; wear only, sudden faults stand outside it. */
  readonly chance?: {
    readonly probability: number;
    /** Absent where none is likely enough to be named first. */
    readonly label?: string;
    /** That any of several passes its own, at most. */
    readonly atMost: number;
  };
  /** Expected cost of each act within the horizon; without prices the acts alone. */
  readonly options: readonly { readonly code: Verdict; readonly expectedCost?: number }[];
  readonly comparison?: Comparison;
  /** The re-ring beside a top end that is due. */
  readonly beside?: Comparison;
  readonly ratio?: RatioView;
  /** Without prices: what of the years and the limit would change the word. */
  readonly unpricedFlips: readonly UnpricedFlip[];
  /** Rings that go in new because they were disturbed: then nothing is compared. */
  readonly due?: Due;
  readonly keep?: Keep;
  /** Kept for good with the age not known: years since the rings were new from which acting at this opening pays. */
  readonly keepFromAge?: number;
  /** In place. */
  readonly plan?: LayupPlan;
  /** Years until the latest layup that is nearly as cheap as the best; absent where none is. */
  readonly planBy?: number;
  readonly testWorth?: TestWorth;
  /** Where a test comes first: what holds if it is not made. */
  readonly ifNotTested?: IfNotTested;
  readonly next: NextDate & { readonly step: NextStep };
  /** What was not known and would say more; `age` and `years-left` of an engine that is kept for good. */
  readonly missing: readonly ("prices" | "chance" | "age" | "years-left")[];
  /** A licensed person decides. */
  readonly licensed: boolean;
}
