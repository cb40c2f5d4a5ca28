// The numbers in a line of `history`: against the others, or of a lone cylinder its own readings.

import {
  type CylinderHistory,
  type KindHistory,
  type PressureUnit,
  fromSi,
  writeNumber,
} from "@sealtrend/core";
import { heldNothing } from "./history-nothing.ts";
import { hasDropped, hasRate } from "./history-sentences.ts";
import type { SparkPoint } from "../spark.ts";
import { carryingPlaces, fixed, signedPercent } from "../words.ts";

export interface RowNumbers {
  readonly first: string;
  readonly last: string;
  /** Percent a year; `-` where none can be given. */
  readonly slope: string;
  /** Written behind first and last in a sentence. */
  readonly unit: string;
}

/** One cylinder: nothing to compare it with. */
export const isAlone = ({ result }: KindHistory): boolean => result.cylinders.length === 1;

/** What is drawn of a cylinder, test by test. */
const drawnOf = ({ ratios, levels }: CylinderHistory, kind: KindHistory): readonly (number | undefined)[] =>
  isAlone(kind) ? levels : ratios;

/** The first and the last reading of the current epoch, of the tests that count, and the change.
 *  @param unit - of the readings of a lone cylinder */
export const numbersOf = (cylinder: CylinderHistory, kind: KindHistory, unit: PressureUnit): RowNumbers => {
  const { since = Infinity } = cylinder;
  const nothing = new Set(heldNothing(cylinder, kind));
  const own = drawnOf(cylinder, kind).flatMap((value, i) => {
    if (i < since || kind.result.tests[i]?.use !== "full") return [];
    if (nothing.has(i)) return ["held 0"];
    if (value !== undefined) return [valueText(value, kind, unit)];
    // read, and nothing to hold it against: an older figure would not be its last
    return cylinder.levels[i] === undefined ? [] : ["-"];
  });
  const slope = isAlone(kind) ? wholeSlope(cylinder, kind) : ownSlope(cylinder, kind);
  return {
    first: own[0] ?? "-",
    last: own.at(-1) ?? "-",
    slope: slope === undefined ? "-" : slopeText(slope, cylinder, kind),
    unit: isAlone(kind) ? ` ${ownUnit(kind, unit)}` : " %",
  };
};

/** What adds up to as much over the years, in ln units, is not printed as nothing; judgement. */
const sumShown = 0.01;

/** To a tenth; of one that moves, or over so long a time that it shows in the readings, with the digits that carry it. */
const slopeText = (slope: number, { course }: CylinderHistory, { result }: KindHistory): string => {
  const { axis, tests } = result;
  const part = Math.expm1(slope * (axis.perYear ?? 1));
  const places = tests.map(({ x }) => x / axis.slopePer);
  const sum = Math.abs(slope) * (Math.max(...places) - Math.min(...places));
  const moves = course === "falling" || course === "rising" || sum >= sumShown;
  return signedPercent(part, moves ? carryingPlaces(part) : 1);
};

/** What the readings of a lone cylinder are in. */
export const ownUnit = ({ kind }: KindHistory, unit: PressureUnit): string =>
  kind === "dry" ? unit : "% held";

/** A reading of its own, ln, in that. */
export const ownValue = (ln: number, { kind }: KindHistory, unit: PressureUnit): number =>
  kind === "dry" ? fromSi(Math.exp(ln), unit) : Math.exp(ln) * 100;

const valueText = (ln: number, kind: KindHistory, unit: PressureUnit): string => {
  if (!isAlone(kind)) return fixed(Math.expm1(ln) * 100, 1);
  return kind.kind === "dry" ? writeNumber(Math.exp(ln), unit) : fixed(ownValue(ln, kind, unit), 1);
};

const wholeSlope = ({ course }: CylinderHistory, { result: { common } }: KindHistory): number | undefined =>
  common.count < 4 || course === "stepped-down" ? undefined : common.trend?.slope;

/** A slope near 0 is a finding where the cylinder is steady; elsewhere only one that is shown, or leans. */
const ownSlope = (cylinder: CylinderHistory, kind: KindHistory): number | undefined => {
  const { course, leaning, theilSen } = cylinder;
  if (hasDropped(cylinder) || course.startsWith("stepped")) return undefined;
  const isFinding = course === "steady" || leaning === "down" || hasRate(cylinder, kind);
  return isFinding ? theilSen?.slope : undefined;
};

/** The points of the line; a reading of nothing lies below every scale. */
export const sparkPoints = (cylinder: CylinderHistory, kind: KindHistory): readonly SparkPoint[] => {
  const nothing = new Set(heldNothing(cylinder, kind));
  const values = drawnOf(cylinder, kind);
  return kind.result.tests.map(({ years: x }, i) => ({ x, y: nothing.has(i) ? -Infinity : values[i] }));
};

/** One scale for all cylinders, never finer than 10 % over the whole height: noise shall not look like a course. */
export const scaleOf = (kind: KindHistory) => {
  const { tests, cylinders } = kind.result;
  const years = tests.map(({ years: year }) => year);
  const all = cylinders.flatMap((cylinder) => drawnOf(cylinder, kind).filter((value) => value !== undefined));
  const middle = isAlone(kind) && all.length > 0 ? (Math.min(...all) + Math.max(...all)) / 2 : 0;
  return {
    from: Math.min(...years),
    to: Math.max(...years),
    low: Math.min(middle - 0.05, ...all),
    high: Math.max(middle + 0.05, ...all),
  };
};
