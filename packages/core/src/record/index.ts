export { parseTable, placeOf, type Table, type TableCell, type TableRow } from "./csv.ts";
export type * from "./engine-types.ts";
export type * from "./gauge-types.ts";
export type * from "./iso-date.ts";
export type * from "./measurement-types.ts";
export type * from "./price-types.ts";
export type * from "./types.ts";
export { datesMeant, isIsoDate, viewTable, type Bounds, type RowView } from "./row-view.ts";
export { readEngine } from "./engine.ts";
export { viewJson, type JsonObject, type JsonView } from "./json-view.ts";
export { engineFields, expectation, typedExample } from "./engine-fields.ts";
export { fieldValue, fits } from "./field-value.ts";
export { type FieldKind } from "./field-kind.ts";
export { ownedForOf } from "./ownership.ts";
export { readPrice, withPrices } from "./prices.ts";
export { gaugeColumns, readGauges } from "./gauges.ts";
export { burnsOil } from "./burns-oil.ts";
export { noteColumns, noteKinds, noteNames, readNotes } from "./notes.ts";
export { isFormula } from "./common-cells.ts";
export {
  decimalsOf,
  measurementColumns,
  optionalMeasurementColumns,
  partStates,
  readMeasurements,
} from "./measurements.ts";
export {
  measuredParts,
  partNames,
  quantitiesOf,
  quantityOf,
  type MeasuredLabel,
  type MeasuredQuantity,
} from "./measured-parts.ts";
export { isLimitFor } from "./clearances.ts";
export { limitQuantitiesOf, limitQuantityNamed, type LimitQuantity } from "./limit-quantities.ts";
export {
  limitExample,
  limitPath,
  limitPathMeant,
  limitPlace,
  limitToBegin,
  readTypedLimit,
  type LimitPlace,
  type TypedLimit,
} from "./typed-limit.ts";
export { limitMeant } from "./limit-meant.ts";
export { limitSlip, limitTyped } from "./limit-slip.ts";
export { offeredMeant, offeredPartAt, readTypedSizes } from "./typed-sizes.ts";
export { labelMend, labelsExpected, readLabel } from "./measured-labels.ts";
export { placeExample, placeNear, placesExpected, readPlace, type PlacePart } from "./measured-places.ts";
export {
  isLengthUnit,
  lengthUnits,
  measuredUnitNamed,
  measuredUnits,
  readMeasured,
  readMeasuredLength,
  type MeasuredDimension,
  type MeasuredFault,
  type MeasuredReading,
  type MeasuredUnit,
} from "./measured-value.ts";
export { readServices, serviceColumns, startsAnew, workNames } from "./services.ts";
export { dayOf } from "./one-test.ts";
export { gaugeStanding, type GaugeStanding } from "./gauge-links.ts";
export { holesFault, isSameHole } from "./known-hole-checks.ts";
export { percentOf, readKnownHole } from "./known-holes.ts";
export { readTests, testColumns } from "./tests.ts";
export { withoutTopComments } from "./top-comments.ts";
export { cylinderColumn, rowKinds } from "./test-rows.ts";
export { conditionColumns, numberColumns } from "./conditions.ts";
export { heardPlaces } from "./heard-places.ts";
export { splitHeard } from "./heard-list.ts";
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
export { readingSlip, type ReadingSlip } from "./slip.ts";
export { isUsualCranking, leastOfBest, unitSlip, type UnitSlip } from "./unit-slip.ts";
export { writeReadingCell } from "./reading-cell.ts";
export {
  readYardEngine,
  readYardHeader,
  type YardEngine,
  type YardHeader,
  type YardRun,
} from "./yard-rows.ts";
export * from "./importing/index.ts";
