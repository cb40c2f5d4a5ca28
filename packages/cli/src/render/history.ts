// The screen of `history`: the sentence, then one line a cylinder, then what happened and what can be foreseen.

import {
  type HistoryAssessment,
  type KindHistory,
  type ServiceResult,
  dayNumber,
  daysInYear,
} from "@sealtrend/core";
import { historyHeadline, isEither, leastLossSentence } from "./history-headline.ts";
import { limitSentence } from "./history-sentences.ts";
import { historyTable } from "./history-table.ts";
import { historyWhy } from "./history-why.ts";
import { prose } from "./prose.ts";
import { count, cylinders as named, percent, sentence } from "./words.ts";

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
  const closing = closingLines(assessment, main, options);
  return [
    ...kindLines(assessment, main, options),
    ...(second === undefined ? [] : ["", "Leak-down:", ...kindLines(assessment, second, options)]),
    ...(closing.length > 0 ? ["", ...closing] : []),
  ];
};

const kindLines = (
  assessment: HistoryAssessment,
  kind: KindHistory,
  options: HistoryOptions,
): readonly string[] => {
  const { record } = assessment;
  if (kind.result.tests.length === 1) return prose(oneTest(kind, record.engine.id), options.width);
  const headline = historyHeadline(assessment, kind).flatMap((text) => prose(text, options.width));
  const none = record.engine.cylinders.length === 1 || kind.result.tests.every(({ use }) => use !== "full");
  return [
    ...headline,
    ...(none ? [] : ["", ...historyTable(kind, options)]),
    ...afterLines(kind, options),
    ...whyLines(assessment, kind, options),
  ];
};

const whyLines = (
  assessment: HistoryAssessment,
  kind: KindHistory,
  { width, detail }: HistoryOptions,
): readonly string[] =>
  detail === "why" ? ["", ...historyWhy(assessment, kind).flatMap((text) => prose(text, width))] : [];

const oneTest = ({ kind, counted }: KindHistory, id: string): string => {
  const what = kind === "dry" ? "test" : "leak-down";
  const because = counted.length === 1 ? `One ${what} only` : `The ${what}s of one day count as one`;
  return `${because}, so there is no course yet. What it says: sealtrend show ${id}`;
};

const afterLines = (kind: KindHistory, { width, today }: HistoryOptions): string[] => {
  const limits = kind.result.cylinders
    .filter((cylinder) => cylinder.course === "falling" && !isEither(cylinder))
    .flatMap((cylinder) => limitSentence(cylinder, kind, today) ?? []);
  const sentences = [
    ...kind.result.services.flatMap(serviceSentences),
    ...limits,
    ...(limits.length > 0 ? ["Wear only: a valve, a gasket or a ring can fail without notice."] : []),
    ...(leastLossSentence(kind) === undefined ? [] : [leastLossSentence(kind) ?? ""]),
    ...unusedSentence(kind),
    ...ageSentence(kind, today),
  ];
  return sentences.length === 0 ? [] : ["", ...sentences.flatMap((text) => prose(text, width))];
};

const useWords = {
  full: "",
  "run-in": "(running in)",
  seller: "(seller's sheet)",
  "set-aside": "(set aside or void)",
} as const;

const unusedSentence = ({ counted }: KindHistory): string[] => {
  const unused = counted
    .filter(({ use }) => use !== "full")
    .map(({ test, use }) => `${test.id} ${useWords[use]}`);
  return unused.length === 0 ? [] : [`Shown but not counted: ${unused.join(", ")}.`];
};

/** From two years on: what was measured then need not hold today. */
const ageSentence = ({ counted }: KindHistory, today: string): string[] => {
  const last = counted.at(-1)?.test.date ?? today;
  const years = (dayNumber(today) - dayNumber(last)) / daysInYear;
  return years < 2 ? [] : [`The last test is ${count(Math.floor(years))} years old.`];
};

const serviceSentences = ({ why, steps }: ServiceResult): string[] =>
  steps.map(({ labels, step = 0, verdict, before, shownFrom }) => {
    const who = named(labels).toLowerCase();
    const size = percent(Math.abs(Math.expm1(step)));
    if (verdict === "rose" || verdict === "fell") return sentence(`${why}: ${who} ${verdict} ${size}.`);
    if (verdict === "cannot-tell")
      return sentence(`${why}: no test ${before === 0 ? "before" : "after"} it to compare ${who} with.`);
    const least =
      shownFrom === undefined ? "" : `; less than ${percent(Math.expm1(shownFrom))} would not show`;
    return sentence(`${why}: no change shown in ${who}${least}.`);
  });

const closingLines = (
  { record }: HistoryAssessment,
  { result }: KindHistory,
  { width }: HistoryOptions,
): string[] => {
  const full = result.tests.filter(({ use }) => use === "full").length;
  const [worst] = result.cylinders.toSorted((a, b) => b.alarms.length - a.alarms.length);
  const alarmed = worst !== undefined && worst.alarms.length > 0;
  const many =
    result.manyLooks === "yes" && alarmed
      ? prose("By chance alone about 1 healthy engine in 20 shows such an alarm over so many tests.", width)
      : [];
  const wanted = full === 3 ? "one more test gives" : `${count(4 - full)} more tests give`;
  const more =
    full < 4
      ? prose(`${wanted} a course; read each cylinder three times, that tells most`, width, "next   ")
      : [];
  const chart =
    record.engine.cylinders.length > 1 && full > 1 && worst !== undefined
      ? prose(`chart of one cylinder: sealtrend history ${record.engine.id} --cylinder ${worst.label}`, width)
      : [];
  return [...many, ...more, ...chart];
};
