// Many engines on a screen: a row an engine, and why where there is something to say.

import type { YardOrder, YardRow } from "@sealtrend/core/parts";
import { asTheirs } from "../../as-theirs.ts";
import { grid, wrapText } from "../table.ts";
import { cut, displayWidth } from "../width.ts";
import { type YardFrom, nextLines } from "./yard-next.ts";
import { courseText, decisionText, dueText, whyText, worstText } from "./yard-words.ts";

const indent = "    ";

export interface YardTableOptions {
  readonly width: number;
  /** Lines that are left on the screen. */
  readonly room: number;
  readonly today: string;
  readonly order: YardOrder;
  /** How many engines there were to choose from. */
  readonly of: number;
  readonly decide: "always" | "never";
  readonly from: YardFrom;
  /** `why`: the reason of every engine, of those too of which there is nothing to say. */
  readonly detail: "short" | "why";
  /** `one-screen`: fewer rows where all of them would not fit. */
  readonly length: "one-screen" | "all";
}

/** Lines of rows, however little is left on the screen. */
const leastLines = 2;

export const yardTable = (rows: readonly YardRow[], options: YardTableOptions): readonly string[] => {
  if (rows.length === 0) return [];
  const { title, shown } = laidOut(rows, options);
  return ["", ...title, ...shown.flat(), "", ...foot(rows.slice(0, shown.length), options)];
};

/** How many of the rows have room. */
export const yardRowsShown = (rows: readonly YardRow[], options: YardTableOptions): number =>
  rows.length === 0 ? 0 : laidOut(rows, options).shown.length;

interface LaidOut {
  readonly title: readonly string[];
  /** The lines of each row that has room. */
  readonly shown: readonly (readonly string[])[];
}

const laidOut = (rows: readonly YardRow[], options: YardTableOptions): LaidOut => {
  const { width, detail } = options;
  const { title, lines } = linesOf(rows, options);
  const told = rows.map((row, i) => [
    ...(lines[i] ?? []),
    ...(detail === "short" && isQuiet(row) ? [] : wrapText(whyText(row, "columns"), width, indent)),
  ]);
  // a foot as long as it can get, whichever rows stay
  const most = foot(rows, { ...options, of: Infinity }).length + title.length + 2;
  const shown = options.length === "all" ? told : fitting(told, Math.max(leastLines, options.room - most));
  return { title, shown };
};

/** The first rows, at least one, that fit. */
const fitting = (told: readonly (readonly string[])[], most: number): readonly (readonly string[])[] => {
  let used = 0;
  for (const [i, { length }] of told.entries()) {
    used += length;
    if (used > most) return told.slice(0, Math.max(1, i));
  }
  return told;
};

/** Columns that give way one after the other where the screen is narrow, and how much of a name is left. */
const forms = [
  { name: 24, without: [] },
  { name: 16, without: [] },
  { name: 24, without: ["tests"] },
  { name: 16, without: ["tests"] },
  { name: 16, without: ["tests", "last"] },
] as const;

/** Rows under one another; sentences where no form fits. */
const linesOf = (
  rows: readonly YardRow[],
  options: YardTableOptions,
): { readonly title: readonly string[]; readonly lines: readonly (readonly string[])[] } => {
  const { width, decide } = options;
  for (const { name, without } of forms) {
    const head = heads(decide).filter((one) => !without.some((left) => left === one));
    const cells = rows.map((row) => {
      const own = cellsOf(row, options, name);
      return head.map((one) => own[one]);
    });
    const align = head.map((one) => (one === "tests" ? "right" : "left"));
    const [title = "", ...lines] = grid(cells, align, { head });
    if ([title, ...lines].every((line) => displayWidth(line) <= width))
      return { title: [title], lines: lines.map((line) => [line]) };
  }
  return { title: [], lines: rows.map((row) => sentenceOf(heads(decide), cellsOf(row, options, 24), width)) };
};

type Head = "engine" | "tests" | "last" | "worst" | "course" | "decision" | "due";

const heads = (decide: "always" | "never"): readonly Head[] =>
  decide === "always"
    ? ["engine", "tests", "last", "worst", "course", "decision", "due"]
    : ["engine", "tests", "last", "worst", "course", "due"];

const cellsOf = (
  row: YardRow,
  { today }: YardTableOptions,
  name: number,
): Readonly<Record<Head, string>> => ({
  engine: cut(asTheirs(row.engine), name),
  tests: String(row.tests),
  last: row.test?.date.slice(0, 7) ?? "-",
  worst: worstText(row),
  course: courseText(row),
  decision: row.decision === undefined ? "-" : decisionText(row.decision),
  due: dueText(row, today),
});

const sentenceOf = (
  [engine = "engine", ...columns]: readonly Head[],
  cells: Readonly<Record<Head, string>>,
  width: number,
): readonly string[] => {
  const pairs = columns.flatMap((one) =>
    cells[one] === "-" ? [] : [`${one}\u00a0${cells[one].replaceAll(" ", "\u00a0")}`],
  );
  return wrapText(pairs.join(", "), width, `${cells[engine]}: `);
};

/** Nothing but what stands in the columns. */
const isQuiet = ({ worst, course, decision, test, unread, leaking, ahead }: YardRow): boolean =>
  unread === undefined &&
  leaking === undefined &&
  ahead === undefined &&
  test?.trust === "trusted" &&
  worst?.standing === "even" &&
  course?.code !== "falling" &&
  course?.code !== "stepped-down" &&
  (decision === undefined || decision.code === "leave-it");

/** How each order is told under the table. */
const orderWords: Readonly<Record<YardOrder, string>> = {
  worst: "standing, how far below, course, due",
  engine: "by name",
  last: "the longest untested first",
  due: "the next test that is due first",
};

const foot = (rows: readonly YardRow[], options: YardTableOptions): readonly string[] => {
  const { width, order, of, decide, from } = options;
  const graver = decide === "always" && order === "worst" ? "not to be run, work needed, then " : "";
  const shown = rows.length < of ? [`${String(rows.length)} of ${String(of)} shown; all: --top all.`] : [];
  const undecided = decide === "never" ? ["Not decided: --decide, which takes longer."] : [];
  const licensed = rows.some((row) => row.licensed)
    ? ["Where lives hang on an engine, or it is to fly, a licensed person decides."]
    : [];
  const [first] = rows;
  return [
    ...[
      `Order: ${graver}${orderWords[order]}.`,
      "worst: below the others, or lost in leak-down. due: a past month is overdue.",
      [...shown, ...undecided].join(" "),
      ...licensed,
    ].flatMap((text) => (text === "" ? [] : wrapText(text, width))),
    ...(first === undefined ? [] : nextLines(first, from, width)),
  ];
};
