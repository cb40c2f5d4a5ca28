// The screen of `history`: the sentence, then one line a cylinder, then what happened and what can be foreseen.

import type { CylinderHistory, HistoryAssessment, KindHistory, ServiceResult } from "@sealtrend/core";
import { historyHeadline, limitSentence } from "./history-headline.ts";
import { spark } from "./spark.ts";
import { wrapText } from "./table.ts";
import { padEnd, padStart } from "./width.ts";
import { count, cylinders as named, percent } from "./words.ts";

export interface HistoryOptions {
  readonly width: number;
  readonly unicode: boolean;
  readonly today: string;
  readonly detail: "short" | "why";
}

/** The whole screen, lines without line ends. */
export const historyScreen = (assessment: HistoryAssessment, options: HistoryOptions): readonly string[] => {
  const { cranking, leakDown, record } = assessment;
  const main = cranking ?? leakDown;
  if (main === undefined) return [`${record.engine.id} has no test yet.`];
  const second = cranking === undefined ? undefined : leakDown;
  return [
    ...kindLines(assessment, main, options),
    ...(second === undefined ? [] : ["", "Leak-down:", ...kindLines(assessment, second, options)]),
    "",
    ...closing(assessment, main, options),
  ];
};

const kindLines = (assessment: HistoryAssessment, kind: KindHistory, options: HistoryOptions): readonly string[] => {
  if (kind.result.tests.length === 1) return wrapText(`One test only, so no course yet. What it says: sealtrend show ${assessment.record.engine.id}`, options.width);
  const headline = historyHeadline(assessment, kind).flatMap((text) => wrapText(text, options.width));
  const alone = assessment.record.engine.cylinders.length === 1;
  return [...headline, ...(alone ? [] : ["", ...cylinderTable(kind, options)]), ...after(kind, options)];
};

const numberColumns = 8;

const cylinderTable = (kind: KindHistory, { width, unicode }: HistoryOptions): string[] => {
  const { result } = kind;
  const years = result.tests.map(({ years: year }) => year);
  const [from, to] = [Math.min(...years), Math.max(...years)];
  const all = result.cylinders.flatMap(({ ratios }) => ratios.filter((ratio) => ratio !== undefined));
  const low = Math.min(-0.05, ...all);
  const high = Math.max(0.05, ...all);
  const labels = Math.max(2, ...result.cylinders.map(({ label }) => label.length));
  const courses = Math.max(...result.cylinders.map((cylinder) => courseText(cylinder).length));
  const columns = Math.max(8, Math.min(40, width - labels - 3 * numberColumns - courses - 8));
  const narrow = width < 60;
  const firstYear = kind.start.slice(0, 4);
  const lastDate = kind.counted.at(-1)?.test.date ?? kind.start;
  const per = result.axis.kind === "meter" && result.axis.perYear === undefined ? `/1000 ${result.axis.unit}` : "a year";
  const head = `${" ".repeat(labels + 2)}${padEnd(firstYear, columns - 4)}${lastDate.slice(0, 4)}${padStart("first", numberColumns)}${padStart("last", numberColumns)}${padStart(per, numberColumns + 2)}   course`;
  const rows = result.cylinders.flatMap((cylinder) => {
    const read = cylinder.ratios.filter((ratio) => ratio !== undefined);
    const line = spark({ points: result.tests.map(({ years: x }, i) => ({ x, y: cylinder.ratios[i] })), from, to, low, high, columns, unicode });
    const change = (ratio: number | undefined): string => (ratio === undefined ? "-" : (Math.expm1(ratio) * 100).toFixed(1).replace(/^-0\.0$/, "0.0"));
    const slope = slopeText(cylinder, kind);
    if (narrow) return [`${cylinder.label}: ${courseText(cylinder)}, first ${change(read[0])} %, last ${change(read.at(-1))} %, ${slope} % ${per}`];
    return [`${padEnd(cylinder.label, labels)}  ${line}${padStart(change(read[0]), numberColumns)}${padStart(change(read.at(-1)), numberColumns)}${padStart(slope, numberColumns + 2)}   ${courseText(cylinder)}`];
  });
  return narrow ? rows.flatMap((row) => wrapText(row, width)) : [head, ...rows, `${" ".repeat(labels + 2)}${gaugeLine(kind, width - labels - 2)}`];
};

const courseText = ({ course, leaning }: CylinderHistory): string => {
  const text = course === "too-short-to-tell" ? "too short" : course.replaceAll("-", " ");
  return leaning === "down" ? `${text}, leaning down` : text;
};

