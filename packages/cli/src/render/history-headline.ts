// The first sentences of `history`: what the years show, and no more than they show.

import type { CylinderHistory, HistoryAssessment, KindHistory } from "@sealtrend/core";
import { courseSentence, dropSentence, pairSentence, perText, yearly } from "./history-sentences.ts";
import { count, counted, cylinders as named, percent } from "./words.ts";

/** Sentences, each a paragraph. */
export const historyHeadline = ({ record }: HistoryAssessment, kind: KindHistory): readonly string[] => {
  const { result } = kind;
  const full = result.tests.filter(({ use }) => use === "full").length;
  if (full === 0) return ["No test counts yet, so no course."];
  if (full === 1) return ["Only one test counts, so there is no course yet."];
  if (record.engine.cylinders.length === 1) return [singleSentence(kind)];
  const { common } = result;
  const changes = changesOf(kind);
  const of = (course: CylinderHistory["course"]): string[] =>
    result.cylinders.filter((cylinder) => cylinder.course === course).map(({ label }) => label);
  const [steady, open] = [of("steady"), of("too-short-to-tell")];
  const all = result.cylinders.length;
  const drops = result.cylinders
    .filter(({ alarms, change }) => alarms.length === 0 && change?.flagged === true && change.change < 0)
    .map((cylinder) => dropSentence(cylinder, kind));
  const rest = [
    ...drops,
    ...(steady.length === 0
      ? []
      : [steady.length === all ? `${whole(all)} are steady.` : restText(steady, "steady")]),
    ...(open.length === 0 ? [] : [openText(open, kind)]),
    ...(open.length === all && common.word === "too-short-to-tell" ? [] : [engineSentence(kind)]),
  ];
  return [...(changes.length > 0 ? [changes.join(" ")] : []), rest.join(" ")];
};

const whole = (all: number): string => (all === 2 ? "Both cylinders" : `All ${count(all)} cylinders`);

const restText = (labels: readonly string[], word: string): string =>
  `${named(labels)} ${labels.length === 1 ? "is" : "are"} ${word}.`;

const openText = (open: readonly string[], { result }: KindHistory): string => {
  if (open.length < result.cylinders.length) return `${named(open)}: too short to tell.`;
  const most = Math.max(...result.cylinders.map(({ count: tests }) => tests));
  const renewed = result.cylinders.every(({ since = 0 }) => since > 0);
  const when = renewed ? "since the last work" : "so far";
  return `Too short to tell${most < 4 ? `: ${counted(most, "test")} ${when}, and a course needs four` : ""}.`;
};

/** Two cylinders of which nobody can tell which one moved. */
export const isEither = ({ course, alarms, mirrored }: CylinderHistory): boolean =>
  mirrored === "either" &&
  course !== "steady" &&
  course !== "too-short-to-tell" &&
  !alarms.includes("no-compression");

/** What moved. Of two cylinders that mirror each other one sentence is enough. */
const changesOf = (kind: KindHistory): string[] => {
  const moved = kind.result.cylinders.filter(
    ({ course }) => course !== "steady" && course !== "too-short-to-tell",
  );
  if (moved.some(isEither)) return [pairSentence(kind)];
  return moved
    .filter((cylinder) => !isMirror(cylinder, kind))
    .map((cylinder) => courseSentence(cylinder, kind));
};

/** Of two cylinders the one that only seems to rise, because the other falls. */
export const isMirror = ({ course, mirrored }: CylinderHistory, { result }: KindHistory): boolean =>
  mirrored === "named" &&
  (course === "rising" || course === "stepped-up") &&
  result.cylinders.some((other) => other.course === "falling" || other.course === "stepped-down");

const singleSentence = (kind: KindHistory): string => {
  const [only] = kind.result.cylinders;
  const course = only?.course ?? "too-short-to-tell";
  if (only?.alarms.includes("no-compression") === true) return "The cylinder held nothing at the last test.";
  if (course === "too-short-to-tell")
    return "One cylinder, so nothing to compare it with, and its own history is too short to tell.";
  const { trend } = kind.result.common;
  const rate =
    trend === undefined || course === "steady" ? "" : `: ${yearly(trend.slope, kind)} ${perText(kind)}`;
  return `The cylinder is ${course.replaceAll("-", " ")}${rate} (${basisText(kind)}).`;
};

const basisText = ({ result }: KindHistory): string => {
  const full = result.tests.filter(({ use }) => use === "full");
  const gauges = new Set(full.map(({ gauge }) => gauge ?? "unknown"));
  const text =
    gauges.has("unknown") && gauges.size === 1 ? "gauge not recorded" : counted(gauges.size, "gauge");
  return `${text}, ${counted(result.common.count, "test")}`;
};

const engineSentence = (kind: KindHistory): string => {
  const { word, trend } = kind.result.common;
  if (word === "no-change-shown") return `The engine as a whole: no change shown (${basisText(kind)}).`;
  if (word === "too-short-to-tell" || trend === undefined) return "The engine as a whole: too short to tell.";
  return `The engine as a whole is ${word}: ${yearly(trend.slope, kind)} ${perText(kind)} (${basisText(kind)}).`;
};

/** What this history would have shown: the honest side of "nothing shown". */
export const leastLossSentence = ({ result }: KindHistory): string | undefined => {
  const least = result.cylinders.flatMap(({ leastLossShown }) => leastLossShown ?? []);
  if (least.length === 0 || result.cylinders.some(({ alarms }) => alarms.length > 0)) return undefined;
  const worst = Math.max(...least) * (result.axis.perYear ?? 1);
  const { perYear, slopePer, unit } = result.axis;
  const per = perYear === undefined ? `each ${String(slopePer)} ${unit}` : "a year";
  return `No decline shown; a loss of ${percent(-Math.expm1(-worst), 1)} ${per} would have shown.`;
};
