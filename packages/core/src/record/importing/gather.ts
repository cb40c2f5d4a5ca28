// Readings brought together to tests. Those of one engine and day are one test unless meter, person or conditions differ;
// a second reading of a cylinder of the same kind is the next take, or a test of its own where the map says so.

import type { PressureUnit } from "../../quantity/index.ts";
import type { IsoDate } from "../iso-date.ts";
import type { LeakKind, PressureKind } from "../types.ts";
import type { EngineOfSheet, SameDay } from "./import-map.ts";
import type { SheetRow } from "./imported.ts";

/** Facts of the day by the column of tests.csv; blank ones go with any. */
export type DayFacts = Readonly<Record<string, string>>;

export interface TakenCell {
  readonly engine: EngineOfSheet;
  readonly date: IsoDate;
  readonly what: PressureKind | LeakKind;
  readonly unit: PressureUnit | "%";
  readonly gauge: string;
  readonly take: number | undefined;
  readonly label: string;
  /** As tests.csv has it; `x` where nothing was read. */
  readonly text: string;
  readonly facts: DayFacts;
  readonly note: string;
  readonly row: SheetRow;
  readonly column: number;
}

/** A figure and where it stands in the sheet. */
export type TakenText = Pick<TakenCell, "text" | "row" | "column">;

export interface DraftRow {
  readonly what: PressureKind | LeakKind;
  readonly unit: PressureUnit | "%";
  readonly gauge: string;
  take: number | undefined;
  readonly cells: Map<string, TakenText>;
  readonly notes: Set<string>;
  readonly row: SheetRow;
  readonly column: number;
}

export interface DraftTest {
  readonly engine: EngineOfSheet;
  readonly date: IsoDate;
  readonly facts: Map<string, string>;
  readonly rows: DraftRow[];
}

export interface Gathering {
  /** Takes a cell in, unless its numbered take has this cylinder already (`twice`), or the day has more repeats or tests of one
   *  engine than tests.csv can number (`full`). */
  add(cell: TakenCell): "taken" | "twice" | "full";
  /** By engine and date, then as the sheet has them. Rows in which nothing was read are not there. */
  tests(): readonly DraftTest[];
}

/** An empty gathering. */
export const gatherTests = (sameDay: SameDay): Gathering => {
  const days = new Map<string, DraftTest[]>();
  return {
    add: (cell) => {
      const key = `${cell.engine.engine}\n${cell.date}`;
      const tests = days.get(key) ?? [];
      days.set(key, tests);
      const open = firstOpen(tests, cell, sameDay);
      if (open?.row === "twice") return "twice";
      if (open?.row === "full" || (open === undefined && tests.length >= most)) return "full";
      const test = open?.test ?? newTest(tests, cell);
      const row = open?.row ?? newRow(cell);
      if (!test.rows.includes(row)) test.rows.push(row);
      row.cells.set(cell.label, { text: cell.text, row: cell.row, column: cell.column });
      if (cell.note !== "") row.notes.add(cell.note);
      for (const [name, value] of Object.entries(cell.facts)) if (value !== "") test.facts.set(name, value);
      return "taken";
    },
    tests: () =>
      [...days.values()]
        .flat()
        .map((test) => ({ ...test, rows: numbered(test.rows.filter(holdsReadings)) }))
        .filter(({ rows }) => rows.length > 0)
        .sort((a, b) => compare(a.engine.engine, b.engine.engine) || compare(a.date, b.date)),
  };
};

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The first test of a day that goes with the cell, and its row; a loop, as it runs once a cell of a long sheet. */
const firstOpen = (tests: readonly DraftTest[], cell: TakenCell, sameDay: SameDay) => {
  for (const test of tests) {
    const row = goTogether(test.facts, cell.facts) ? openRow(test, cell, sameDay) : undefined;
    if (row !== undefined) return { test, row };
  }
  return undefined;
};

const goTogether = (facts: ReadonlyMap<string, string>, more: DayFacts): boolean => {
  for (const name in more) {
    const value = more[name] ?? "";
    if (value !== "" && (facts.get(name) ?? value) !== value) return false;
  }
  return true;
};

/** The row of a test that takes the cell: one that has no reading of its cylinder yet, or a new one; undefined where the
 *  cell belongs to another test. */
const openRow = (
  test: DraftTest,
  cell: TakenCell,
  sameDay: SameDay,
): DraftRow | "twice" | "full" | undefined => {
  const alike = test.rows.filter(({ what, gauge }) => what === cell.what && gauge === cell.gauge);
  if (cell.take !== undefined) {
    const own = alike.find(({ take }) => take === cell.take);
    if (own === undefined) return newRow(cell);
    return own.unit !== cell.unit || own.cells.has(cell.label) ? "twice" : own;
  }
  const free = alike.find(
    ({ take, unit, cells }) => take === undefined && unit === cell.unit && !cells.has(cell.label),
  );
  if (free !== undefined) return free;
  if (sameDay === "tests" && alike.length > 0) return undefined;
  return alike.length >= most ? "full" : newRow(cell);
};

/** Takes of one kind, and tests of one day. */
const most = 99;

const newRow = ({ what, unit, gauge, take, row, column }: TakenCell): DraftRow => ({
  what,
  unit,
  gauge,
  take,
  cells: new Map(),
  notes: new Set(),
  row,
  column,
});

const newTest = (tests: DraftTest[], { engine, date }: TakenCell): DraftTest => {
  const test = { engine, date, facts: new Map<string, string>(), rows: [] };
  tests.push(test);
  return test;
};

const holdsReadings = ({ cells }: DraftRow): boolean => [...cells.values()].some(({ text }) => text !== "x");

/** Gives the rows that have none the numbers of takes that are free. */
const numbered = (rows: readonly DraftRow[]): DraftRow[] => {
  const used = new Set(rows.map(({ what, gauge, take }) => `${what}\n${gauge}\n${String(take)}`));
  return rows.map((row) => {
    if (row.take !== undefined) return row;
    const key = (n: number): string => `${row.what}\n${row.gauge}\n${String(n)}`;
    let take = 1;
    while (used.has(key(take))) take++;
    used.add(key(take));
    return { ...row, take };
  });
};
