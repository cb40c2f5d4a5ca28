// What holds while a test that is asked for is not made.

import type { Verdict } from "../words.ts";
import { layupNamed } from "./by-money.ts";
import type { Grounds } from "./grounds.ts";
import type { Urgency } from "./saying.ts";
import { settledWord, type Reason, type Word } from "./word.ts";

export interface IfNotTested {
  readonly verdict: Exclude<Verdict, "test-again">;
  /** How it may be used meanwhile. */
  readonly use: "as-now" | "no-hard-use" | "not-used";
  /** Years until the latest layup for work that pays, where the word is to watch it. */
  readonly planBy?: number;
}

/** Where the readings carry the other word, that word; else it is watched, or left where nothing at all is known of it. What
 *  stops an engine, and where lives hang on it, waits for the test. Never milder than the evidence that is not in doubt.
 *  @returns undefined where no test is asked for  (our judgement) */
export const ifNotTested = (
  grounds: Grounds,
  { verdict, reasons }: Word,
  urgency: Urgency | undefined,
): IfNotTested | undefined => {
  if (verdict !== "test-again") return undefined;
  const { input, evidence } = grounds;
  const [first] = reasons;
  const isUnknown = first === "test-void" && evidence.counted.length === 0;
  const word = carried.includes(first) ? settledWord(grounds) : undefined;
  const settled =
    word?.verdict ?? (first === "scored-bore" ? "re-ring" : isUnknown ? "leave-it" : "watch-it");
  const isHeld = input.use === "safety" || urgency === "stop" || first === "source-unknown";
  const isAsNow = (isUnknown || first === "test-worth-making") && urgency !== "no-hard-use";
  const planned = word?.reasons.includes("work-in-sight") === true ? layupNamed(grounds) : undefined;
  return {
    verdict: settled === "test-again" ? "watch-it" : settled,
    use: isHeld ? "not-used" : isAsNow ? "as-now" : "no-hard-use",
    ...(planned === undefined ? {} : { planBy: planned.planBy }),
  };
};

/** Reasons that leave the readings standing. */
const carried: readonly Reason[] = ["test-worth-making", "outside-the-chance", "one-method-only"];
