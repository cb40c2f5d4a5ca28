// A whole row of cranking readings that stands where no engine cranks, or nowhere near its last ones: the unit may be another.

import { type PressureUnit, gaugeUnits, toSi } from "../quantity/index.ts";
import { median } from "../statistics/index.ts";
import { slipOf } from "./slip.ts";

/** An engine whose best cylinder cranks to less [Pa gauge] does not start; judgement of this project. */
export const leastOfBest = 150_000;

/** Cranking pressures [Pa gauge]. Above `most` no engine cranks; between `low` and `high` nearly all that run read. Wide on
 *  purpose; judgement of this project. */
const cranking = { low: 300_000, high: 4_500_000, most: 7_000_000 };
/** Reading over last reading that no wear makes of all cylinders alike, and one that fits (judgement). */
const ofLast = { far: 2.5, fits: 1.4 };

/** A row of readings that stands where no engine cranks: the units that may have been meant. */
export interface UnitSlip {
  readonly kind: "impossible" | "too-low" | "unlike-last";
  /** Units in which the row would be usual, the likeliest first; none where no unit would. */
  readonly meant: readonly PressureUnit[];
  /** The middle reading over its last one, where that is what tells. */
  readonly times?: number;
}

/** Whether nearly all engines that run crank to such a reading. */
export const isUsualCranking = (value: number, unit: PressureUnit): boolean => {
  const pressure = toSi(value, unit);
  return pressure >= cranking.low && pressure <= cranking.high;
};

export interface RowReading {
  readonly value: number;
  /** The cylinder's earlier reading; both in the unit of the row. */
  readonly last: number | undefined;
}

/** Whether the unit of dry or oiled readings is to be asked about; undefined where it is not, as for a row of zeros. */
export const unitSlip = (row: readonly RowReading[], unit: PressureUnit): UnitSlip | undefined => {
  const readings = row.filter(({ value }) => value > 0);
  if (readings.length === 0) return undefined;
  const known = readings.flatMap(({ value, last = 0 }) => (last > 0 ? [{ value, last }] : []));
  return known.length === readings.length
    ? unlikeLast(known, unit)
    : impossibleIn(
        readings.map(({ value }) => value),
        unit,
      );
};

const unlikeLast = (
  known: readonly { readonly value: number; readonly last: number }[],
  unit: PressureUnit,
): UnitSlip | undefined => {
  const apart = (ratio: number): number => Math.abs(Math.log(ratio));
  const ratios = known.map(({ value, last }) => value / last);
  if (ratios.some((ratio) => apart(ratio) < Math.log(ofLast.far))) return undefined;
  const times = median(ratios);
  const off = (other: PressureUnit): number => apart((times * toSi(1, other)) / toSi(1, unit));
  const meant = gaugeUnits
    .filter((other) => other !== unit && off(other) <= Math.log(ofLast.fits))
    .toSorted((a, b) => off(a) - off(b));
  const isDigit = known.every(({ value, last }) => slipOf(value, [], last) !== undefined);
  return meant.length > 0 || isDigit ? { kind: "unlike-last", meant, times } : undefined;
};

const impossibleIn = (values: readonly number[], unit: PressureUnit): UnitSlip | undefined => {
  const [lowest, highest] = [Math.min(...values), Math.max(...values)];
  const meant = gaugeUnits.filter((other) => other !== unit && isUsualCranking(highest, other));
  if (toSi(lowest, unit) > cranking.most) return { kind: "impossible", meant };
  return toSi(highest, unit) < leastOfBest && meant.length > 0 ? { kind: "too-low", meant } : undefined;
};
