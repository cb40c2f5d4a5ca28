// What becomes of the answers as they come: written at once, or kept in an order, rows for a table and else the text that is written
// in the end; counted; faults remembered.

import { type Problem, type YardRow, type YardTotals, noYard, withEngine } from "@sealtrend/core/parts";
import { asWritten } from "../as-theirs.ts";
import type { YardAsked } from "../commands/yard-steps/yard-options.ts";
import { yardBookDocument } from "../documents/yard-book-document.ts";
import { yardDocument } from "../documents/yard-document.ts";
import type { Io } from "../io.ts";
import { jsonLine } from "../json-text.ts";
import { escaped } from "../render/ascii.ts";
import { yardCsvHeader, yardCsvRow } from "../render/yard/yard-csv.ts";
import type { JobAnswer, UnreadBook, YardAnswer } from "./answer-job.ts";
import { type FaultsTold, faultsOfMany } from "./faults-of-many.ts";
import { keptFirst } from "./kept-first.ts";

export interface Collected extends FaultsTold {
  readonly totals: YardTotals;
  /** Logbooks that could not be read. */
  readonly unreadBooks: number;
  /** Those of a table, in order. */
  readonly rows: readonly YardRow[];
  /** Worth a word: the first few, and how many more. */
  readonly asides: readonly string[];
  /** How many had a row that was asked for. */
  readonly matching: number;
}

export interface Collector {
  take(answer: JobAnswer): void;
  done(): Collected;
}

const mostAsides = 5;

/** Rows that are written at once. */
const together = 256;

export const collector = (io: Io, { format, order, top, due, length }: YardAsked): Collector => {
  const rows = format === "table" ? keptFirst<YardRow>(order ?? "worst", top) : undefined;
  const texts = rows !== undefined || order === undefined ? undefined : keptFirst<string>(order, top);
  const faults = faultsOfMany(format === "table" ? length : "all");
  const header: Problem[] = [];
  const asides: string[] = [];
  let moreAsides = 0;
  let [totals, matching, begun] = [noYard, 0, false];
  const write = writer(io, format);
  const takeOne = (answer: YardAnswer): string => {
    const { row } = answer;
    totals = withEngine(totals, row, io.today);
    faults.add(answer.problems);
    if (row === undefined) return format === "table" ? "" : write(answer);
    if (due !== undefined && (row.due.since ?? row.due.date) > due) return "";
    matching += 1;
    if (rows === undefined && texts === undefined) return write(answer);
    rows?.add(row, () => row);
    texts?.add(row, () => write({ engine: row.engine, row, problems: [] }));
    return "";
  };
  let unreadBooks = 0;
  const takeBook = (book: UnreadBook): string => {
    unreadBooks += 1;
    faults.add(book.problems);
    return format === "jsonl" ? jsonText(io, yardBookDocument(book)) : "";
  };
  const out = (text: string): void => {
    const head = begun || format !== "csv" ? "" : yardCsvHeader;
    begun = true;
    if (head + text !== "") io.out(head + text);
  };
  return {
    take: ({ answers, books = [], problems: found, asides: said = [], ofHeader }) => {
      out([...books.map(takeBook), ...answers.map(takeOne)].join(""));
      const fresh = ofHeader.filter(({ column }) => !header.some((one) => one.column === column));
      header.push(...fresh);
      faults.add([...found, ...fresh]);
      const room = said.slice(0, mostAsides - asides.length);
      asides.push(...room);
      moreAsides += said.length - room.length;
    },
    done: () => {
      out("");
      const last = texts?.all() ?? [];
      for (let from = 0; from < last.length; from += together)
        out(last.slice(from, from + together).join(""));
      if (moreAsides > 0) asides.push(`${moreAsides.toLocaleString("en-US")} more such names`);
      return { totals, unreadBooks, asides, matching, rows: rows?.all() ?? [], ...faults.told() };
    },
  };
};

const writer = (io: Io, format: YardAsked["format"]): ((answer: YardAnswer) => string) => {
  if (format === "csv") return (answer) => yardCsvRow(yardDocument(answer));
  return (answer) => jsonText(io, yardDocument(answer));
};

const jsonText = ({ unicode }: Io, document: unknown): string => {
  const line = asWritten(jsonLine(document));
  return unicode ? line : escaped(line);
};
