// The entries of a map in the order in which they are written, each with what it may hold: one table for the reader, the writer and the help.

import { numberColumns, wordColumns } from "../conditions.ts";
import type { ImportMap } from "./import-map.ts";

interface MapEntry {
  readonly name: keyof ImportMap;
  /** What it may hold, for whoever edits a map. */
  readonly holds: string;
}

/** The condition columns of tests.csv that a map may name. */
export const mapConditions: readonly string[] = [...Object.keys(numberColumns), ...Object.keys(wordColumns)];

/** Every entry that a map may have. */
export const mapEntries: readonly MapEntry[] = [
  { name: "schema", holds: '"sealtrend/import-map@1"' },
  { name: "encoding", holds: "how the file is encoded, a word of --sheet-encoding" },
  { name: "delimiter", holds: 'what stands between the cells: ",", ";" or "\\t"' },
  { name: "decimal", holds: 'what stands before the decimals: "." or ","' },
  { name: "dates", holds: 'how to read 11/12/2026: "dmy", "mdy" or "ymd"' },
  { name: "firstRow", holds: "the first row with readings, as the spreadsheet counts rows" },
  { name: "lastRow", holds: "the last row that is read; left out, all of them are" },
  { name: "readings", holds: '{ "columns": ["C-F", "H"] }, or a text that stands above a column' },
  { name: "engine", holds: "a source (see below): the name that the list engines has" },
  {
    name: "ignition",
    holds: "a source: spark or compression, for engines of which the list engines does not say it",
  },
  { name: "date", holds: 'a source; or { "above": true }, the day in a row of its own above each block' },
  { name: "test", holds: "a source: a name for each test, where a day may have several" },
  { name: "cylinder", holds: "a source: 3, Cyl 3, L2, Left" },
  {
    name: "what",
    holds:
      "a source: dry, wet, leak-down, leak-down-oiled, leak-down-lower, first-stroke, running, snap-throttle",
  },
  { name: "take", holds: "a source: the number of the repeat" },
  {
    name: "unit",
    holds:
      'a source: psi, kPa, bar, MPa, kgf/cm2, % (lost) or % held; what a cell names itself, as "8%", goes before',
  },
  { name: "gauge", holds: "a source" },
  { name: "meter", holds: "a source: hours, km or miles" },
  { name: "by", holds: "a source: who measured" },
  { name: "set_aside", holds: "a source: why a test counts in nothing" },
  { name: "note", holds: "a source" },
  {
    name: "conditions",
    holds: `sources by name: { "air_temp_C": { "column": "G" } }; names: ${mapConditions.join(", ")}`,
  },
  { name: "notTaken", holds: 'words for a reading that was not taken: ["x", "n/a"]' },
  {
    name: "sameDay",
    holds:
      'a second reading of a cylinder on one day: "takes" are repeats of a test, "tests" are tests of their own',
  },
  {
    name: "engines",
    holds:
      '[{ "sheet": "Pump 1", "engine": "pump", "cylinders": ["1", "2"], "ignition": "spark" }]; "engine": "" leaves one out, cylinders [] takes those of the sheet',
  },
];

/** What a source is: where something of a reading stands. */
export const mapSource =
  '{ "column": "B" } or { "column": "Hours" } in the reading\'s row, { "headerRow": 2 } above its column, each with "fill": true where a blank takes the one before; { "fixed": "psi" } for all';
