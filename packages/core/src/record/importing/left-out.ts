// What of the sheet was not taken: noted once a cell, with the readings that were lost with it.

import { type Facts, type Problem, type ProblemCode, type Severity, problem } from "../../problem/index.ts";
import { columnLetters } from "./columns.ts";
import type { LeftOut, LeftWhy, Sheet, SheetRow } from "./imported.ts";
import type { Spot } from "./sources.ts";

/** A place in the sheet that keeps readings out, and how many so far; with none it is not on the list. */
export interface Bar {
  readings: number;
}

export interface LeftList {
  /** Notes what is wrong in a cell, once. @param code - a new one for the same cell is noted too */
  cell<C extends ProblemCode>(spot: Spot, code: C, facts: Facts<C>, why?: LeftWhy): Bar;
  /** Notes a fault that was found in the text of a cell, and the readings that are lost with it; more of them add up. */
  found(row: SheetRow, column: number, fault: Problem, readings: number): void;
  /** Notes a whole row. */
  row<C extends ProblemCode>(
    row: SheetRow,
    code: C,
    facts: Facts<C>,
    how: How & { readonly column: number },
  ): void;
  all(): readonly LeftOut[];
}

interface How {
  readonly why: LeftWhy;
  readonly readings: number;
}

/** An empty list for a sheet. */
export const leftList = (sheet: Sheet): LeftList => {
  const entries = new Map<string, Entry>();
  const note = (row: SheetRow, column: number, { why, what, readings, whole, isKept }: Note): Bar => {
    const key = `${String(row.row)},${String(column)},${what.code}`;
    const known = entries.get(key);
    if (known !== undefined) return known.bar;
    const bar = { readings };
    const left = (): LeftOut => ({
      why,
      row: row.row,
      ...(whole ? {} : { column: columnLetters(column) }),
      cell: row.cells[column]?.text ?? "",
      readings: bar.readings,
      problem: { ...what, ...sheet.place(row, column) },
    });
    entries.set(key, { bar, isKept, left });
    return bar;
  };
  return {
    cell: ({ at }, code, facts, why = "fault") =>
      at === undefined
        ? { readings: 0 }
        : note(at.row, at.column, {
            why,
            what: problem(code, facts, {}, severityOf(why)),
            readings: 0,
            whole: false,
            isKept: false,
          }),
    found: (row, column, what, readings) => {
      note(row, column, { why: "fault", what, readings: 0, whole: false, isKept: true }).readings += readings;
    },
    row: (row, code, facts, { why, readings, column }) => {
      const what = problem(code, facts, {}, severityOf(why));
      note(row, column, { why, what, readings, whole: true, isKept: true });
    },
    all: () =>
      [...entries.values()]
        .filter(({ bar, isKept }) => isKept || bar.readings > 0)
        .map(({ left }) => left())
        .sort((a, b) => a.row - b.row || (a.problem.column ?? 0) - (b.problem.column ?? 0)),
  };
};

interface Entry {
  readonly bar: Bar;
  readonly isKept: boolean;
  readonly left: () => LeftOut;
}

interface Note extends How {
  readonly what: Problem;
  readonly whole: boolean;
  readonly isKept: boolean;
}

const severityOf = (why: LeftWhy): Severity => (why === "fault" ? "error" : "caution");
