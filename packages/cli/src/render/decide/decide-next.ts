// What to do now: the next step and the date of the next test, or what goes before the work.

import type { DecisionAssessment, NextBy, Repair } from "@sealtrend/core";
import { isOpen, isTestedOpen } from "./decide-words.ts";
import { prose } from "../prose.ts";

/** `next       leak-down on 3 (25 minutes): sealtrend how leak-down tractor`, `next test  2027-05-10, or at 1450 h` */
export const nextLines = (assessment: DecisionAssessment, width: number): readonly string[] => {
  const { decision } = assessment;
  if (decision.basis !== "nothing-shown")
    return [
      ...(topText(assessment) === "" ? [] : prose(topText(assessment), width, "work       ")),
      ...prose(workText(assessment), width, "next       "),
    ];
  const lines = [
    ["next       ", actionText(assessment)],
    ["next test  ", testText(assessment)],
  ] as const;
  return lines.flatMap(([lead, text]) => (text === "" ? [] : prose(text, width, lead)));
};

/** Empty where the next step is that test. */
const testText = (assessment: DecisionAssessment): string => {
  const { decision } = assessment;
  if (decision.verdict === "test-again") return runInText(assessment);
  if (decision.next.step === "retest-before-hard-use")
    return `the first after closing, before hard use: ${how("dry", assessment)}`;
  return dateText(assessment);
};

/** When new rings have bedded in, by the meter and the date where those are known; the usual interval at the latest. */
const runInText = ({ nextAction, nextTest, history, today }: DecisionAssessment): string => {
  const { date, meter, reckoned } = nextTest;
  if (nextAction?.code !== "run-in" || meter === undefined) return "";
  const when = reckoned === undefined ? ` or ${date}, whichever comes first` : `, about ${date}`;
  return `at ${meter.toFixed(0)} ${history.record.engine.meter ?? ""}${date > today ? when : ""}`;
};

/** The one step that every screen names, and by when; what is measured while it is open has a line of its own. */
const actionText = (assessment: DecisionAssessment): string => {
  const { nextAction: action, nextBy, measureNow } = assessment;
  if (isTestedOpen(assessment))
    return `a leak-down as it is, if it can be turned: ${how("leak-down", assessment)}; if not, the first test after closing, before hard use`;
  if (action === undefined || (action.code === "measure" && measureNow.length > 0)) return "";
  // the work itself says by when it is measured
  const by = action.code === "measure" ? "" : bys[nextBy];
  const minutes = action.minutes === undefined ? "" : ` (${String(action.minutes)} minutes)`;
  const page = action.how === undefined ? "" : `: ${how(action.how, assessment)}`;
  return `${action.text}${minutes}${by}${page}`;
};

const bys: Readonly<Record<NextBy, string>> = {
  date: "",
  today: "",
  "before-closing": ", before you close it",
  "once-closed": ", once it is closed up",
  "before-hard-use": ", before hard use",
  "before-further-use": ", before further use",
  "after-the-work": "",
};

const how = (kind: string, { history }: DecisionAssessment): string =>
  `sealtrend how ${kind} ${history.record.engine.id}`;

/** Valves or gasket, and what to check while it is off. */
const topText = ({ decision, topWork, evidence }: DecisionAssessment): string => {
  if (decision.verdict === "open-the-top-end") return topWork?.text ?? "";
  const past = evidence.filter(({ row }) => row === "J7").map(({ text }) => text);
  if (past.length === 0) return "";
  return `the valves and their guides as well: ${past[0] ?? ""}${past.length > 1 ? `, and ${String(past.length - 1)} more` : ""}`;
};

/** What goes before the work, and the first test after it. */
const workText = (assessment: DecisionAssessment): string => {
  const { decision, history, topWork } = assessment;
  const action = actionText(assessment);
  const before = action === "" ? "" : `${action}; `;
  const runIn = decision.verdict === "open-the-top-end" ? "" : ", run in";
  const what = { topEnd: topWork?.service ?? "valve job", reRing: "re-ring", rebuild: "rebuild" }[
    repairOf(decision)
  ];
  return `${before}when done${runIn}, test anew, and record it: sealtrend service ${history.record.engine.id} --what "${what}"`;
};

const repairOf = ({ verdict }: DecisionAssessment["decision"]): Repair =>
  verdict === "open-the-top-end" ? "topEnd" : verdict === "rebuild" ? "rebuild" : "reRing";

/** Due, it comes with how it is made, where the next step above is not that test. */
const testHow = (assessment: DecisionAssessment): string => {
  const { nextAction, test } = assessment;
  if (nextAction?.how !== undefined && nextAction.how !== "teardown") return "";
  const leakOnly = test?.test.rows.every(({ what }) => what.startsWith("leak-down")) === true;
  return `: ${how(leakOnly ? "leak-down" : "dry", assessment)}`;
};

/** Date and meter, whichever comes first, and why then; in two words where it is due or overdue. */
const dateText = (assessment: DecisionAssessment): string => {
  const { decision, nextTest, history, today } = assessment;
  if (nextTest.date <= today) {
    const of = nextTest.of === undefined ? "" : `, by ${nextTest.of}, the last that counts`;
    const since = nextTest.since === undefined ? "now" : `since ${nextTest.since}${of}`;
    return isOpen(assessment)
      ? "the first after closing, warm: a new baseline"
      : `due ${since}${testHow(assessment)}`;
  }
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
      ? "; confirms a trend, hardly sharpens it"
      : "";
  return `${nextTest.date}${meter}: ${why}${tells}`;
};
