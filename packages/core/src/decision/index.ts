// The decision: leave it, test again, watch it, open the top end, re-ring, rebuild.

export { decide } from "./decide.ts";
export type { Decision } from "./decision.ts";
export { judgedOf, type Judged } from "./judged.ts";
export type {
  Chances,
  DecisionInput,
  Doubt,
  EvidenceRow,
  OfferedTest,
  Ownership,
  Prices,
  Shares,
  Wear,
  WearLine,
} from "./input.ts";
export { intervals } from "./judgements.ts";
export { ladder, type EvidenceId } from "./evidence/ladder.ts";
export type { EvidenceLine, LadderRow } from "./evidence/row.ts";
export type { PlaceScore, Scores, State } from "./evidence/scores.ts";
export type { BreakEven } from "./money/break-even.ts";
export type { Comparison } from "./money/comparison.ts";
export { wayInto } from "./money/jobs.ts";
export type { Keep } from "./money/keep.ts";
export type { LayupPlan } from "./money/layup.ts";
export type { Flip } from "./money/tipping.ts";
export type { Swing } from "./money/tornado.ts";
export type { RatioView } from "./money/without-prices.ts";
export type { NextDate } from "./next/next-date.ts";
export type { UnpricedFlip } from "./money/flips-without-prices.ts";
export type { Guard } from "./verdict/guards.ts";
export type { Due } from "./verdict/grounds.ts";
export type { IfNotTested } from "./verdict/if-not-tested.ts";
export type { NextStep, Saying, Urgency } from "./verdict/saying.ts";
export type { Basis, Reason } from "./verdict/word.ts";
export type { Act, CurePlace, Job, Margin, Repair, Verdict, WornPlace } from "./words.ts";
export { turnsOf, type Turn } from "./verdict/turns.ts";
export { countingWithin } from "./wear/outlook.ts";
export { canBeTested, type Access } from "./worth/possible-tests.ts";
export type { TestWorth } from "./worth/test-worth.ts";
