// How far the engine is open, and what can still be tested or measured as it stands.

import type { Job, OfferedTest } from "../../decision/index.ts";
import type { TestAssessment } from "../assessment.ts";
import type { Opening } from "./choices.ts";

const jobsOf: Readonly<Record<Opening, readonly Job[]>> = {
  "head-off": ["headOff"],
  "bottom-open": ["bottomOpen"],
  "pistons-in": ["headOff", "bottomOpen"],
  "pistons-out": ["headOff", "bottomOpen"],
  "crank-out": ["headOff", "bottomOpen"],
};

/** Jobs done already. Whether rings were disturbed is for the screen to say. */
export const doneOf = (opened: Opening | undefined, engineOut: "out" | "in"): readonly Job[] => [
  ...(opened === undefined ? [] : jobsOf[opened]),
  ...(engineOut === "out" ? (["engineOut"] as const) : []),
];

/** Repeats of a test that is made to decide. @source handbook/decision.md 8 (three repeats) */
const repeats = 3;

/** The test to offer before deciding: in the open engine a measurement, else the one that tells most of those proposed.
 *  @param cost - of a test of the usual kind; a measurement takes as long */
export const offeredTest = (
  done: readonly Job[],
  main: TestAssessment | undefined,
  cost: number | undefined,
): OfferedTest => {
  const priced = cost === undefined ? {} : { cost };
  if (done.includes("headOff") || done.includes("bottomOpen"))
    return { what: "measurement", ...priced, tells: { kind: "as-judged" } };
  const first = main?.nextTests.find(({ code }) => leakCodes.includes(code) || crankingCodes.includes(code));
  const isLeak = done.includes("engineOut") || (first !== undefined && leakCodes.includes(first.code));
  return {
    what: isLeak ? "leak-down" : "cranking",
    ...priced,
    tells: { kind: "readings", repeats, after: 0 },
  };
};

const leakCodes: readonly string[] = [
  "leak-down-and-listen",
  "leak-down-lower-down",
  "re-index-the-neighbour",
];
const crankingCodes: readonly string[] = [
  "repeat",
  "first-stroke",
  "wet",
  "conditions",
  "second-gauge",
  "re-seat-and-repeat",
  "cranking",
  "running",
  "retest-warm",
];
