// What of the sheet was not taken: noted once a cell, with the readings that were lost with it.

import { type Facts, type Problem, type ProblemCode, type Severity, problem } from "../../problem/index.ts";
import { columnLetters } from "./columns.ts";
import type { LeftCount, LeftOut, LeftWhy, Sheet, SheetRow } from "./imported.ts";
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
  /** The first of each kind, by their places. */
  all(): readonly LeftOut[];
  /** How many more there are of each kind. */
  more(): readonly LeftCount[];
}

interface How {
  readonly why: LeftWhy;
  readonly readings: number;
}

/** So many of one kind are kept with all that is told of them; a sheet that is wrong throughout may have 400,000. */
const mostKept = 200;

/** A place in a sheet as a number: no row has more columns. */
const mostColumns = 4_096;

/** An empty list for a sheet. */
export const leftList = (sheet: Sheet): LeftList => {
  const kinds = new Map<string, Kind>();
  const note = (row: SheetRow, column: number, { why, what, readings, whole, isKept }: Note): Bar => {
    const name = `${why}\n${what.code}`;
    const kind = kinds.get(name) ?? newKind(why, what.code);
    kinds.set(name, kind);
    const place = row.row * mostColumns + column;
    const known = kind.entries.get(place) ?? kind.ofRow.get(place);
    if (known !== undefined) return known;
    const entry: Entry = { readings, isKept };
    const isFull = kind.entries.size >= mostKept;
    if (isFull && row.row > kind.row) {
      countRow(kind);
      kind.row = row.row;
    }
    if (!isFull)
      entry.left = () => ({
        why,
        row: row.row,
        ...(whole ? {} : { column: columnLetters(column) }),
        cell: row.cells[column]?.text ?? "",
        readings: entry.readings,
        problem: { ...what, ...sheet.place(row, column) },
      });
    (isFull && row.row === kind.row ? kind.ofRow : kind.entries).set(place, entry);
    return entry;
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
      [...kinds.values()]
        .flatMap(({ entries }) => [...entries.values()].filter(counting))
        .flatMap(({ left }) => left?.() ?? [])
        .sort((a, b) => a.row - b.row || (a.problem.column ?? 0) - (b.problem.column ?? 0)),
    more: () =>
      [...kinds.values()].flatMap((kind): LeftCount[] => {
        const open = [...kind.ofRow.values(), ...kind.entries.values()].filter(
          (entry) => entry.left === undefined && counting(entry),
        );
        const places = kind.places + open.length;
        const readings = open.reduce((sum, entry) => sum + entry.readings, kind.readings);
        return places === 0 ? [] : [{ why: kind.why, code: kind.code, places, readings }];
      }),
  };
};

interface Kind {
  readonly why: LeftWhy;
  readonly code: ProblemCode;
  /** The first, and of later ones those that stand in a row before the one at hand, such as a heading. */
  readonly entries: Map<number, Entry>;
  /** Later ones of the row at hand: counted when the next comes. */
  row: number;
  readonly ofRow: Map<number, Entry>;
  places: number;
  readings: number;
}

interface Entry extends Bar {
  readonly isKept: boolean;
  /** Only of the first of a kind. */
  left?: () => LeftOut;
}

const newKind = (why: LeftWhy, code: ProblemCode): Kind => ({
  why,
  code,
  entries: new Map(),
  row: 0,
  ofRow: new Map(),
  places: 0,
  readings: 0,
});

const counting = ({ isKept, readings }: Entry): boolean => isKept || readings > 0;

const countRow = (kind: Kind): void => {
  for (const entry of kind.ofRow.values()) {
    if (!counting(entry)) continue;
    kind.places += 1;
    kind.readings += entry.readings;
  }
  kind.ofRow.clear();
};

interface Note extends How {
  readonly what: Problem;
  readonly whole: boolean;
  readonly isKept: boolean;
}

const severityOf = (why: LeftWhy): Severity => (why === "fault" ? "error" : "caution");
