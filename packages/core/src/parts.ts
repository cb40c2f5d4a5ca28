// The library taken apart, as its own command uses it and whoever checks a formula or edits a logbook: everything of
// index.ts, and behind it the formulas, tables, columns and typed lines. By domain, low to high. What stands here may
// change from one version to the next; public-surface.txt says what did.

export * from "./index.ts";

export { bad, byKey, byName, byPlace, byText, good, nearest, problem, type Facts } from "./problem/index.ts";

// prettier-ignore
export { dateOfDay, dayNumber, daysInYear, gaugeUnitNamed, gaugeUnits, readNumber, yearsBetween, type NumberReading,
} from "./quantity/index.ts";

export { gaugeStudy, leastSquares, mean, median, type GaugeStudy } from "./statistics/index.ts";

// prettier-ignore
export { altimeterSetting, altitudeAtPressure, beyondWeather, chokedFlow, criticalRatio, densityRatioAtAltitude,
  flowFunction, flowFunctionOfDrop, gasConstant, seaLevelPressure, seaLevelTemperature, temperatureAtAltitude,
  temperatureAtPressure } from "./air/index.ts";

// prettier-ignore
export { apparentExponent, clearanceVolume, combineLossFree, conductivityOfAir, correctSpeed, crankingCycle,
  cylinderFault, defaultOrNew, fillLimit, fillSeries, gammaOfAir, heatTransfer, hoseShare, knownChamber, leastOnADial,
  lossFreeByDefault, lossFreeFromGeometry, lossFreeFromNew, lossFreeFromTwoSpeeds, lossFreeOfCylinders, lossSpeed,
  oilAmount, oilRise, polytropicPressure, reachedBy, speedCorrectedUncertainty, speedDoubt, speedRatioUncertainty,
  statedFault, stillMissing, strokesTo, suggestedOil, sweptVolume, throttledReading, trappedRatio, unlikelyOf,
  usualLossSpeed, viscosityOfAir, volumeAt, type CalibratedLossFree, type CalibrationOutcome, type CalibrationReading,
  type Cycle, type CycleInput, type Cylinder, type CylinderFault, type CylinderSizes, type Filling,
  type HosedCylinder, type LeakEvidence, type LossFreePressure, type LossFreeSource, type OilAmount,
  type ReadingAtSpeed, type SpeedCorrected, type SpeedStep, type StatedNumbers, type StatedSizes, type Unlikely,
  type UsualLossSpeed, type WallHeat } from "./cranking/index.ts";

// prettier-ignore
export { alphaOf, alphaOverSupplies, alphaUncertainty, boreUncertainty, classLimit, cylinderOfLost, dialUncertainty,
  dischargeOf, dischargeUncertainty, holeByHoles, holeFromKnownHoles, inParallel, isentropicFlow, isoFlow,
  leakExplains, leakFigures, lostUncertainty, marginOverSupplies, masterMargin, partClosed, readingOfAlpha, readingOn,
  testerFactor, thinPlateCd, usualDivision, usualFullScale, usualLimit, usualSupplies, usualSupplyTemperature,
  usualTemperatureHalfWidth, warmthOf, type ComparedTesters, type CrankingLeak, type Dial, type Discharge,
  type HoleReading, type LeakExplanation, type MasterMargin, type MasterReading, type Tester, type TesterFactor,
  type TesterReading } from "./leakdown/index.ts";

