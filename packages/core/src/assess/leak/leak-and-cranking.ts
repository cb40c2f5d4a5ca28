// Does the leak of a cylinder explain its low cranking reading? Leak-down and cranking of one test, or of tests so near
// that nothing changed between them.

import {
  type LeakExplanation,
  type MeasuredLeak,
  boreUncertainty,
  dischargeOf,
  dischargeUncertainty,
  leakExplains,
  leakFigures,
} from "../../leakdown/index.ts";
import { area, dayNumber, speed, volume } from "../../quantity/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";
import { median } from "../../statistics/index.ts";
import type { EngineFigures } from "../figures.ts";
import { type LeakInstrument, leakInstrument, pressuresOf } from "./leak-instrument.ts";
import { speedOfTest } from "../speed/speeds.ts";
import { isVoid } from "../trust/trust.ts";
import { isSellers } from "../trust/trust-rules.ts";
import { counts, isComparable, valuesOf } from "../values/values.ts";

/** One cylinder: whether its leak explains its cranking reading. */
export interface ExplainedCylinder extends LeakExplanation {
  readonly label: string;
  /** Cranking reading over the median of the others. */
  readonly observed: number;
}

/** Leak-down and cranking readings held against each other, cylinder by cylinder. */
export interface LeakAndCranking {
  /** The tests the two kinds of reading come from. */
  readonly crankingTest: string;
  readonly leakTest: string;
  readonly speedFrom: "measured" | "assumed";
  /** [rpm] */
  readonly speed: number;
  /** Cylinders whose leak and cranking reading were both taken, in the engine's order. */
  readonly cylinders: readonly ExplainedCylinder[];
}

/** So many days apart nothing is thought to have changed where no work was done between; judgement. */
const near = 30;

/** Cranking speeds where none is known [rpm]; judgement. */
const usualSpeed = { spark: 250, compression: 200, unknown: 250 } as const;

/** Undefined where one of the two is missing, the geometry is not known, or the tester tells no size. Four-strokes only:
 *  the model behind it closes an intake valve. @source handbook/leakdown.md H.4, computed */
export const leakAndCranking = (
  record: EngineRecord,
  test: Test,
  figures: EngineFigures,
): LeakAndCranking | undefined => {
  const { bore, stroke, compressionRatio } = record.engine.geometry;
  if (bore === undefined || stroke === undefined || compressionRatio === undefined) return undefined;
  if (record.engine.cycle !== "four-stroke" || isVoid(record, test, { what: "leak-down", figures }))
    return undefined;
  const cranking = counts(test, "dry") ? test : neighbour(record, test, { what: "dry", figures });
  const leak = counts(test, "leak-down") ? test : neighbour(record, test, { what: "leak-down", figures });
  if (cranking === undefined || leak === undefined || (cranking !== test && leak !== test)) return undefined;
  const sizes = sizesOf(record, leak);
  const observed = observedOf(cranking);
  const measured = speedOfTest(cranking);
  const turns = measured ?? figures.referenceSpeed ?? usualSpeed[record.engine.ignition];
  const speedFrom = measured === undefined ? "assumed" : "measured";
  const displacement = volume((Math.PI / 4) * bore ** 2 * stroke);
  const cylinders = record.engine.cylinders.flatMap((label, i): ExplainedCylinder[] => {
    const [own, seen] = [sizes.leaks[i], observed[i]];
    const fellows = middleLeak(sizes.leaks.filter((_, k) => k !== i && observed[k] !== undefined));
    if (own === undefined || seen === undefined || fellows === undefined) return [];
    const count = observed.filter((one) => one !== undefined).length;
    const explained = leakExplains({
      compressionRatio,
      displacement,
      speed: speed(turns),
      speedFrom,
      leak: own,
      fellows,
      uCommon: sizes.uCommon,
      observed: seen,
      cylinders: count,
    });
    return [{ label, observed: seen, ...explained }];
  });
  return cylinders.length === 0
    ? undefined
    : { crankingTest: cranking.id, leakTest: leak.id, speedFrom, speed: turns, cylinders };
};

/** The nearest test in time that holds the other kind, with no work on the engine in between. */
const neighbour = (
  record: EngineRecord,
  test: Test,
  { what, figures }: { readonly what: "dry" | "leak-down"; readonly figures: EngineFigures },
): Test | undefined => {
  const apart = (other: Test): number => Math.abs(dayNumber(other.date) - dayNumber(test.date));
  const isBetween = (date: string, other: Test): boolean =>
    date >= (other.date < test.date ? other.date : test.date) &&
    date <= (other.date < test.date ? test.date : other.date);
  return record.tests
    .filter(
      (other) =>
        other !== test &&
        apart(other) <= near &&
        counts(other, what) &&
        !isSellers(other) &&
        !isVoid(record, other, { what, figures }) &&
        !record.services.some(({ date, newBaseline }) => newBaseline.length > 0 && isBetween(date, other)),
    )
    .toSorted((a, b) => apart(a) - apart(b))[0];
};

/** Effective leak areas of one test; those tighter than the dials show are taken as read, with their doubt. */
const sizesOf = (
  record: EngineRecord,
  test: Test,
): { readonly leaks: readonly (MeasuredLeak | undefined)[]; readonly uCommon: number } => {
  const values = valuesOf(test, "leak-down");
  if (values === undefined) return { leaks: [], uCommon: 0 };
  const instrument = leakInstrument(record, test, values);
  const { restrictor } = instrument;
  return {
    leaks: values.cells.map((cell, i) =>
      cell === undefined || !isComparable(cell) ? undefined : leakOf(instrument, i, cell.value),
    ),
    uCommon: Math.hypot(boreUncertainty(restrictor), dischargeUncertainty(dischargeOf(restrictor, 0.8))),
  };
};

const leakOf = (instrument: LeakInstrument, cylinder: number, value: number): MeasuredLeak | undefined => {
  const reading = pressuresOf(instrument, cylinder, value);
  if (reading === undefined || reading.cylinder <= 0) return undefined;
  if (reading.cylinder >= reading.supply) return { area: area(0), uncertainty: 0 };
  const { alpha, uAlpha, size } = leakFigures(reading, instrument.restrictor);
  return size === undefined ? undefined : { area: size.area, uncertainty: uAlpha / alpha };
};

const middleLeak = (leaks: readonly (MeasuredLeak | undefined)[]): MeasuredLeak | undefined => {
  const known = leaks.filter((leak) => leak !== undefined);
  if (known.length === 0) return undefined;
  const half = median(known.map((leak) => leak.area));
  const nearest = known.toSorted((a, b) => Math.abs(a.area - half) - Math.abs(b.area - half))[0];
  return { area: area(half), uncertainty: nearest?.uncertainty ?? 0 };
};

/** Each reading over the median of the others; undefined where it, or all the others, hold nothing. */
const observedOf = (test: Test): readonly (number | undefined)[] => {
  const cells = valuesOf(test, "dry")?.cells ?? [];
  const read = cells.map((cell) =>
    cell !== undefined && isComparable(cell) && cell.value > 0 ? cell.value : undefined,
  );
  return read.map((own, i) => {
    const others = read.flatMap((value, k) => (k === i || value === undefined ? [] : [value]));
    return own === undefined || others.length === 0 ? undefined : own / median(others);
  });
};
