// From an engine's record to what its history is computed from: which tests count, on which axis, with which breaks.

import type { HistoryInput, HistoryTest, TestUse } from "../../history/index.ts";
import { daysInYear, dayNumber } from "../../quantity/index.ts";
import type { EngineRecord, MeterUnit, Service, Test } from "../../record/index.ts";
import { correctionOf } from "../values/correction.ts";
import { type EngineFigures, figuresOf } from "../figures.ts";
import type { CountedTest } from "./counted-test.ts";
import { runInLengths, runsIn } from "../run-in.ts";
import type { Compared } from "../flags.ts";
import { workBreaks } from "./history-breaks.ts";
import type { TestSpeed } from "../speed/history-speed.ts";
import { type LeakSeriesTest, seriesBreaks } from "../leak/leak-series.ts";
import { linkedGauge } from "../gauges/linked-gauge.ts";
import { isVoid } from "../trust/trust.ts";
import { isSellers } from "../trust/trust-rules.ts";
import { type KindValues, fractionLost, isComparable, supplyOf, valuesOf } from "../values/values.ts";

/** Tests that hold readings of this kind, in order, each with the use that is made of it. */
export const countedTests = (
  record: EngineRecord,
  what: Compared,
  figures: EngineFigures = figuresOf(record),
): readonly CountedTest[] => {
  const counted: CountedTest[] = [];
  for (const test of record.tests) {
    const values = valuesOf(test, what);
    if (values === undefined || values.cells.every((cell) => cell === undefined)) continue;
    const use = useOf(record, test, figures, what);
    counted.push({ test, values, use, correction: correctionOf(record, test) });
  }
  return counted;
};

/** What use the history makes of readings of one kind in a test: a wrong stroke spoils the leak-down alone. */
export const useOf = (
  record: EngineRecord,
  test: Test,
  figures: EngineFigures,
  what: Compared = "dry",
): TestUse => {
  if (test.setAside !== undefined || isVoid(record, test, { what, figures })) return "set-aside";
  if (isSellers(test)) return "seller";
  return record.services.some((service) => isRunIn(service, test, record.engine.meter)) ? "run-in" : "full";
};

const isRunIn = (service: Service, test: Test, unit: MeterUnit | undefined): boolean => {
  const { date, meter } = service;
  if (!runsIn(service)) return false;
  if (test.date < date || meter === undefined || test.meter === undefined || unit === undefined) return false;
  return test.meter >= meter && test.meter - meter < runInLengths[unit].runIn;
};

/** The input of the history; undefined where no test holds such readings.
 *  @param tests - that hold them; for dry readings what the cranking speed of each adds, for a leak-down how each stands in
 *    the series */
export const historyInput = (
  record: EngineRecord,
  what: Compared,
  {
    counted,
    speeds,
    series,
  }: {
    readonly counted: readonly CountedTest[];
    /** Without doubts where only cylinders of one test are compared. */
    readonly speeds: readonly (Pick<TestSpeed, "lnFactors"> & Partial<TestSpeed>)[];
    readonly series: readonly LeakSeriesTest[];
  },
): HistoryInput | undefined => {
  const [first] = counted;
  if (first === undefined) return undefined;
  const axis = axisOf(record, counted);
  const start = dayNumber(first.test.date);
  const years = (test: Test): number => (dayNumber(test.date) - start) / daysInYear;
  const tests = counted.map(({ test, values, use, correction }, k): HistoryTest => {
    const place = years(test);
    const speed = speeds[k];
    const linked = linkedGauge(what === "dry" ? record.gauges : [], values.gauge);
    const { lnFactor, shared } = linked;
    const leak = series[k];
    const added = what === "dry" ? Math.log(correction.factor) + lnFactor : 0;
    return {
      id: test.id,
      x: axis.kind === "dates" ? place : (test.meter ?? 0),
      years: place,
      gauge: values.gauge,
      countsAs: linked.countsAs ?? leak?.countsAs,
      sharedUncertainty: { ...shared, ...speed?.shared, ...sharedOf(leak) },
      use,
      correctionUncertainty: what === "dry" ? Math.hypot(correction.uncertainty, speed?.uncertainty ?? 0) : 0,
      cells: record.engine.cylinders.map((_, i) =>
        restatedCell(
          cellOf(what, test, values, i, added + (speed?.lnFactors[i] ?? 0)),
          leak?.restated?.lnHeld[i],
        ),
      ),
    };
  });
  const services = [...workBreaks(record, counted), ...seriesBreaks(record, series)].sort(
    (a, b) => a.afterTests - b.afterTests,
  );
  const { minimum } = record.engine.compressionLimits;
  const limitRatio =
    record.engine.compressionLimits.lowestToHighest ??
    (record.engine.ignition === "compression" ? 0.8 : 0.75);
  return {
    kind: what === "dry" ? "cranking" : "leak-down",
    labels: record.engine.cylinders,
    axis,
    tests,
    services,
    ...(what === "dry" && record.engine.cylinders.length > 1 ? { limitRatio } : {}),
    ...(what === "dry" && minimum !== undefined ? { minimum: Math.log(minimum) } : {}),
  };
};

/** The meter where every test has it and it never runs back (a replaced meter counts as running back), else dates. */
const axisOf = (record: EngineRecord, counted: readonly CountedTest[]): HistoryInput["axis"] => {
  const meters = counted.map(({ test }) => test.meter);
  const unit = record.engine.meter;
  const forward = meters.every(
    (meter, i) => meter !== undefined && (i === 0 || meter >= (meters[i - 1] ?? Infinity)),
  );
  const moved = new Set(meters).size > 1;
  const replaced = record.services.some(({ what }) => what === "meter replaced");
  return unit !== undefined && forward && moved && !replaced
    ? { kind: "meter", unit }
    : { kind: "dates", unit: "year" };
};

/** What the step from another tester leaves in doubt, shared by all tests that it brings over. */
const sharedOf = (leak: LeakSeriesTest | undefined): Readonly<Record<string, number>> =>
  leak?.restated === undefined
    ? {}
    : { [`tester ${leak.instrument.gauge ?? ""} on ${leak.countsAs ?? ""}`]: leak.restated.shared };

const restatedCell = (
  cell: HistoryTest["cells"][number],
  lnHeld: number | undefined,
): HistoryTest["cells"][number] =>
  cell.kind === "read" && lnHeld !== undefined ? { ...cell, ln: lnHeld } : cell;

const cellOf = (
  what: Compared,
  test: Test,
  values: KindValues,
  cylinder: number,
  lnFactor: number,
): HistoryTest["cells"][number] => {
  const cell = values.cells[cylinder];
  if (cell === undefined || !isComparable(cell)) return { kind: "not-read" };
  const repeats = cell.readings.length;
  if (what === "dry")
    return cell.value > 0
      ? { kind: "read", ln: Math.log(cell.value) + lnFactor, repeats }
      : { kind: "no-compression" };
  const lost = fractionLost(values.holds, cell.value, supplyOf(test, cylinder, values.gauge));
  if (lost === undefined) return { kind: "not-read" };
  return lost < 1 ? { kind: "read", ln: Math.log1p(-lost), repeats } : { kind: "no-compression" };
};
