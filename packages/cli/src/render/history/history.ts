// The screen of `history`: the sentence, then one line a cylinder, then what happened and what can be foreseen.

import type { HistoryAssessment, KindHistory } from "@sealtrend/core";
import { type HistoryOptions, afterLines, ageSentence } from "./history-after.ts";
import { cylinderScreen } from "./history-cylinder.ts";
import { historyHeadline } from "./history-headline.ts";
import { historyLong } from "./history-long.ts";
import { closingLines } from "./history-next.ts";
import { nothingSentences } from "./history-nothing.ts";
import { historyTable } from "./history-table.ts";
import { historyWhy } from "./history-why.ts";
import { prose } from "../prose.ts";
import { lowerText } from "../show/show-evidence.ts";

export interface HistoryAsked {
  /** One cylinder, by its label. */
  readonly cylinder?: string;
  /** `list`: one reading a row. */
  readonly form: "screen" | "list";
  /** The day that the history is asked as of; absent for today. */
  readonly upTo?: string;
}

/** The whole screen, lines without line ends. */
export const historyScreen = (
  assessment: HistoryAssessment,
  asked: HistoryAsked,
  options: HistoryOptions,
): readonly string[] => {
  const { cranking, leakDown, record } = assessment;
  const main = cranking ?? leakDown;
  if (main === undefined)
    return [`${record.engine.id} has no test ${asked.upTo === undefined ? "yet" : `up to ${asked.upTo}`}.`];
  const second = cranking === undefined ? undefined : leakDown;
  const lines = (kind: KindHistory): readonly string[] => linesOf(assessment, kind, asked, options);
  const closing =
    asked.cylinder === undefined && asked.form === "screen" ? closingLines(assessment, main, options) : [];
  return [
    ...lines(main),
    ...(second === undefined ? [] : ["", "Leak-down:", ...lines(second)]),
    // beside a single leak-down, which is one line, nothing needs a gap
    ...(closing.length > 0 ? [...(second?.result.tests.length === 1 ? [] : [""]), ...closing] : []),
  ];
};

const linesOf = (
  assessment: HistoryAssessment,
  kind: KindHistory,
  { cylinder: label, form }: HistoryAsked,
  options: HistoryOptions,
): readonly string[] => {
  const labels = assessment.record.engine.cylinders;
  if (form === "list") return historyLong(kind, { labels, only: label }, options);
  if (label === undefined) return kindLines(assessment, kind, options);
  const one = kind.result.cylinders.find((cylinder) => cylinder.label === label);
  return one === undefined ? [] : cylinderScreen(assessment, kind, one, options);
};

const kindLines = (
  assessment: HistoryAssessment,
  kind: KindHistory,
  options: HistoryOptions,
): readonly string[] => {
  const { record } = assessment;
  const { cylinders, tests } = kind.result;
  if (tests.length === 1) {
    const one = [oneTest(kind, record.engine.id), ...nothingSentences(cylinders, kind)];
    return one.flatMap((text) => prose(text, options.width));
  }
  const said = historyHeadline(assessment, kind);
  const last = [...said.slice(-1), ...lowerSentence(kind, options), ...ageSentence(kind, options.today)].join(
    " ",
  );
  const headline = [...said.slice(0, -1), last].flatMap((text) => prose(text, options.width));
  const none = tests.every(({ use }) => use !== "full");
  return [
    ...headline,
    ...(none ? [] : ["", ...historyTable(kind, options)]),
    ...afterLines(kind, cylinders, options),
    ...whyLines(assessment, kind, options),
  ];
};

/** What `show` sends here for, where the years do not say it by themselves. */
const lowerSentence = ({ kind, result }: KindHistory, { newest }: HistoryOptions): string[] => {
  if (kind !== "dry" || newest === undefined || result.common.word === "falling") return [];
  const lower = lowerText(newest);
  return lower === "" ? [] : [`${lower}; no rate is shown yet.`];
};

const whyLines = (
  assessment: HistoryAssessment,
  kind: KindHistory,
  { width, detail, today }: HistoryOptions,
): readonly string[] =>
  detail === "why" ? ["", ...historyWhy(assessment, kind, today).flatMap((text) => prose(text, width))] : [];

const oneTest = ({ kind, counted }: KindHistory, id: string): string => {
  const what = kind === "dry" ? "test" : "leak-down";
  const because = counted.length === 1 ? `One ${what} only` : `The ${what}s of one day count as one`;
  return `${because}, so there is no course yet. What it says: sealtrend show ${id}`;
};
