// What to do now: what to measure before it is closed, the next test and why then.

import type { DecisionAssessment, NextStep, Repair } from "@sealtrend/core";
import { type Proof, toProve } from "./decide-test-named.ts";
import { isOpen } from "./decide-words.ts";
import { prose } from "../prose.ts";

/** `measure    bores at three levels, ring gaps (20 minutes, before you close it)` */
export const measureLines = (assessment: DecisionAssessment, width: number): readonly string[] => {
  const { measureNow, decision } = assessment;
  if (measureNow.length === 0) return [];
  const minutes = measureNow.reduce((sum, one) => sum + one.minutes, 0);
  const until =
    decision.basis === "opportunity" || decision.basis === "needed"
      ? "before you order"
      : isOpen(assessment)
        ? "before you close it"
        : "before it goes back";
  return prose(
    `${measureNow.map(({ text }) => text).join("; ")} (${String(minutes)} minutes, ${until})`,
    width,
    "measure    ",
  );
};

/** `next test  2027-05-10, or at 1450 h: the usual interval` */
export const nextLines = (assessment: DecisionAssessment, width: number): readonly string[] => {
  const { decision } = assessment;
  const { step } = decision.next;
  if (decision.verdict === "test-again")
    return step === "offered-test" && assessment.input.test?.what === "measurement"
      ? []
      : prose(`${steps[step](assessment)}${closedText(assessment)}`, width, "next       ");
  if (step === "retest-before-hard-use")
    return prose(`${steps[step](assessment)}${closedText(assessment)}`, width, "next test  ");
  if (decision.basis !== "nothing-shown") return prose(workText(assessment), width, "next       ");
  const look = step === "look-inside-and-retest" ? `${steps[step](assessment)}; then ` : "";
  return prose(`${look}${dateText(assessment)}`, width, "next test  ");
};

/** Where it cannot be turned over as it stands. */
const closedText = (assessment: DecisionAssessment): string => {
  if (!isOpen(assessment)) return "";
  return isLeakDown(assessment) ? " (if it can be turned as it is)" : " (once it is closed up)";
};

/** Before hard use, with the head on and the bottom end open: the one test that is left. */
const isLeakDown = ({ decision }: DecisionAssessment): boolean =>
  decision.access === "bottom-open" && decision.next.step === "retest-before-hard-use";

/** What goes before the work, and the first test after it. */
const workText = (assessment: DecisionAssessment): string => {
  const { decision, measureNow, history } = assessment;
  const measured = decision.next.step === "measure-before-ordering" && measureNow.length === 0;
  const before = measured ? `${steps["measure-before-ordering"](assessment)}; ` : "";
  const runIn = decision.verdict === "open-the-top-end" ? "" : ", run in";
  const what = { topEnd: "valve job", reRing: "re-ring", rebuild: "rebuild" }[repairOf(decision)];
  return `${before}when done: sealtrend service ${history.record.engine.id} --what "${what}"${runIn}, test anew`;
};

const repairOf = ({ verdict }: DecisionAssessment["decision"]): Repair =>
  verdict === "open-the-top-end" ? "topEnd" : verdict === "rebuild" ? "rebuild" : "reRing";

/** Date and meter, whichever comes first, and why then; in two words where it is due or overdue. */
const dateText = (assessment: DecisionAssessment): string => {
  const { decision, nextTest, history, today } = assessment;
  if (nextTest.date <= today)
    return isOpen(assessment) ? "the first after closing, warm: a new baseline" : "due now";
  const { engine } = history.record;
  const meter =
    nextTest.meter === undefined
      ? ""
      : ` or ${nextTest.meter.toFixed(0)} ${engine.meter ?? ""}, whichever comes first`;
  const { next } = decision;
  const why =
    next.why === "risk"
      ? "until then about the chance that is taken of passing the limit unseen"
      : next.cap < next.usualCap
        ? "sooner than usual, for something speaks for wear"
        : "the usual interval";
  const tells =
    next.why === "interval" && next.sharpens === "hardly" && decision.chance !== undefined
      ? "; it can confirm, hardly sharpen"
      : "";
  return `${nextTest.date}${meter}: ${why}${tells}`;
};

const how = (kind: string, { history }: DecisionAssessment): string =>
  `sealtrend how ${kind} ${history.record.engine.id}`;

const proofs: Readonly<Record<Proof, string>> = {
  gauge: "prove the gauge",
  throttle: "open the throttle",
  battery: "charge the battery",
  "cranking speed": "note the cranking speed",
};

const steps: Readonly<Record<NextStep, (assessment: DecisionAssessment) => string>> = {
  "usual-test": (given) => `one more test: ${how("dry", given)}`,
  "repeat-this-test": (given) =>
    `${given.test === undefined ? "a first test" : "this test again"}: ${how("dry", given)}`,
  "run-warm-and-retest": (given) => `run it warm, then test again: ${how("dry", given)}`,
  "prove-gauge-throttle-battery": (given) =>
    `${toProve(given)
      .map((proof) => proofs[proof])
      .join(", ")}, then test again: ${how("dry", given)}`,
  "measure-again": () => "measure it a second time, set up anew",
  "retest-before-hard-use": (given) =>
    `test again before hard use: ${how(isLeakDown(given) ? "leak-down" : "dry", given)}`,
  "offered-test": (given) => {
    const kind = given.input.test?.what;
    if (kind === "measurement") return "measure it while it is open";
    return kind === "leak-down"
      ? `a leak-down, three repeats: ${how("leak-down", given)}`
      : `a compression test, three repeats: ${how("dry", given)}`;
  },
  "second-method-with-sight": (given) =>
    `a leak-down, and a look inside with a borescope, before further use: ${how("leak-down", given)}`,
  "look-inside-and-retest": (given) =>
    `look inside with a borescope and test both ways again: ${how("leak-down", given)}`,
  "measure-before-ordering": (given) => `measure before ordering: ${how("teardown", given)}`,
};
