export { parseTable, placeOf, type Table, type TableCell, type TableRow } from "./csv.ts";
export type * from "./types.ts";
export { datesMeant, isIsoDate } from "./row-view.ts";
export { readEngine } from "./engine.ts";
export { type JsonObject } from "./json-view.ts";
export {
  engineFields,
  expectation,
  fieldValue,
  fits,
  typedExample,
  type FieldKind,
} from "./engine-fields.ts";
export { gaugeColumns, readGauges } from "./gauges.ts";
export { noteColumns, noteKinds, noteNames, readNotes } from "./notes.ts";
export { readServices, serviceColumns, startsAnew, workNames } from "./services.ts";
export { readTests, testColumns } from "./tests.ts";
export { cylinderColumn, leakKinds, pressureKinds, rowKinds } from "./test-rows.ts";
export { conditionColumns, isConditionColumn, numberColumns } from "./conditions.ts";
export { heardPlaces } from "./heard.ts";
export {
  readEngineRecord,
  readLogbook,
  type EngineFiles,
  type LogbookFacts,
  type NamedText,
} from "./logbook.ts";
export { cellText, dialectOf, plainNumber, rowText, type Dialect } from "./write.ts";
export {
  conditionCell,
  conditionKinds,
  withConditionColumns,
  type ConditionCell,
} from "./condition-cells.ts";
export { amendmentColumns, engineHeaders, gaugeHeader, jsonText, newLogbookText } from "./new-files.ts";
export { splitLeakReadings, splitReadings, type LeakPair, type ListReading } from "./reading-list.ts";
export { slipOf, slippedTo, type Slip } from "./slip.ts";
export { writeReadingCell } from "./reading-cell.ts";
