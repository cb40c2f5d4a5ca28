// Which of the handbook's sentences fits, what to do first, and how it presses. The sentences are the caller's.

import type { Grounds } from "./grounds.ts";
import type { Guard } from "./guards.ts";
import { canBeTested } from "../worth/possible-tests.ts";
import { isSpared, isStopped } from "./stops.ts";
import type { Reason, Word } from "./word.ts";

/** `needed` and the like name the case of handbook/decision.md 8; never more than one. */
export type Saying =
  | "open-leave"
  | "open-opportunity"
  | "level"
  | "test-again"
  | "watch"
  | "needed"
  | "no-prices"
  | "leave"
  | "opportunity";

export type NextStep =
  | "usual-test"
  | "find-the-source"
  | "repeat-this-test"
  | "test-otherwise"
  | "run-warm-and-retest"
  | "prove-gauge-throttle-battery"
  | "measure-again"
  | "second-method"
  | "look-at-the-valve"
  | "retest-before-hard-use"
  | "offered-test"
  | "second-method-with-sight"
  | "look-inside-and-retest"
  | "measure-before-ordering";

/** `stop`: chunks in the filter, heavy knock or combustion gas in the coolant, whatever the verdict; `no-hard-use`: bearing
 *  metal, whatever the verdict. */
export type Urgency = "stop" | "before-further-use" | "no-hard-use" | "planned" | "not-urgent";

/** @source handbook/decision.md 8 */
export const sayingOf = ({ input, ratio }: Grounds, { verdict, basis, reasons }: Word): Saying => {
  const open = input.done.length > 0;
  if (basis === "needed") return "needed";
  if (basis === "opportunity") return open ? "open-opportunity" : "opportunity";
  if (verdict === "test-again") return "test-again";
  if (reasons.includes("level")) return "level";
  if (open && ratio !== undefined) return "no-prices";
  if (verdict === "watch-it") return open ? "open-leave" : "watch";
  return open ? "open-leave" : "leave";
};

/** @returns undefined where nothing presses  @source handbook/decision.md 2 and 8 */
export const urgencyOf = (grounds: Grounds, { basis }: Word): Urgency | undefined => {
  const { input, comparison } = grounds;
  if (isStopped(grounds)) return "stop";
  if (basis === "needed" && input.use === "safety") return "before-further-use";
  if (isSpared(grounds)) return "no-hard-use";
  if (basis !== "needed") return undefined;
  return comparison !== undefined && comparison.difference < 0 ? "not-urgent" : "planned";
};

/** Where lives hang on it a top end is opened after a look at its valves: needless removal is a hazard of its own.
 *  @source handbook/decision.md 2, G8; 8 */
export const nextStepOf = (
  { verdict, repair, reasons }: Word,
  guards: readonly Guard[],
  { input, evidence }: Grounds,
): NextStep => {
  const step = stepFor[reasons[0]];
  // what is asked for cannot be made as it stands: measured now, tested once it is closed
  if (verdict === "watch-it" && step !== undefined && !canBeTested(input.done))
    return "retest-before-hard-use";
  if (step !== undefined) return step;
  const isOpen = input.done.includes("headOff");
  const ofValves = evidence.counted.some(({ id }) => id === "B2" || id === "I1");
  if (repair === "topEnd" && input.use === "safety" && !isOpen && ofValves) return "look-at-the-valve";
  if (verdict === "test-again") return "second-method-with-sight";
  if (guards.some(({ code }) => code === "instruments-disagree")) return "look-inside-and-retest";
  return repair === "reRing" || repair === "rebuild" ? "measure-before-ordering" : "usual-test";
};

const stepFor: Readonly<Partial<Record<Reason, NextStep>>> = {
  "source-unknown": "find-the-source",
  "test-void": "repeat-this-test",
  "test-doubtful": "repeat-this-test",
  "read-again": "repeat-this-test",
  "leak-unplaced": "test-otherwise",
  "low-unexplained": "test-otherwise",
  "one-odd-test": "repeat-this-test",
  "not-itself": "run-warm-and-retest",
  "low-everywhere": "prove-gauge-throttle-battery",
  "one-line-only": "measure-again",
  "one-method-only": "second-method",
  "instruments-disagree": "look-inside-and-retest",
  "limit-too-near": "retest-before-hard-use",
  "test-worth-making": "offered-test",
  "outside-the-chance": "offered-test",
  "scored-bore": "offered-test",
};
