// What `amend` is going to write, worked out and checked before anything is written.

import {
  type Engine,
  type EngineRecord,
  type Problem,
  amendmentColumns,
  dialectOf,
  parseTable,
  readEngineRecord,
} from "@sealtrend/core/parts";
import { type Args, Stop } from "../../command.ts";
import { columnsLacking, withColumns } from "../../logbook/add-columns.ts";
import { type Logbook, engineFiles } from "../../logbook/open-logbook.ts";
import { amendEdits } from "./amend-edits.ts";
import { rawTests, rowName, testNamed } from "./amend-rows.ts";
import { type EditedCell, editCells } from "./amend-text.ts";
import { asTyped, rowIn } from "../new-row.ts";
import { usage } from "../usage.ts";

export interface Amendment {
  readonly test: string;
  /** `dry take 1 by red`. */
  readonly row: string;
  readonly line: number;
  readonly column: string;
  readonly was: string;
  readonly is: string;
}

export interface AmendPlan {
  readonly test: string;
  /** tests.csv as it is going to be. */
  readonly text: string;
  readonly amendments: readonly Amendment[];
  /** Columns that the file lacked. */
  readonly added: readonly string[];
}

export interface AmendScene {
  readonly args: Args;
  readonly logbook: Logbook;
  readonly engine: Engine;
  /** tests.csv as messages name it. */
  readonly file: string;
}

/** @param text - tests.csv as it stands  @throws Stop 2 where it would not read back, or where nothing changes; 1 where a
 *  column cannot be added */
export const amendPlan = (found: string, { args, logbook, engine, file }: AmendScene): AmendPlan => {
  const narrow = rawTests(found, file);
  const test = testNamed(narrow, args.text("test"), engine);
  const filled = amendEdits(args, narrow, test, engine).filter(({ to }) => to !== "");
  const added = columnsLacking(found, [...new Set(filled.map(({ column }) => column))]);
  const text = withColumns(found, added);
  if (text === undefined) throw new Stop(1, parseTable(found, file).problems);
  const tests = rawTests(text, file);
  const { columns } = tests.dialect;
  const edits = amendEdits(args, tests, test, engine).filter(({ column }) => columns.includes(column));
  const edited = editCells(tests, edits);
  const [first] = edited.cells;
  if (first === undefined)
    throw usage(
      "amend-same",
      `test ${test} says so already`,
      "something else than what stands there",
      `sealtrend show ${engine.id} --test ${test}`,
    );
  const read = (now: string) => recordWith(logbook, engine.id, { file, text: now }).problems;
  const faults = newFaults(read(text), read(edited.text), edited.cells);
  if (faults.length > 0) throw new Stop(2, faults.map(asTyped));
  const names = new Map(tests.rows.map((raw) => [raw.row, rowName(raw)] as const));
  const amendments = edited.cells.map(({ row, column, was, is }) => ({
    test,
    row: names.get(row) ?? "",
    line: row.line,
    column,
    was,
    is,
  }));
  return { test, text: edited.text, amendments, added };
};

/** The engine's record with this text in the place of tests.csv. */
const recordWith = (
  logbook: Logbook,
  id: string,
  tests: { readonly file: string; readonly text: string },
): { readonly record: EngineRecord | undefined; readonly problems: readonly Problem[] } =>
  readEngineRecord({ ...engineFiles(logbook, id), tests }, logbook.gauges, logbook.facts);

/** Errors at the cells that were written, and errors of a kind that their line did not have before. */
const newFaults = (
  before: readonly Problem[],
  after: readonly Problem[],
  cells: readonly EditedCell[],
): readonly Problem[] => {
  const kind = ({ code, file = "", line = 0 }: Problem): string => `${code}\n${file}\n${String(line)}`;
  const known = new Map<string, number>();
  for (const fault of before) known.set(kind(fault), (known.get(kind(fault)) ?? 0) + 1);
  return after.filter((fault) => {
    if (fault.severity !== "error") return false;
    const left = known.get(kind(fault)) ?? 0;
    known.set(kind(fault), left - 1);
    return left <= 0 || cells.some(({ row, at }) => row.line === fault.line && at === fault.column);
  });
};

export interface Trace {
  readonly when: string;
  readonly because: string;
  /** amendments.csv as messages name it. */
  readonly file: string;
}

/** The rows of amendments.csv, in its own dialect. @param text - the file as it stands; "" where there is none
 *  @throws Stop 1 where it lacks a column */
export const traceRows = (
  text: string,
  amendments: readonly Amendment[],
  { when, because, file }: Trace,
): readonly string[] => {
  const header = amendmentColumns.join(",");
  const blank = text.trim() === "";
  const dialect = dialectOf(blank ? `${header}\n` : text, file);
  const rows = amendments.map(({ test, row, column, was, is }) =>
    rowIn(dialect, file, {
      when,
      file: "tests.csv",
      row: `${test} ${row}`,
      column,
      old: was,
      new: is,
      because,
    }),
  );
  return blank && text !== "" ? [header, ...rows] : rows;
};
