// Many engines on a screen: a row an engine, and why where there is something to say.

import type { YardOrder, YardRow } from "@sealtrend/core/parts";
import { asTheirs } from "../../as-theirs.ts";
import { grid, wrapText } from "../table.ts";
import { cut, displayWidth } from "../width.ts";
import { courseText, decisionText, dueText, whyText, worstText } from "./yard-words.ts";

const mostName = 16;
const indent = "    ";

export interface YardTableOptions {
  readonly width: number;
  readonly today: string;
  readonly order: YardOrder;
  /** How many engines there were to choose from. */
  readonly of: number;
  readonly decide: "always" | "never";
  /** `why`: the reason of every engine, of those too of which there is nothing to say. */
  readonly detail: "short" | "why";
  /** `one-screen`: fewer rows where all of them would not fit. */
  readonly length: "one-screen" | "all";
}

/** Lines of rows on a screen, beside its head and foot. */
const screenful = 15;

export const yardTable = (rows: readonly YardRow[], options: YardTableOptions): readonly string[] => {
  if (rows.length === 0) return [];
  const { width, decide, detail } = options;
  const head = [
    "engine",
    "tests",
    "last",
    "worst",
    "course",
    ...(decide === "always" ? ["decision"] : []),
    "due",
  ];
  const cells = rows.map((row) => cellsOf(row, options));
  const lines = grid(cells, ["left", "right"], { head });
  const isTable = lines.every((line) => displayWidth(line) <= width);
  const told = rows.map((row, i) => [
    ...(isTable ? [lines[i + 1] ?? ""] : sentenceOf(head, cells[i] ?? [], width)),
    ...(detail === "short" && isQuiet(row) ? [] : wrapText(whyText(row), width, indent)),
  ]);
  const shown = options.length === "all" ? told : fitting(told);
  return [
    "",
    ...(isTable ? lines.slice(0, 1) : []),
    ...shown.flat(),
    "",
    ...foot(rows.slice(0, shown.length), options),
  ];
};

/** The first rows, at least one, that fit on a screen. */
const fitting = (told: readonly (readonly string[])[]): readonly (readonly string[])[] => {
  let used = 0;
  const end = told.findIndex((lines) => (used += lines.length) > screenful);
  return end === -1 ? told : told.slice(0, Math.max(1, end));
};

const cellsOf = (row: YardRow, { today, decide }: YardTableOptions): readonly string[] => [
  cut(asTheirs(row.engine), mostName),
  String(row.tests),
  row.test?.date.slice(0, 7) ?? "-",
  worstText(row),
  courseText(row),
  ...(decide === "always" ? [row.decision === undefined ? "-" : decisionText(row.decision)] : []),
  dueText(row, today),
];

const sentenceOf = (
  head: readonly string[],
  [engine = "", ...cells]: readonly string[],
  width: number,
): readonly string[] => {
  const pairs = cells.flatMap((cell, i) =>
    cell === "-" ? [] : [`${head[i + 1] ?? ""}\u00a0${cell.replaceAll(" ", "\u00a0")}`],
  );
  return wrapText(pairs.join(", "), width, `${engine}: `);
};

/** Nothing but what stands in the columns. */
const isQuiet = ({ worst, course, decision, test, unread, leaking }: YardRow): boolean =>
  unread === undefined &&
  leaking === undefined &&
  test?.trust === "trusted" &&
  worst?.standing === "even" &&
  course?.code !== "falling" &&
  course?.code !== "stepped-down" &&
  (decision === undefined || decision.code === "leave-it");

/** How each order is told under the table. */
const orderWords: Readonly<Record<YardOrder, string>> = {
  worst:
    "worst first: lagging before suspect before even, then stepped down, falling, others, then the furthest below the others",
  engine: "by name",
  last: "the longest untested first",
  due: "the next test that is due first",
};

const foot = (
  rows: readonly YardRow[],
  { width, order, of, decide }: YardTableOptions,
): readonly string[] => {
  const shown = rows.length < of ? [`${String(rows.length)} of ${String(of)} shown; all: --top all.`] : [];
  const undecided =
    decide === "never"
      ? ["No decision was made: --decide makes one for each engine, which takes longer."]
      : [];
  const licensed = rows.some((row) => row.licensed)
    ? ["Aircraft: whether it may fly is for a licensed person to say."]
    : [];
  return [
    `Order: ${orderWords[order]}. worst: the cylinder and how far below the others it reads, or what it lost in the leak-down.`,
    ...shown,
    ...undecided,
    ...licensed,
  ].flatMap((text) => wrapText(text, width));
};
