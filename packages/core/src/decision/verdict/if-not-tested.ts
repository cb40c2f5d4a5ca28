// What holds while a test that is asked for is not made.

import type { Verdict } from "../words.ts";
import type { Grounds } from "./grounds.ts";
import type { Urgency } from "./saying.ts";
import { settledWord, type Reason, type Word } from "./word.ts";

export interface IfNotTested {
  readonly verdict: Exclude<Verdict, "test-again">;
  /** How it may be used meanwhile. */
  readonly use: "as-now" | "no-hard-use" | "not-used";
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
  const settled = carried.includes(first)
    ? settledWord(grounds).verdict
    : isUnknown
      ? "leave-it"
      : "watch-it";
  const isHeld = input.use === "safety" || urgency === "stop";
  const isAsNow = isUnknown || first === "test-worth-making";
  return {
    verdict: settled === "test-again" ? "watch-it" : settled,
    use: isHeld ? "not-used" : isAsNow ? "as-now" : "no-hard-use",
  };
};

/** Reasons that leave the readings standing. */
const carried: readonly Reason[] = ["test-worth-making", "outside-the-chance", "one-method-only"];
