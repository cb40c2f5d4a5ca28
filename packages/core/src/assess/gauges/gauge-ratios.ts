// What one gauge read beside another, cylinder by cylinder.

import {
  alphaOf,
  alphaUncertainty,
  cylinderOfLost,
  sensitivityOf,
  type LeakReading,
} from "../../leakdown/index.ts";
import { type AbsolutePressure, type GaugePressure, aboveVacuum } from "../../quantity/index.ts";
import { type CylinderValue, type KindValues, fractionLost, isComparable } from "../values/values.ts";

/** One cylinder by both gauges. */
export interface GaugeRatio {
  readonly label: string;
  /** In the engine's order. */
  readonly place: number;
  /** reading of the gauge / reading of the other; of leak-down testers alpha / alpha. */
  readonly ratio: number;
  /** Of ln ratio, as far as repeats scatter. */
  readonly variance: number;
  /** How far ln ratio may lie from those of the other cylinders where the two gauges stand alike on all. */
  readonly reach: number;
}

/** Three standard deviations: once in a hundred times one of four cylinders lies further out by chance alone. */
const reachFactor = 3;
/** What a valve that seats anew and an engine that cools change between the two gauges, of ln reading.
 *  @source handbook/statistics.md F, interaction 1 %; judgement */
const fromReadingToReading = 0.01;

interface Both {
  readonly counts: KindValues;
  readonly other: KindValues;
}

/** The cylinders that both gauges read within their scales and beyond doubt.
 *  @param repeatability - standard deviation of ln of one reading */
export const pressureRatios = (
  labels: readonly string[],
  { counts, other }: Both,
  repeatability: number,
): readonly GaugeRatio[] =>
  labels.flatMap((label, place): GaugeRatio[] => {
    const [a, b] = [counts.cells[place], other.cells[place]];
    if (!isSure(a) || !isSure(b) || a.value <= 0 || b.value <= 0) return [];
    const variance = repeatability ** 2 * (1 / a.readings.length + 1 / b.readings.length);
    const reach = reachFactor * Math.sqrt(variance + 2 * fromReadingToReading ** 2);
    return [{ label, place, ratio: b.value / a.value, variance, reach }];
  });

/** Standard deviation of ln(P2/P1) of one leak-down reading. @source handbook/statistics.md L.10 */
const leakRepeatability = 0.007;

interface Fed {
  readonly supply: GaugePressure | undefined;
  readonly ambient: AbsolutePressure;
  /** Standard uncertainty of each dial [Pa]: on a small drop it moves the leak far, on a large one little. */
  readonly uDial: number;
}

/** The same of leak-down testers: alpha of the one over alpha of the other. A cylinder that is tighter than the dials show
 *  or holds nothing has none. @param fed - supply and air at a cylinder, by the tester's name */
export const leakRatios = (
  labels: readonly string[],
  { counts, other }: Both,
  fed: (place: number, gauge: string | undefined) => Fed,
): readonly GaugeRatio[] => {
  const leakOf = (values: KindValues, place: number) => {
    const cell = values.cells[place];
    const { supply, ambient, uDial } = fed(place, values.gauge);
    if (!isSure(cell) || supply === undefined) return undefined;
    const lost = fractionLost(values.holds, cell.value, supply) ?? 0;
    if (lost <= 0 || lost >= 1) return undefined;
    const reading: LeakReading = { supply, cylinder: cylinderOfLost(supply, lost), ambient };
    const { cylinder } = sensitivityOf(reading);
    const ofReading =
      (cylinder * leakRepeatability * reading.cylinder) / aboveVacuum(reading.cylinder, ambient);
    const ofDials = alphaUncertainty({ ...reading, uSupply: uDial, uCylinder: uDial });
    return { alpha: alphaOf(reading), variance: ofReading ** 2 / cell.readings.length, ofDials };
  };
  return labels.flatMap((label, place): GaugeRatio[] => {
    const [a, b] = [leakOf(counts, place), leakOf(other, place)];
    if (a === undefined || b === undefined) return [];
    const variance = a.variance + b.variance;
    const reach = reachFactor * Math.sqrt(variance + a.ofDials ** 2 + b.ofDials ** 2);
    return [{ label, place, ratio: b.alpha / a.alpha, variance, reach }];
  });
};

const isSure = (cell: CylinderValue | undefined): cell is CylinderValue =>
  cell !== undefined && isComparable(cell) && !cell.doubtful;
