// The first sentences of `history`: what the years show, and no more than they show.

import { type CylinderHistory, type HistoryAssessment, type KindHistory, placeText } from "@sealtrend/core";
import { count, cylinders as named, percent } from "./words.ts";

/** Sentences, each a paragraph. */
export const historyHeadline = ({ record }: HistoryAssessment, kind: KindHistory): readonly string[] => {
  const { result } = kind;
  const full = result.tests.filter(({ use }) => use === "full").length;
  if (record.engine.cylinders.length === 1) return [singleSentence(kind), ...engineSentence(kind)];
  const moved = result.cylinders.filter(({ course }) => course !== "steady" && course !== "too-short-to-tell");
  const steady = result.cylinders.filter(({ course }) => course === "steady");
  const open = result.cylinders.filter(({ course }) => course === "too-short-to-tell");
  const flagged = open.filter(({ change }) => change?.flagged === true && change.change < 0);
  const changes = moved.map((cylinder) => courseSentence(cylinder, kind));
  const rest = [
    ...flagged.map((cylinder) => `${named([cylinder.label])} has dropped about ${percent(-(cylinder.change?.change ?? 0))} against the others since the earlier tests: repeat it before you believe it.`),
    restSentence(steady, moved.length > 0, "steady"),
    restSentence(open, moved.length + steady.length > 0, full < 4 ? `too short to tell (${count(full)} test${full === 1 ? "" : "s"}; a course needs four)` : "too short to tell"),
  ].filter((text) => text !== "");
  return [...(changes.length > 0 ? [changes.join(" ")] : []), [...rest, ...engineSentence(kind)].join(" ")];
};

const restSentence = (some: readonly CylinderHistory[], others: boolean, word: string): string => {
  if (some.length === 0) return "";
  if (others) return `${named(some.map(({ label }) => label))} ${some.length === 1 ? "is" : "are"} ${word}.`;
  return some.length === 2 ? `Both cylinders are ${word}.` : `All ${count(some.length)} cylinders are ${word}.`;
};

const singleSentence = ({ result }: KindHistory): string => {
  const [only] = result.cylinders;
  return only === undefined || only.course === "too-short-to-tell" ? "One cylinder: it has no fellows, and its own history is too short to tell." : `The cylinder is ${words(only.course)}.`;
};

const words = (course: string): string => course.replaceAll("-", " ");

const courseSentence = (cylinder: CylinderHistory, kind: KindHistory): string => {
  const { course, mirrored, label, alarms } = cylinder;
  const who = named([label]);
  if (alarms.includes("no-compression")) return `${who} held nothing at the last test.`;
  if (mirrored === "either") return `${who} has lost against the other, or the other has gained: two cylinders cannot tell which.`;
  const rate = rateText(cylinder, kind);
  const since = cylinder.since === undefined ? "" : ` since ${yearOf(kind, cylinder.since)}`;
  if (course === "falling") return `${who} is falling: ${rate} against the others${since}${shapeText(cylinder)}`;
  if (course === "rising") return `${who} is rising: ${rate} against the others${since}. Carbon, oil in the chamber or rings bedding in raise a reading; it is no sign of health.`;
  const step = cylinder.shape?.fall ?? Math.abs(cylinder.early?.change ?? 0);
  const firstAfter = cylinder.shape?.firstAfter ?? cylinder.early?.test;
  const when = firstAfter === undefined ? "" : ` at the test of ${dateOf(kind, firstAfter)}`;
  if (course === "stepped-up") return `${who} stepped up by about ${percent(Math.expm1(step))}${when}: was there a service that is not written down?`;
  const repeat = cylinder.shape?.seenIn === "last-reading-only" ? " Only the last reading shows it: repeat it before you believe it." : "";
  return `${who} stepped down by about ${percent(-Math.expm1(-step))}${when}.${repeat}`;
};

const shapeText = ({ shape }: CylinderHistory): string =>
  shape?.shape === "gradual" ? " Gradual." : shape?.shape === "cannot-tell" ? " Sudden or gradual cannot be told yet." : "";

/** `1.0 % a year (0.9 to 1.1 %)`, by the line through all pairs; of a meter axis too where a year is known. */
const rateText = ({ theilSen }: CylinderHistory, { result }: KindHistory): string => {
  if (theilSen === undefined) return "a rate cannot be given yet";
  const { perYear, slopePer, unit } = result.axis;
  const scale = perYear ?? 1;
  const per = perYear === undefined ? `each ${String(slopePer)} ${unit}` : "a year";
  const number = (slope: number): string => (Math.abs(Math.expm1(slope * scale)) * 100).toFixed(1);
  const { slope, low, high } = theilSen;
  const ends = low === undefined || high === undefined ? "" : ` (${[low, high].map((end) => Math.abs(end * scale)).sort((a, b) => a - b).map((end) => (Math.expm1(end) * 100).toFixed(1)).join(" to ")} %)`;
  return `${number(slope)} % ${per}${low !== undefined && high !== undefined && low < 0 === high < 0 ? ends : ""}`;
};

const dateOf = ({ result, counted }: KindHistory, index: number): string => {
  const id = result.tests[index]?.ids[0];
  return counted.find(({ test }) => test.id === id)?.test.date ?? "";
};

const yearOf = (kind: KindHistory, index: number): string => dateOf(kind, index).slice(0, 4);

const engineSentence = ({ result }: KindHistory): string[] => {
  const { word, trend, count: tests } = result.common;
  const gauges = new Set(result.tests.filter(({ use }) => use === "full").map(({ gauge }) => gauge ?? "unknown")).size;
  const basis = `${count(gauges)} gauge${gauges === 1 ? "" : "s"}, ${count(tests)} test${tests === 1 ? "" : "s"}`;
  const scale = result.axis.perYear ?? 1;
  const per = result.axis.perYear === undefined ? `each ${String(result.axis.slopePer)} ${result.axis.unit}` : "a year";
  if (word === "no-change-shown") return [`The engine as a whole: no change shown (${basis}).`];
  if (word === "too-short-to-tell" || trend === undefined) return ["The engine as a whole: too short to tell."];
  return [`The engine as a whole is ${word}: ${percent(Math.abs(Math.expm1(trend.slope * scale)), 1)} ${per} (${basis}).`];
};

/** What the forecast allows to say of one cylinder; nothing where it has no limit. */
export const limitSentence = (cylinder: CylinderHistory, kind: KindHistory, today: string): string | undefined => {
  const { limit, label } = cylinder;
  if (limit === undefined) return undefined;
  const dates = kind.result.axis.kind === "dates";
  const text = (x: number): string => {
    const place = placeText(kind, x);
    return typeof place === "number" ? `${place.toFixed(0)} ${kind.result.axis.unit}` : place.slice(0, 7);
  };
  if (limit.decline === "not-shown" && limit.notBefore === undefined) return undefined;
  if (limit.crossing === undefined)
    return limit.notBefore === undefined ? undefined : `${label} does not reach ${limit.value.toFixed(2)} of the others before ${text(limit.notBefore)} (9 chances in 10).`;
  const ends = [limit.low, limit.high].map((x) => (x === undefined ? undefined : text(x)));
  const range = ends[0] === undefined ? "" : ` (${ends[0]} to ${ends[1] ?? "no end in sight"}, 8 chances in 10)`;
  const passed = dates && String(placeText(kind, limit.crossing)) <= today;
  return passed
    ? `By this line ${label} has reached ${limit.value.toFixed(2)} of the others${range}.`
    : `At this rate ${label} reaches ${limit.value.toFixed(2)} of the others about ${text(limit.crossing)}${range}.`;
};
