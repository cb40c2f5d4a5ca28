// One engine of a yard in a few words.

import type { YardCourse, YardDecision, YardRow } from "@sealtrend/core/parts";
import { verdictWords } from "../decide/decide-words.ts";
import { counted, isBelowTenth, isRateShown, joined, percent, yearlyText } from "../words.ts";
import { lowTexts } from "./yard-low.ts";
import { becauseText, reasonTexts } from "./yard-reasons.ts";

export const decisionText = ({ code }: YardDecision): string => verdictWords[code];

/** `3: -12 %`, of the worst cylinder, `3 low: -12 %` of several, `4: 38 % lost`, `2: held 0`; `even` where none stands out. */
export const worstText = ({ worst, low = [], cylinders, test }: YardRow): string => {
  if (test?.trust === "void") return "void";
  if (worst === undefined) return "-";
  const { label, standing, belowOthers, leak } = worst;
  // one cylinder has nothing to be even with
  if (standing === "even") return cylinders === 1 ? "-" : "even";
  const all = low.length === cylinders ? `all ${String(cylinders)}` : `${String(low.length)} low`;
  const who = low.length > 1 ? all : label;
  if (worst.held === "nothing" && leak === undefined) return `${who}: held 0`;
  if (leak !== undefined) return `${who}: ${percent(leak.lost)} lost`;
  if (belowOthers === undefined) return low.length > 1 ? who : `${label}: low`;
  const much = percent(Math.abs(belowOthers));
  return `${who}: ${belowOthers > 0 && much !== percent(0) ? "-" : ""}${much}`;
};

/** The word, with its cylinder where that is not the worst one. */
export const courseText = ({ course, worst, cylinders }: YardRow): string => {
  if (course === undefined) return "-";
  const { code, label } = course;
  const word = wordOf(course);
  const isOne = code !== "steady" && code !== "too-short-to-tell" && course.mirrored === undefined;
  const isOther = isOne && label !== worst?.label;
  return isOther && cylinders > 1 ? `${label}: ${word}` : word;
};

const wordOf = ({ code, wentOn, cameBack, mirrored }: YardCourse): string => {
  if (mirrored === "either") return "one of the two";
  if (cameBack !== undefined) return "low, and back";
  if (wentOn !== undefined) return "step or loss";
  return code === "too-short-to-tell" ? "too short" : code.replaceAll("-", " ");
};

/** The month; of one that is overdue the month since when, `now` in the first. */
export const dueText = ({ due: { date, since } }: YardRow, today: string): string => {
  const month = (since ?? date).slice(0, 7);
  return date <= today && month === today.slice(0, 7) ? "now" : month;
};

/** Why this word, or what the readings say where the decision says no more.
 *  @param beside - `columns`: without what stands in them */
export const whyText = (row: YardRow, beside: "nothing" | "columns" = "nothing"): string => {
  const { decision, test, tests, worst, ahead = [] } = row;
  if (test === undefined) return "no test yet";
  const isVoid = test.trust === "void";
  const readings = isVoid || worst === undefined ? [] : [...lowTexts(row), ...yearsTexts(row, beside)];
  const found = readings.length === 0 ? leakingTexts(row) : readings;
  const said = [
    ...(decision?.use === "not-run" ? ["do not run it"] : []),
    ...(ahead.length === 0 ? [] : [`dated after today: ${ahead.slice(0, 2).join(", ")}`]),
    ...found,
    ...(isToldByCourse(row) ? [] : reasonTexts(row)),
    ...(isVoid ? [`test void${becauseText(test)}`] : []),
    ...unreadTexts(row),
  ];
  // where there is no more to say than a column does, it is said again
  const told = said.length > 0 || isVoid ? said : yearsTexts(row, "nothing");
  if (told.length > 0) return told.join("; ");
  return `${counted(tests, "test")}, ${worst === undefined ? "no reading to compare" : "nothing shown"}`;
};

/** An alarm over the years is what the course of the same trusted test says. */
const isToldByCourse = ({ decision, course, test }: YardRow): boolean =>
  decision?.reason === "history-alarm" &&
  test?.trust === "trusted" &&
  (course?.code === "falling" || course?.code === "stepped-down");

/** Nothing is known of what was passed over. */
const unreadTexts = ({ unread = [] }: YardRow): readonly string[] =>
  unread.length === 0 ? [] : [`${joined(unread)} not read within the year`];

/** Said where none stands out: all may be worn alike. */
const leakingTexts = ({ leaking }: YardRow): readonly string[] =>
  leaking === undefined
    ? []
    : [
        `${counted(leaking.cylinders, "cylinder")} lost too much in the leak-down: ${percent(leaking.most)}${leaking.cylinders === 1 ? "" : " the most"}`,
      ];

/** With its cylinder where that is not the worst one. */
const yearsTexts = (
  { course, worst, cylinders }: YardRow,
  beside: "nothing" | "columns",
): readonly string[] => {
  if (course === undefined) return [];
  if (course.mirrored === "either")
    return [
      course.cameBack === undefined
        ? "one has lost or the other gained, two cannot tell which"
        : "one was low or the other high and that is over, two cannot tell which",
    ];
  const text = yearsText({ course, cylinders }, beside);
  if (text === undefined) return [];
  const isSame = worst?.standing !== "even" && course.label === worst?.label;
  return [isSame || cylinders === 1 ? text : `cylinder ${course.label} ${text}`];
};

const yearsText = (
  { course, cylinders }: { readonly course: YardCourse; readonly cylinders: number },
  beside: "nothing" | "columns",
): string | undefined => {
  const { code, perYear, wentOn, cameBack } = course;
  const isTold = beside === "columns";
  if (wentOn !== undefined) return "a step or a steady loss, that cannot be told yet";
  if (cameBack !== undefined) return isTold ? undefined : "was low, and is back";
  if (code === "stepped-down") return isTold ? undefined : "stepped down";
  if (code !== "falling") return undefined;
  if (perYear === undefined || (cylinders > 1 && !hasRate(course))) return isTold ? undefined : "falling";
  const part = Math.abs(Math.expm1(perYear));
  return `falling ${yearlyText(part)} a year${isBelowTenth(part) ? ", too little to matter" : ""}`;
};

/** As in the history, of one among others. */
const hasRate = ({ perYear, perYearLow: low, perYearHigh: high }: YardCourse): boolean =>
  perYear !== undefined &&
  low !== undefined &&
  high !== undefined &&
  isRateShown(Math.expm1(perYear), [Math.expm1(low), Math.expm1(high)]);
