// A test that comes before the decision: what it costs, how likely it changes the word, and what holds if it is not made.

import type { Decision, DecisionInput } from "../../decision/index.ts";
import type { NextAction } from "./own-step.ts";

/** A test that comes before the decision: what it costs, how likely it changes the word, and what holds without it. */
export interface TestAgain {
  readonly minutes?: number;
  /** In money; absent without a price of a test. */
  readonly cost?: number;
  /** Chance that it changes the word, and what it is worth in money; absent where nothing could be reckoned. */
  readonly change?: number;
  readonly worth?: number;
  /** Chance of need at which acting breaks even. */
  readonly breakEven?: number;
  readonly ifNotTested: NonNullable<Decision["ifNotTested"]>;
}

/** Undefined where no test comes first. */
export const testAgainOf = (
  { ifNotTested, testWorth, comparison, ratio, next }: Decision,
  { test, prices }: DecisionInput,
  action: NextAction | undefined,
): TestAgain | undefined => {
  if (ifNotTested === undefined) return undefined;
  // where damage comes from is no test at a price, and changes the word whatever it comes to
  if (next.step === "find-the-source")
    return { ...(action?.minutes === undefined ? {} : { minutes: action.minutes }), ifNotTested };
  const cost = test?.cost ?? prices?.test;
  const breakEven = comparison?.breakEven?.probability ?? ratio?.own?.breakEven;
  return {
    ...(action?.minutes === undefined ? {} : { minutes: action.minutes }),
    ...(cost === undefined ? {} : { cost }),
    ...(testWorth === undefined ? {} : { change: testWorth.change }),
    ...(testWorth?.evsi === undefined ? {} : { worth: testWorth.evsi }),
    ...(breakEven === undefined ? {} : { breakEven }),
    ifNotTested,
  };
};