// prettier-ignore
export { alreadyRecorded, amendmentColumns, burnsOil, cellText, conditionCell, conditionColumns, conditionKinds, cylinderColumn,
  datesMeant, dayOf, decimalsOf, dialectOf, engineFields, engineHeaders, expectation, fieldValue, figureLike, fits, gaugeColumns,
  gaugeHeader, gaugeStanding, guessImportMap, heardPlaces, importReadings, isEngineId, isFormula, isIsoDate, isLengthUnit,
  isLimitFor, isSameFigure, isSameHole, isUsualCranking, jsonText, lengthUnits, limitExample, limitMeant, limitPath, limitPathMeant, limitPlace,
  limitQuantitiesOf, limitQuantityNamed, limitSlip, limitToBegin, limitTyped, mapEntries, mapSource, measuredParts, measurementColumns,
  newLogbookText, noteColumns, noteKinds, noteNames, numberColumns, offeredMeant, offeredPartAt,
  optionalMeasurementColumns, ownedForOf, parseSheet, parseTable, partNames, percentOf, placeExample, placeOf,
  plainNumber, quantitiesOf, quantityOf, readImportMap, readingSlip, readingsKey, readKnownHole, readLabel,
  readMeasured, recordedKey, readMeasuredLength, readMeasurements, readNotes, readPlace, readPrice, readServices, readTests, readTypedLimit,
  readTypedSizes, readYardEngine, readYardHeader, rowKinds, rowText, serviceColumns, splitHeard, splitLeakReadings, splitReadings,
  startsAnew, suggestEngineId, testColumns, testValues, typedExample, unitSlip, isSupply, unreadColumns, viewJson, withConditionColumns,
  withPrices, workNames, writeImportMap, writeReadingCell, type ClearanceLimit, type ConditionCell, type DecimalMark,
  type Dialect, type FieldKind, type GaugeStanding, type GuessedMap, type Imported, type ImportedTest, type LostRemark,
  type ImportHints, type ImportMap, type JsonObject, type JsonView, type LeakPair, type LeftCount, type LeftOut, type LimitPair, type LimitPlace,
  type LimitQuantity, type ListReading, type MeasuredLabel, type MeasuredQuantity, type MeasuredReading,
  type OfferedPart, type OpenQuestion, type PartState, type ReadingSlip, type ReadMap, type Recorded, type Sheet,
  type SheetDelimiter, type SheetSource, type Table, type TableCell, type TableRow, type TypedLimit, type UnitSlip, type UnreadColumn,
  type YardEngine, type YardHeader, type YardRun } from "./record/index.ts";

export { type TesterMatch } from "./rules/index.ts";

export { procedureKinds } from "./procedure/index.ts";

export { forwardTest, type ForwardReading, type ForwardTest } from "./spread/index.ts";

// prettier-ignore
export { atNamed, countsToMeasure, currentFindings, figureShapes, instrumentWords, readTypedLine, rowOf, spoiltParts, startTyping,
  typingHelp, wearFound, type ConflictCode, type ItemStanding, type OversizeAnswer, type TypedLine,
  type TypedMeasurement, type TypingContext, type TypingShape, type WearFound, type WorkCode,
} from "./teardown/index.ts";

// prettier-ignore
export { diagnose, faultSheets, readFaults, shippedFaults, type Evidence, type FurtherTest,
} from "./diagnosis/index.ts";

// prettier-ignore
export { decide, judgedOf, ladder, turnsOf, type Comparison, type DecisionInput, type Guard, type Judged,
  type LadderRow, type Margin, type OfferedTest, type Prices, type RatioView, type Swing, type UnpricedFlip,
  type WearLine, type WornPlace } from "./decision/index.ts";

// prettier-ignore
export { beforeOpening, comparedReadings, compareGauges, comparePlaces, datedAhead, gatherForDecision, gaugeLink, holeCalibration, howPageOf,
  isWorthExplaining, linkBetween, linkedGauges, noYard, oilCautions, openHolesOf, openings, placeText, restrictorOf,
  runInSpans, runsIn, shownTests, speedCalibration, standApart, trueReading, withEngine, yardCompare, yardOrders,
  yardPlace, yardRow, type BuildUp, type Deciding, type ExplainedCylinder, type GaugeHose, type GaugePair, type HoleCalibration,
  type HowPage, type LeakAndCranking, type LeakPart, type LevelBelow, type LevelSince, type LimitMissed,
  type LinkedGauges, type MasterUse, type MeasuredStanding, type MeasureNow, type NewLink, type OilDoubt,
  type OilEvidence, type OilRise, type OilTest, type SpeedAssessment, type SpeedCalibration,
  type SpeedCalibrationRefused, type SpeedReadings, type TestSpeed, type WearChannel, type YardChoices,
  type YardCourse, type YardDecision, type YardOrder, type YardPlace, type YardRow, type YardTest, type YardTotals, type YardWorst,
} from "./assess/index.ts";
