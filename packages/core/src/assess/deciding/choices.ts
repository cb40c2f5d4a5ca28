// What a decision about one engine is asked with.

import type { OwnedFor, TypedPrice } from "../../record/index.ts";
import type { AssessOptions } from "../assess-test.ts";

/** How far the engine is open: the head; the pan and bearing caps; both with the pistons still in their bores; both with
 *  the pistons out; all of it. */
export const openings = ["head-off", "bottom-open", "pistons-in", "pistons-out", "crank-out"] as const;
/** How far the engine is open already, which decides what can still be tested and what opening costs. */
export type Opening = (typeof openings)[number];

/** `rules` and `faults`: sheets of the user's own in place of the shipped ones. */
export interface DecisionChoices extends Pick<AssessOptions, "rules" | "faults"> {
  /** ISO. */
  readonly today: string;
  /** Id of the test to go by; absent: the newest that counts. */
  readonly test?: string;
  readonly opened?: Opening;
  /** Out of the vehicle, whatever else is open. */
  readonly engineOut?: true;
  /** Over that of engine.json. */
  readonly ownership?: OwnedFor;
  /** A year or a day, over that of engine.json and of the services; and the years left over that of engine.json. */
  readonly renewed?: string;
  readonly yearsLeft?: number;
  /** Each over the one of engine.json; the later wins. */
  readonly prices?: readonly TypedPrice[];
  /** Whether it is asked where the word turns as one input moves; absent: it is. That takes most of the time. */
  readonly flips?: "told" | "left-out";
}
