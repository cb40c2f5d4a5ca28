export type {
  DateOrder,
  DecimalMark,
  EngineOfSheet,
  ImportMap,
  SameDay,
  SheetDelimiter,
  Source as SheetSource,
} from "./import-map.ts";
export type * from "./imported.ts";
export { parseSheet } from "./sheet.ts";
export { readImportMap, type ReadMap } from "./read-map.ts";
export { mapEntries, mapSource } from "./map-entries.ts";
export { writeImportMap } from "./write-map.ts";
export { guessImportMap } from "./guess-map.ts";
export { importReadings } from "./import-readings.ts";
export { isSupply } from "./condition-headings.ts";
export { unreadColumns } from "./unread-columns.ts";
export {
  type FigureInUnit,
  alreadyRecorded,
  figureLike,
  isSameFigure,
  readingsKey,
  recordedKey,
  testValues,
} from "./recorded.ts";
export { isEngineId, suggestEngineId } from "./suggest-engine-id.ts";
