// Whether the test gone by still speaks of the engine as it is, and how far it is trusted then.

import type { DecisionInput, Job } from "../../decision/index.ts";
import { workAfter } from "../run-in.ts";
import { type Deciding, stillSpeaks } from "./deciding.ts";
import type { DecisionAssessment } from "./decision-assessment.ts";

type Speaks = DecisionAssessment["speaks"];

/** Work on one cylinder, too, asks for a test of them all before anything is decided. */
export const speaksOf = (deciding: Deciding): Speaks => {
  const { main, record } = deciding;
  if (main === undefined) return "none";
  const isWorkedOn = workAfter(record, main.test) !== undefined;
  return stillSpeaks(deciding, main.test) && !isWorkedOn ? "today" : "too-old";
};

/** No test tells nothing, as a void one does. One that is too old, or from before the last work, leaves today in doubt as
 *  long as it can still be tested; with the head off the years are all there is. */
export const trustOf = ({ main }: Deciding, speaks: Speaks, done: readonly Job[]): DecisionInput["trust"] => {
  if (main === undefined || speaks === "none") return "void";
  if (main.trust.code === "void") return main.trust.voids === "all" ? "void" : "doubtful";
  return speaks === "too-old" && !done.includes("headOff") ? "doubtful" : main.trust.code;
};
