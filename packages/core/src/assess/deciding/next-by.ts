// By when the next step is to be made, where a date alone does not say it.

import { type Decision, type Job, canBeTested } from "../../decision/index.ts";

/** By when the next step is to be made: on a date, or before or after something that is done. */
export type NextBy =
  | "date"
  | "today"
  | "before-closing"
  | "once-closed"
  | "before-hard-use"
  | "before-further-use"
  | "after-the-work";

export const nextByOf = (
  { verdict, basis, next, urgency, licensed }: Decision,
  done: readonly Job[],
  {
    due,
    dead,
    step,
  }: {
    readonly due: "due" | "to-come";
    readonly dead: "some" | "none";
    /** The code of the next step. */
    readonly step: string | undefined;
  },
): NextBy => {
  const isOpen = done.includes("headOff") || done.includes("bottomOpen");
  if (isOpen && next.step === "find-the-source") return "before-closing";
  if (next.step === "find-the-source" || urgency === "stop" || urgency === "before-further-use")
    return "before-further-use";
  if (basis !== "nothing-shown") return "after-the-work";
  if (verdict !== "test-again") {
    if (next.step === "retest-before-hard-use") return isOpen ? "before-closing" : "before-hard-use";
    if (due === "to-come") return "date";
    // what holds nothing is not loaded before somebody knows why
    return isOpen ? "once-closed" : dead === "some" ? "before-hard-use" : "today";
  }
  // new rings run in by being used
  if (step === "run-in") return "date";
  if (licensed) return "before-further-use";
  if (isOpen && (next.step === "offered-test" || next.step === "measure-again")) return "before-closing";
  if (!canBeTested(done)) return "once-closed";
  return dead === "some" || next.step === "retest-before-hard-use" ? "before-hard-use" : "today";
};
