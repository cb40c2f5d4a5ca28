// What becomes of the answers as they come: written at once, or kept for a table; counted; faults remembered.

import { type Problem, type YardTotals, noYard, withEngine } from "@sealtrend/core/parts";
import type { Fault } from "../command.ts";
import type { YardAsked } from "../commands/yard-steps/yard-options.ts";
import { yardDocument } from "../documents/yard-document.ts";
import type { Io } from "../io.ts";
import { jsonLine } from "../json-text.ts";
import { escaped } from "../render/ascii.ts";
import { yardCsvHeader, yardCsvRow } from "../render/yard/yard-csv.ts";
import type { JobAnswer, YardAnswer } from "./answer-job.ts";
import { type KeptRows, keptRows } from "./kept-rows.ts";

export interface Collected {
  readonly totals: YardTotals;
  /** Absent where the answers were written as they came. */
  readonly kept?: KeptRows;
  /** How many had a row that was asked for. */
  readonly matching: number;
  /** Of the first engines that have some, and of none. */
  readonly problems: readonly (Problem | Fault)[];
  /** How many engines with a fault are not among them. */
  readonly untold: number;
  /** All faults that are not among them, by their codes. */
  readonly rest: ReadonlyMap<string, number>;
}

export interface Collector {
  take(answer: JobAnswer): void;
  done(): Collected;
}

/** More are only counted: a file of another kind would fill the screen for minutes. */
const most = { engines: 20, each: 5 };

export const collector = (io: Io, { format, order, top, due }: YardAsked): Collector => {
  const kept = order === undefined ? undefined : keptRows(order, top);
  const problems: (Problem | Fault)[] = [];
  const rest = new Map<string, number>();
  const header: Problem[] = [];
  let [totals, matching, told, untold, begun] = [noYard, 0, 0, 0, false];
  const write = writer(io, format);
  const remember = (found: YardAnswer["problems"]): void => {
    const errors = found.filter(({ severity }) => severity === "error");
    if (errors.length === 0) return;
    told += 1;
    const shown = told <= most.engines ? most.each : 0;
    problems.push(...errors.slice(0, shown));
    if (shown === 0) untold += 1;
    for (const { code } of errors.slice(shown)) rest.set(code, (rest.get(code) ?? 0) + 1);
  };
  const takeOne = (answer: YardAnswer): string => {
    const { row } = answer;
    totals = withEngine(totals, row);
    remember(answer.problems);
    if (row === undefined) return format === "table" ? "" : write(answer);
    if (due !== undefined && (row.due.since ?? row.due.date) > due) return "";
    matching += 1;
    if (kept === undefined) return write(answer);
    kept.add(row);
    return "";
  };
  const out = (text: string): void => {
    const head = begun || format !== "csv" ? "" : yardCsvHeader;
    begun = true;
    if (head + text !== "") io.out(head + text);
  };
  return {
    take: ({ answers, problems: found, ofHeader }) => {
      out(answers.map(takeOne).join(""));
      const fresh = ofHeader.filter(({ column }) => !header.some((one) => one.column === column));
      header.push(...fresh);
      remember([...found, ...fresh]);
    },
    done: () => {
      if (format !== "table")
        out((kept?.rows() ?? []).map((row) => write({ engine: row.engine, row, problems: [] })).join(""));
      return { totals, matching, problems, untold, rest, ...(kept === undefined ? {} : { kept }) };
    },
  };
};

const writer = (io: Io, format: YardAsked["format"]): ((answer: YardAnswer) => string) => {
  if (format === "csv") return (answer) => yardCsvRow(yardDocument(answer));
  return (answer) => {
    const line = jsonLine(yardDocument(answer));
    return io.unicode ? line : escaped(line);
  };
};
