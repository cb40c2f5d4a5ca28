// What comes out of a stranger's sheet: tests ready for tests.csv, what was left out and why, and what only the owner
// of the sheet can say.

import type { Place, Problem, ProblemCode } from "../../problem/index.ts";
import type { PressureUnit } from "../../quantity/index.ts";
import type { TableRow } from "../csv.ts";
import type { IsoDate } from "../iso-date.ts";
import type { LeakKind, PressureKind } from "../types.ts";
import type { EngineOfSheet, ImportMap } from "./import-map.ts";

/** Its cells are without surrounding blanks, and without the blank ones behind the last that holds something. */
export interface SheetRow extends TableRow {
  /** As a spreadsheet counts, from 1. */
  readonly row: number;
}

/** A spreadsheet's CSV as rows of cells; nothing is said of what they mean. */
export interface Sheet {
  readonly file: string;
  readonly delimiter: string;
  /** Rows that hold something, in order. */
  readonly rows: readonly SheetRow[];
  /** Of the widest row, blank cells at its end not counted. */
  readonly columns: number;
  /** Rows that hold nothing, before the last that does. */
  readonly blankRows: number;
  /** Blank cells at the ends of rows, and rows of separators only behind the last that holds something. */
  readonly trailing: { readonly cells: number; readonly rows: number };
  /** Where a cell stands in the file; of a cell that is not there, where the row ends. @param column - from 0 */
  place(row: SheetRow, column: number): Place;
}

/** A row of tests.csv. */
export interface ImportedRow {
  readonly what: PressureKind | LeakKind;
  readonly take: number;
  readonly gauge?: string;
  readonly unit: PressureUnit | "%";
  /** A cell a cylinder in the engine's order, as tests.csv has it: `131`, `131.5?`, `>300`, `x`. */
  readonly cells: readonly string[];
  readonly note?: string;
  readonly from: ReadFrom;
}

/** Where the readings of a row stand in the sheet. */
export interface ReadFrom {
  /** @param cylinder - which of the engine's, from 0; the first reading of the row where it has none there */
  place(cylinder?: number): Place;
}

/** One test of one engine, without the name that it will get in tests.csv. */
export interface ImportedTest {
  readonly engine: string;
  readonly cylinders: readonly string[];
  readonly date: IsoDate;
  readonly meter?: string;
  readonly by?: string;
  /** Why it counts in nothing. */
  readonly setAside?: string;
  /** Cells of condition columns of tests.csv, by column. */
  readonly conditions: Readonly<Record<string, string>>;
  readonly rows: readonly ImportedRow[];
}

/** `fault`: something is wrong with it; `summary`: an average, a total; `header`: the heading again; `map`: the map leaves
 *  it out; `empty`: no reading in a row that holds something else. */
export type LeftWhy = "fault" | "summary" | "header" | "map" | "empty";

/** A row or a cell of the sheet that was not taken. */
export interface LeftOut {
  readonly why: LeftWhy;
  readonly row: number;
  /** Letters; absent where the whole row was left. */
  readonly column?: string;
  /** The text that stands there; of a row its first text. */
  readonly cell: string;
  /** Readings that are lost with it. */
  readonly readings: number;
  readonly problem: Problem;
}

/** Places that were left for the same reason as some that are told one by one. */
export interface LeftCount {
  readonly why: LeftWhy;
  readonly code: ProblemCode;
  readonly places: number;
  /** Readings that are lost with them. */
  readonly readings: number;
}

/** What came out of a sheet: tests ready for tests.csv, and what was left out with the reason. */
export interface Imported {
  readonly tests: readonly ImportedTest[];
  /** The list of the map, with the cylinders and the ignition that the sheet says where it leaves them open. */
  readonly engines: readonly EngineOfSheet[];
  /** The first of each kind. */
  readonly left: readonly LeftOut[];
  readonly moreLeft: readonly LeftCount[];
  /** Reading cells that came in, and those that hold nothing or a word for "not taken". */
  readonly counts: {
    readonly readings: number;
    readonly notTaken: number;
    /** Readings that name a unit themselves, other than the one that is said of all. */
    readonly ownUnits: readonly { readonly unit: string; readonly readings: number }[];
    /** Readings that name their supply themselves, as `74/80` does. */
    readonly ownSupplies: number;
  };
  /** Remarks of rows of which no reading came in, so that they come in with none. */
  readonly remarks: readonly LostRemark[];
}

/** A remark beside which no reading was taken. */
export interface LostRemark {
  readonly row: number;
  readonly text: string;
}

/** A column that holds something, and that the map does not read. */
export interface UnreadColumn {
  /** Letters. */
  readonly column: string;
  /** What stands above it; "" where nothing does. */
  readonly heading: string;
  /** Cells that hold something. */
  readonly cells: number;
}

/** What only the owner of a sheet can answer, by name. */
export type QuestionCode =
  | "layout"
  | "delimiter"
  | "decimal"
  | "dates"
  | "unit"
  | "percent"
  | "what"
  | "engine"
  | "cylinder"
  | "date"
  | "engine-name";

/** What the sheet does not settle. */
export interface OpenQuestion {
  readonly code: QuestionCode;
  /** One sentence, with what stands in the sheet quoted. */
  readonly text: string;
  /** What can be meant, each with the map entry that says so, and the option as it is typed where there is one. */
  readonly readings: readonly { readonly text: string; readonly entry: string; readonly option?: string }[];
  readonly place?: Place;
  /** The entry of the map that settles it, such as `dates`; and the name of the option where there is one. */
  readonly entry: string;
  readonly option?: string;
  /** The sheet says otherwise than the option of this name: leaving that out settles it. */
  readonly isAgainstTyped?: true;
}

/** Why the map says what it says: a sentence an entry. */
export interface MapReason {
  readonly entry: string;
  readonly text: string;
  /** Taken because the sheet does not say otherwise: whoever knows better may say so. */
  readonly isAssumed?: true;
}

/** A map guessed from a sheet, what is still open in it, and why it says what it says. */
export interface GuessedMap {
  readonly map: ImportMap;
  readonly open: readonly OpenQuestion[];
  readonly why: readonly MapReason[];
}

/** What is known before the sheet is looked at: options of the command, and the engines of the logbook. */
export interface ImportHints {
  readonly delimiter?: string;
  readonly decimal?: string;
  readonly dates?: string;
  readonly unit?: string;
  readonly what?: string;
  readonly gauge?: string;
  readonly by?: string;
  readonly date?: string;
  /** For a sheet of one engine: its id. */
  readonly engine?: string;
  readonly encoding?: string;
  readonly known?: readonly {
    readonly id: string;
    readonly name?: string;
    readonly cylinders: readonly string[];
    readonly ignition?: EngineOfSheet["ignition"];
  }[];
}

/** A test of the logbook that an imported one is, or stands beside. `same`: nothing to add; `part`: some of it stands there; `other`: a
 *  test of that day with other figures. */
export interface Recorded {
  readonly id: string;
  readonly match: "same" | "part" | "other";
  /** Its rows of which nothing stands there. */
  readonly missing: readonly ImportedRow[];
  /** Of a row that stands there with some cylinders not taken, and is otherwise the same: these cylinders. */
  readonly filling: readonly ImportedRow[];
  /** What stands there of its rows. */
  readonly known: readonly ImportedRow[];
  /** The kinds of the rows that stand there besides. */
  readonly others: readonly ImportedRow["what"][];
}