const slopeText = ({ theilSen }: CylinderHistory, { result }: KindHistory): string => {
  if (theilSen === undefined) return "-";
  const slope = Math.expm1(theilSen.slope * (result.axis.perYear ?? 1)) * 100;
  const text = slope.toFixed(1).replace(/^-0\.0$/, "0.0");
  return slope > 0.05 ? `+${text}` : text;
};

/** What the numbers are, and which gauge made them. */
const gaugeLine = ({ result }: KindHistory, width: number): string => {
  const gauges = [...new Set(result.tests.map(({ gauge }) => gauge))];
  const known = gauges.filter((gauge) => gauge !== undefined);
  const text = `% against the others; ${known.length === 0 ? "gauge not recorded" : `gauge ${known.join(", ")}${gauges.length > known.length ? " and unknown" : ""}`}`;
  return text.length > width ? "% against the others" : text;
};

const after = (kind: KindHistory, { width, today }: HistoryOptions): string[] => {
  const services = kind.result.services.flatMap(serviceSentences);
  const unused = kind.counted.filter(({ use }) => use !== "full").map(({ test, use }) => `${test.id} ${useWords[use] ?? use}`);
  const limits = kind.result.cylinders
    .filter(({ course, limit }) => course === "falling" && limit !== undefined)
    .flatMap((cylinder) => limitSentence(cylinder, kind, today) ?? []);
  const slow = kind.result.cylinders.every(({ alarms }) => alarms.length === 0) ? leastLoss(kind) : [];
  const sentences = [...services, ...limits, ...(limits.length > 0 ? ["Wear only: a valve, a gasket or a ring can fail without notice."] : []), ...slow, ...(unused.length > 0 ? [`Shown but not counted: ${unused.join(", ")}.`] : [])];
  return sentences.length === 0 ? [] : ["", ...sentences.flatMap((text) => wrapText(text, width))];
};

const useWords: Readonly<Record<string, string>> = { "run-in": "(running in)", seller: "(seller's sheet)", "set-aside": "(set aside or void)" };

const serviceSentences = ({ why, steps }: ServiceResult): string[] =>
  steps.map((step) => {
    const who = named(step.labels).toLowerCase();
    const size = step.step === undefined ? "" : percent(Math.abs(Math.expm1(step.step)));
    if (step.verdict === "rose") return `${why}: ${who} rose ${size}.`;
    if (step.verdict === "fell") return `${why}: ${who} fell ${size}.`;
    if (step.verdict === "cannot-tell") return `${why}: ${who}, no test ${step.before === 0 ? "before" : "after"} it to compare.`;
    return `${why}: ${who}, no change shown${step.shownFrom === undefined ? "" : `; it would have had to be ${percent(Math.expm1(step.shownFrom))}`}.`;
  });

/** What this history would have shown: the honest side of "nothing shown". */
const leastLoss = ({ result }: KindHistory): string[] => {
  const least = result.cylinders.flatMap(({ leastLossShown }) => (leastLossShown === undefined ? [] : [leastLossShown]));
  if (least.length === 0) return [];
  const { perYear, slopePer, unit } = result.axis;
  const worst = Math.max(...least) * (perYear ?? 1);
  return [`No decline shown; a loss of ${percent(-Math.expm1(-worst), 1)} ${perYear === undefined ? `each ${String(slopePer)} ${unit}` : "a year"} would have shown.`];
};

const closing = ({ record }: HistoryAssessment, { result }: KindHistory, { width }: HistoryOptions): string[] => {
  const full = result.tests.filter(({ use }) => use === "full").length;
  const [worst] = [...result.cylinders].sort((a, b) => b.alarms.length - a.alarms.length);
  const more = full < 4 ? wrapText(full === 3 ? "one more test gives a course; three repeats a cylinder are worth most" : `${count(4 - full)} more tests give a course; three repeats a cylinder are worth most`, width, "next   ") : [];
  const many = result.manyLooks === "yes" ? ["About 1 healthy engine in 20 shows such an alarm by chance over so many tests."] : [];
  const chart = record.engine.cylinders.length > 1 && full > 1 && worst !== undefined ? [`chart of one cylinder: sealtrend history ${record.engine.id} --cylinder ${worst.label}`] : [];
  return [...many.flatMap((text) => wrapText(text, width)), ...more, ...chart.flatMap((text) => wrapText(text, width))];
};
