// The cranking readings of one test, corrected to reference air and given an uncertainty.

import type { PressureCorrection } from "../../cranking/index.ts";
import type { EngineRecord, PressureKind, Test } from "../../record/index.ts";
import { type Instrument, readingUncertainty } from "../../spread/index.ts";
import type { PressureValue } from "../assessment.ts";
import type { EngineFigures } from "../figures.ts";
import { hoseDoubt } from "../gauges/gauge-hose.ts";
import { type CylinderValue, type KindValues, crankingKinds, isComparable, valuesOf } from "./values.ts";

/** Gauge to gauge, where nothing is known of the gauge: class 2.5 read at half scale; judgement. */
const unknownGauge = 0.03;

/** What a gauge adds to the doubt about its readings. */
export interface GaugeDoubt extends Instrument {
  /** Stands in for the class where the gauge is not described [relative]. */
  readonly unknown: number;
  /** Of a reading held against a limit: what a hose ahead of the check valve may take from it [relative]. */
  readonly hose: number;
}

/** @param figures - of the record: how far this owner's readings scatter */
export const gaugeDoubt = (
  record: EngineRecord,
  { gauge: name }: KindValues,
  { repeatability }: EngineFigures,
): GaugeDoubt => {
  const gauge = record.gauges.find(({ id }) => id === name);
  const { classPercent, fullScale, division } = gauge ?? {};
  const accuracy =
    classPercent === undefined || fullScale === undefined ? undefined : { classPercent, fullScale };
  return {
    repeatability: repeatability.blended,
    ...(division === undefined ? {} : { division }),
    ...(accuracy === undefined ? {} : { accuracy }),
    unknown: accuracy === undefined ? unknownGauge : 0,
    hose: hoseDoubt(record, name),
  };
};

export type CylinderPressures = Readonly<Partial<Record<PressureKind, PressureValue>>>;

/** Every kind of cranking reading of every cylinder, in the engine's order. */
export const pressureValues = (
  record: EngineRecord,
  test: Test,
  { correction, figures }: { readonly correction: PressureCorrection; readonly figures: EngineFigures },
): readonly CylinderPressures[] => {
  const taken = crankingKinds.flatMap((what) => {
    const values = valuesOf(test, what);
    return values === undefined ? [] : [{ what, values, doubt: gaugeDoubt(record, values, figures) }];
  });
  return record.engine.cylinders.map((_, i) =>
    Object.fromEntries(
      taken.flatMap(({ what, values: { cells }, doubt }) => {
        const cell = cells[i];
        return cell === undefined ? [] : [[what, pressureValue(cell, doubt, correction)] as const];
      }),
    ),
  );
};

const pressureValue = (
  cell: CylinderValue,
  doubt: GaugeDoubt,
  correction: PressureCorrection,
): PressureValue => {
  const { readings, read, value, doubtful, pegged, slip } = cell;
  const corrected = value * correction.factor;
  const measured = { pressure: value, repeats: readings.length };
  const uncertainty =
    value > 0
      ? corrected *
        Math.hypot(readingUncertainty(measured, doubt, correction.uncertainty).relative, doubt.unknown)
      : undefined;
  return {
    readings,
    read,
    value,
    corrected,
    ...(uncertainty === undefined ? {} : { uncertainty }),
    doubtful,
    pegged,
    ...(slip === undefined ? {} : { slip }),
  };
};

/** Whether a reading was taken and can stand in a comparison. */
export const isCompared = (value: PressureValue | undefined): value is PressureValue =>
  value !== undefined && isComparable(value);

/** What the readings of one test are compared by. */
export const comparedPressure = ({ even, corrected }: PressureValue): number => even ?? corrected;
