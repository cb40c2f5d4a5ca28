// How a stranger's sheet is to be read, as a person edits it: the value is the JSON of the map file, key by key.
// Every reading cell of the sheet has an engine, a date, a cylinder and so on; the map says where each of them stands.

import type { dateOrders, decimalMarks, sameDayRules, separators } from "./map-words.ts";

/** A column by its letters as a spreadsheet shows them (`C`, `AB`), or by a text that stands above it (`"Hours"`). */
export type ColumnName = string;

/** Where something of a reading stands: in its row, above its column, or once for the whole sheet. */
export type Source =
  /** In a column of the reading's row; with `fill` a blank cell takes what stands above it. */
  | { readonly column: ColumnName; readonly fill?: boolean }
  /** In a row above, in the reading's column; with `fill` a blank cell takes what stands left of it (merged cells). */
  | { readonly headerRow: number; readonly fill?: boolean }
  | { readonly fixed: string }
  /** Of the date only: in a row of its own above each block of readings. */
  | { readonly above: true };

/** What a reading can have beside its figure. Of these, engine, date, cylinder, what and unit are needed. */
export type Attribute =
  | "engine"
  | "ignition"
  | "date"
  | "test"
  | "cylinder"
  | "what"
  | "take"
  | "unit"
  | "gauge"
  | "meter"
  | "by"
  | "set_aside"
  | "note";

/** One name of an engine in the sheet, and the engine it is. */
export interface EngineOfSheet {
  /** As the sheet has it, whatever its case and blanks where no other entry has it to the letter. */
  readonly sheet: string;
  /** The engine's id; "" leaves its readings out. */
  readonly engine: string;
  /** Labels in order. */
  readonly cylinders: readonly string[];
  /** For an engine that the logbook does not have yet; `unknown` where the map does not say it. */
  readonly ignition?: "spark" | "compression" | "unknown";
}

/** What parts the cells of a sheet to import. */
export type SheetDelimiter = (typeof separators)[number];
/** What a sheet to import writes before the tenths. */
export type DecimalMark = (typeof decimalMarks)[number];
/** In which order a sheet to import writes day, month and year. */
export type DateOrder = (typeof dateOrders)[number];
/** What a second reading of the same kind on one day is: a repeat in one test, or a test of its own. Where meter, person or
 *  conditions differ it is a test of its own anyway. */
export type SameDay = (typeof sameDayRules)[number];

/** How a sheet to import is to be read: where each fact of a reading stands in it, as a person edits it. */
export interface ImportMap {
  readonly schema: "sealtrend/import-map@1";
  /** Carried only: the text is decoded before it comes here. */
  readonly encoding?: string;
  readonly delimiter?: SheetDelimiter;
  readonly decimal?: DecimalMark;
  readonly dates?: DateOrder;
  /** First row with readings, as a spreadsheet counts rows, from 1. */
  readonly firstRow: number;
  readonly lastRow?: number;
  /** Columns with readings: names, and ranges of letters such as `C-AP`. */
  readonly readings: { readonly columns: readonly ColumnName[] };
  readonly engine?: Source;
  /** How the engine of a reading fires: `spark`, `compression`. */
  readonly ignition?: Source;
  readonly date?: Source;
  /** A name of the test: readings under two names are of two tests. */
  readonly test?: Source;
  readonly cylinder?: Source;
  readonly what?: Source;
  readonly take?: Source;
  /** `psi`, `kPa`, `bar`, `MPa`, `kgf/cm2`, `%` (lost, or what the tester's dial says), `% held`. */
  readonly unit?: Source;
  readonly gauge?: Source;
  readonly meter?: Source;
  readonly by?: Source;
  /** Why a test is set aside. */
  readonly set_aside?: Source;
  readonly note?: Source;
  /** By the name of a condition column of tests.csv, such as `air_temp_C`. */
  readonly conditions?: Readonly<Record<string, Source>>;
  /** Words for a reading that was not taken, whatever their case. */
  readonly notTaken: readonly string[];
  readonly sameDay: SameDay;
  readonly engines: readonly EngineOfSheet[];
}
