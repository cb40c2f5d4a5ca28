// Readings brought together to tests. Those of one engine and day are one test unless meter, person or conditions differ;
// a second reading of a cylinder of the same kind is the next take, or a test of its own where the map says so.

import { byText } from "../../problem/index.ts";
import type { PressureUnit } from "../../quantity/index.ts";
import type { IsoDate } from "../iso-date.ts";
import type { LeakKind, PressureKind } from "../types.ts";
import type { EngineOfSheet, SameDay } from "./import-map.ts";
import { type CellAt, CellPlaces } from "./cell-places.ts";
import type { Sheet } from "./imported.ts";

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
  readonly at: CellAt;
}

/** Held in lists and not in maps: a sheet may have 200,000 of them. */
export interface DraftRow {
  readonly what: PressureKind | LeakKind;
  readonly unit: PressureUnit | "%";
  readonly gauge: string;
  take: number | undefined;
  /** By cylinder, in the engine's order; undefined where the sheet has no cell for it. */
  readonly texts: (string | undefined)[];
  readonly places: CellPlaces;
  notes: readonly string[];
}

export interface DraftTest {
  readonly engine: EngineOfSheet;
  readonly date: IsoDate;
  facts: DayFacts;
  readonly rows: DraftRow[];
}

export interface Gathering {
  /** Takes a cell in, unless its numbered take has this cylinder already (`twice`), or the day has more repeats or tests of one
   *  engine than tests.csv can number (`full`). */
  add(cell: TakenCell): "taken" | "twice" | "full";
  /** Hands over what was gathered, by engine and date, then as the sheet has it. Rows in which nothing was read are not there. */
  handOver(): DraftTest[];
}

/** An empty gathering. */
export const gatherTests = (sheet: Sheet, sameDay: SameDay): Gathering => {
  const engines = new Map<string, Map<IsoDate, DraftTest[]>>();
  return {
    add: (cell) => {
      const tests = testsOf(engines, cell);
      const open = firstOpen(tests, cell, sameDay);
      if (open?.row === "twice") return "twice";
      if (open?.row === "full" || (open === undefined && tests.length >= most)) return "full";
      const test = open?.test ?? newTest(tests, cell);
      const row = open === undefined || open.row === "new" ? newRow(test, cell, sheet) : open.row;
      const at = placeOf(cell);
      row.texts[at] = cell.text;
      row.places.note(at, cell.at);
      if (cell.note !== "" && !row.notes.includes(cell.note)) row.notes = [...row.notes, cell.note];
      test.facts = together(test.facts, cell.facts);
      return "taken";
    },
    handOver: () => {
      const tests = [...engines.values()].flatMap((days) => [...days.values()].flat());
      engines.clear();
      return tests
        .filter(({ rows }) => {
          const held = rows.filter(holdsReadings);
          rows.splice(0, rows.length, ...held);
          numberTakes(rows);
          return held.length > 0;
        })
        .sort((a, b) => byText(a.engine.engine, b.engine.engine) || byText(a.date, b.date));
    },
  };
};

const testsOf = (
  engines: Map<string, Map<IsoDate, DraftTest[]>>,
  { engine: { engine }, date }: TakenCell,
): DraftTest[] => {
  const days = engines.get(engine) ?? new Map<IsoDate, DraftTest[]>();
  if (days.size === 0) engines.set(engine, days);
  const tests = days.get(date) ?? [];
  if (tests.length === 0) days.set(date, tests);
  return tests;
};

/** Which cylinder of its engine a cell is of. */
const placeOf = ({ engine, label }: TakenCell): number => engine.cylinders.indexOf(label);

/** The first test of a day that goes with the cell, and its row; a loop, as it runs once a cell of a long sheet. */
const firstOpen = (tests: readonly DraftTest[], cell: TakenCell, sameDay: SameDay) => {
  for (const test of tests) {
    const row = goTogether(test.facts, cell.facts) ? openRow(test, cell, sameDay) : undefined;
    if (row !== undefined) return { test, row };
  }
  return undefined;
};

/** Where nothing names the tests, one that is set aside takes none with it of which that is not said. */
const goTogether = (facts: DayFacts, more: DayFacts): boolean => {
  if (facts === more) return true;
  const isNamed = (facts.test ?? "") !== "" && facts.test === more.test;
  if (!isNamed && (facts.set_aside ?? "") !== (more.set_aside ?? "")) return false;
  for (const name in more) {
    const value = more[name] ?? "";
    const own = facts[name] ?? "";
    if (value !== "" && own !== "" && own !== value) return false;
  }
  return true;
};

/** The same facts where the others say nothing more. */
const together = (facts: DayFacts, more: DayFacts): DayFacts => {
  if (facts === more) return facts;
  for (const name in more)
    if (more[name] !== "" && (facts[name] ?? "") === "")
      return { ...facts, ...Object.fromEntries(Object.entries(more).filter(([, value]) => value !== "")) };
  return facts;
};

/** The row of a test that takes the cell: one that has no reading of its cylinder yet, or a new one; undefined where the
 *  cell belongs to another test. */
const openRow = (
  test: DraftTest,
  cell: TakenCell,
  sameDay: SameDay,
): DraftRow | "new" | "twice" | "full" | undefined => {
  const at = placeOf(cell);
  const alike = test.rows.filter(({ what, gauge }) => what === cell.what && gauge === cell.gauge);
  if (cell.take !== undefined) {
    const own = alike.find(({ take }) => take === cell.take);
    if (own === undefined) return "new";
    return own.unit !== cell.unit || own.texts[at] !== undefined ? "twice" : own;
  }
  const free = alike.find(
    ({ take, unit, texts }) => take === undefined && unit === cell.unit && texts[at] === undefined,
  );
  if (free !== undefined) return free;
  if (sameDay === "tests" && alike.length > 0) return undefined;
  return alike.length >= most ? "full" : "new";
};

/** Takes of one kind, and tests of one day. */
const most = 99;

const noNotes: readonly string[] = [];

const newRow = (test: DraftTest, cell: TakenCell, sheet: Sheet): DraftRow => {
  const { what, unit, gauge, take } = cell;
  const { length } = cell.engine.cylinders;
  const texts: DraftRow["texts"] = Array.from({ length });
  const row = { what, unit, gauge, take, texts, places: new CellPlaces(sheet, length), notes: noNotes };
  test.rows.push(row);
  return row;
};

const newTest = (tests: DraftTest[], { engine, date, facts }: TakenCell): DraftTest => {
  const test = { engine, date, facts, rows: [] };
  tests.push(test);
  return test;
};

const holdsReadings = ({ texts }: DraftRow): boolean =>
  texts.some((text) => text !== undefined && text !== "x");

/** Gives the rows that have none the numbers of takes that are free. */
const numberTakes = (rows: readonly DraftRow[]): void => {
  for (const row of rows) {
    if (row.take !== undefined) continue;
    const alike = rows.filter(({ what, gauge }) => what === row.what && gauge === row.gauge);
    let take = 1;
    while (alike.some((one) => one.take === take)) take++;
    row.take = take;
  }
};
