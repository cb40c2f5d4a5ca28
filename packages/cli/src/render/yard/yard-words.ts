// One engine of a yard in a few words.

import type { YardCourse, YardDecision, YardRow, YardWorst } from "@sealtrend/core/parts";
import { counted, joined, percent } from "../words.ts";

export const decisionText = ({ code }: YardDecision): string => code.replaceAll("-", " ");

/** `3 -12 %`, of the worst cylinder, or `4 38 % lost`; `even` where it stands with its fellows. */
export const worstText = ({ worst }: YardRow): string => {
  if (worst === undefined) return "-";
  const { label, standing, belowOthers, leak } = worst;
  if (standing === "even") return "even";
  if (leak !== undefined) return `${label} ${percent(leak.lost)} lost`;
  if (belowOthers === undefined) return label;
  return `${label} ${belowOthers > 0 ? "-" : ""}${percent(Math.abs(belowOthers))}`;
};

/** The word, with its cylinder where that is not the worst one. */
export const courseText = ({ course, worst }: YardRow): string => {
  if (course === undefined) return "-";
  const { code, label } = course;
  const word = code === "too-short-to-tell" ? "too short" : code.replaceAll("-", " ");
  const isOther = code !== "steady" && code !== "too-short-to-tell" && label !== worst?.label;
  return isOther ? `${label} ${word}` : word;
};

/** The month; `now` where it is due or overdue. */
export const dueText = ({ due }: YardRow, today: string): string =>
  due.date <= today ? "now" : due.date.slice(0, 7);

/** Why this word, or what the readings say where the decision says no more. */
export const whyText = (row: YardRow): string => {
  const { decision, test } = row;
  if (test === undefined) return "no test yet";
  const grave = decision?.urgency === "stop" ? ["stop: do not run it, decide tells why"] : [];
  const reason = reasonText(row);
  const said = [...grave, ...(reason === undefined ? [] : [reason]), ...unreadText(row)];
  const shown = readingsText(row) ?? leakingText(row);
  return (said.length > 0 && shown === undefined ? said : [...said, shown ?? nothingText(row)]).join("; ");
};

/** Nothing is known of what was passed over. */
const unreadText = ({ unread = [] }: YardRow): readonly string[] =>
  unread.length === 0 ? [] : [`${joined(unread)} not read within the year`];

/** Said where none stands out: all may be worn alike. */
const leakingText = ({ leaking }: YardRow): string | undefined =>
  leaking === undefined
    ? undefined
    : `${counted(leaking.cylinders, "cylinder")} lost too much in the leak-down: ${percent(leaking.most)}${leaking.cylinders === 1 ? "" : " the most"}`;

/** A doubtful test is told with a decision and without. */
const reasonText = ({ decision, test }: YardRow): string | undefined => {
  if (test?.trust === "doubtful") return "the last test is doubtful";
  if (decision?.reason === "test-doubtful" && decision.tooOld !== undefined) return tooOld[decision.tooOld];
  if (decision?.prove !== undefined) return `low everywhere: prove ${joined(decision.prove)} first`;
  return decision === undefined ? undefined : reasons[decision.reason];
};

const tooOld: Readonly<Record<NonNullable<YardDecision["tooOld"]>, string>> = {
  "over-a-year": "its last test is over a year old",
  "before-work": "its last test was made before the last work",
  "run-in": "new rings or bores: run it in, then test it",
};

const nothingText = ({ tests, worst, test }: YardRow): string => {
  if (test?.trust === "void") return "its last test is void";
  return `${counted(tests, "test")}, ${worst === undefined ? "no reading to compare" : "nothing shown"}`;
};

/** Undefined where they show nothing. */
const readingsText = ({ test, worst, course }: YardRow): string | undefined => {
  if (test?.trust === "void" || worst === undefined) return undefined;
  const standing = standingText(worst);
  const years = course === undefined ? [] : yearsText(course);
  if (standing.length + years.length === 0) return undefined;
  const isSame = standing.length > 0 && course?.label === worst.label;
  const both = isSame || course === undefined ? years : years.map((text) => `${course.label} ${text}`);
  return [...standing, ...both].join(", ");
};

const standingText = ({
  label,
  standing,
  held,
  limitsMissed,
  flaggedBefore,
  leak,
}: YardWorst): readonly string[] => {
  if (standing === undefined || standing === "even") return [];
  if (held === "nothing" && leak === undefined) return [`${label} holds nothing`];
  if (standing === "suspect") return [`${label} suspect: flagged once, repeat it`];
  const limit = limitsMissed.some((one) => one !== "usual-ratio")
    ? "the maker's limit"
    : "three quarters of the highest";
  if (leak?.overLimit === true) return [`${label} lags: it loses more than its limit`];
  if (leak === undefined && limitsMissed.length > 0) return [`${label} lags: below ${limit}`];
  return [
    flaggedBefore
      ? `${label} lags: flagged in two tests running`
      : `${label} lags: flagged, and its repeats agree`,
  ];
};

const yearsText = ({ code, perYear }: YardCourse): readonly string[] => {
  if (code === "stepped-down") return ["stepped down"];
  if (code !== "falling") return [];
  return [perYear === undefined ? "falling" : `falling ${percent(Math.abs(Math.expm1(perYear)), 1)} a year`];
};

/** Those that say more than the readings do. */
const reasons: Readonly<Record<YardDecision["reason"], string | undefined>> = {
  "need-established": "the evidence agrees: work is needed",
  "cheaper-now-than-later": "cheaper now than later",
  level: "now or later cost about the same",
  "nothing-developing": undefined,
  "source-unknown": "find the source first",
  "scored-bore": "a bore is scored",
  "test-void": undefined,
  "test-doubtful": "its last test does not carry a decision",
  "one-odd-test": "one reading out of step, to be read again",
  "not-itself": "tested when it was not itself",
  "low-everywhere": "low everywhere",
  "one-method-only": "low everywhere: a leak-down first",
  "one-line-only": "one kind of evidence alone",
  "instruments-disagree": "the instruments disagree",
  "read-again": "to be read again",
  "leak-unplaced": "it leaks, and nobody heard where",
  "low-unexplained": "low, and nothing tells why",
  "rings-disturbed": "its rings were disturbed",
  "past-its-limit": "measured past its limit",
  "limit-too-near": "its limit is too near to watch",
  "outside-the-chance": "what was found outside the readings",
  "test-worth-making": "a test is worth its price",
  "safety-step": "lives hang on it",
  "wear-developing": "wear developing",
  "history-alarm": "an alarm over the years",
  "limit-in-sight": "its limit is in sight",
  "watching-cheaper": "watching is cheaper than waiting",
  "chance-above-risk": "its chance of need is above the risk taken",
  "work-in-sight": "work is in sight",
};
