// All that is said of one cylinder from its contrasts in the current epoch.

import { studentCdf } from "../statistics/index.ts";
import { alarmChance } from "./alarm-rule.ts";
import { at } from "./at.ts";
import type { Change } from "./change-test.ts";
import { courseOf, courseOfSingle, shareOfSteady, type AlarmRule } from "./course.ts";
import type { EarlyChange } from "./early-change.ts";
import type { EngineWide } from "./engine-wide.ts";
import type { PooledVariance } from "./pooled-variance.ts";
import type { CylinderHistory } from "./result.ts";
import { distinctPlaces, lineThrough, type Series } from "./series.ts";
import { leastLossShown, lossBound, ownScatterSlope, pooledSlope, robustSlope } from "./slope-test.ts";
import { stepOrLine } from "./step-or-line.ts";
import { twoBelowBaseline, type StepScale } from "./two-below-baseline.ts";

/** What the engine shares among its cylinders. */
export interface Shared {
  readonly pooled: PooledVariance;
  readonly scale: StepScale;
  readonly common: EngineWide;
  readonly perYear: number | undefined;
  readonly cylinders: number;
  /** From the first test to the last that the engine-wide channel uses, in the unit of slopes. */
  readonly span: number;
}

/** What concerns this cylinder only. */
export interface Own {
  readonly series: Series;
  readonly change: (Change & { readonly test: number }) | undefined;
  readonly early: (EarlyChange & { readonly test: number }) | undefined;
  /** Its last reading taken in the epoch, and whether it held in any. */
  readonly lastTaken: "read" | "no-compression" | "none";
  readonly held: "some" | "none";
}

export type Judgement = Omit<
  CylinderHistory,
  | "label"
  | "since"
  | "contrasts"
  | "ratios"
  | "meanRatio"
  | "levels"
  | "noCompression"
  | "limit"
  | "absolute"
  | "stays"
>;

/** The tests from four contrasts at three places on, the alarm at four places, the word.
 *  @source handbook/statistics.md C.8, L.4, L.5, L.9 */
export const judgeCylinder = (own: Own, shared: Shared): Judgement => {
  const { series, change, early } = own;
  const { pooled, scale, common } = shared;
  const count = series.contrasts.length;
  const judged = count >= 4;
  const line = judged && distinctPlaces(series.x, 0.02) >= 3 ? lineThrough(series) : undefined;
  const slopes =
    line === undefined
      ? {}
      : {
          theilSen: robustSlope(series),
          pooled: pooledSlope(line, pooled),
          ownScatter: ownScatterSlope(line, pooled),
          lossBound: lossBound(line, pooled),
          leastLossShown: leastLossShown(line, pooled),
        };
  const tests = { ...slopes, ...(judged ? { twoBelow: twoBelowBaseline(series, scale) } : {}) };
  const compared = count === 0 ? 1 : at(series.others, count - 1) + 1;
  const atFourPlaces = distinctPlaces(series.x, 0.02) >= 4;
  const alarms = alarmsOf(own, shared, {
    twoBelow: distinctPlaces(series.x, 0) >= 4 ? tests.twoBelow?.p : undefined,
    slope: atFourPlaces ? tests.ownScatter?.p : undefined,
    compared,
  });
  const ruled = alarms.includes("two-below-baseline") || alarms.includes("slope");
  const shape = ruled ? placed(series, scale) : undefined;
  const { ownScatter } = tests;
  const share =
    tests.lossBound === undefined
      ? undefined
      : shareOfSteady(tests.lossBound, {
          perYear: shared.perYear,
          span: at(series.x, count - 1) - at(series.x, 0),
        });
  const word =
    shared.cylinders === 1 && own.lastTaken !== "no-compression"
      ? courseOfSingle(common, shareOfEngine(shared))
      : courseOf({
          alarms,
          heldBefore: own.held === "some",
          ...(shape === undefined || (early !== undefined && count < 5) ? {} : { shape: shape.shape }),
          ...(ownScatter === undefined
            ? {}
            : { slope: { p: ownScatter.p, pRise: studentCdf(-ownScatter.t, ownScatter.df), atFourPlaces } }),
          ...(early === undefined ? {} : { early: early.direction }),
          compared,
          ...(share === undefined ? {} : { boundShare: share }),
        });
  return {
    ...word,
    mirrored:
      shared.cylinders !== 2 ? "no" : common.count >= 4 && common.word !== "rising" ? "named" : "either",
    alarms,
    count,
    ...tests,
    ...(change === undefined ? {} : { change }),
    ...(early === undefined
      ? {}
      : { early: { direction: early.direction, test: early.test, change: early.change } }),
    ...shaped(word.course === "rising" && judged ? placedRise(series, scale) : shape),
  };
};

const shaped = (shape: Judgement["shape"]): Pick<Judgement, "shape"> =>
  shape === undefined ? {} : { shape };

/** A rise is a fall upside down. */
const placedRise = (series: Series, scale: StepScale): Judgement["shape"] => {
  const contrasts = series.contrasts.map((contrast) => -contrast);
  const { fall, ...found } = placed({ ...series, contrasts }, scale);
  return fall === undefined ? found : { ...found, fall: -fall };
};

const alarmsOf = (
  { early, lastTaken }: Own,
  { cylinders, common }: Shared,
  p: { readonly twoBelow: number | undefined; readonly slope: number | undefined; readonly compared: number },
): readonly AlarmRule[] => {
  const raised: readonly (readonly [AlarmRule, boolean])[] = [
    ["no-compression", lastTaken === "no-compression"],
    ["early-change", early?.direction === "down"],
    ["two-below-baseline", p.twoBelow !== undefined && p.twoBelow < alarmChance.lastTwo / p.compared],
    ["slope", p.slope !== undefined && p.slope < alarmChance.slope / p.compared],
    ["engine-wide", cylinders === 1 && common.word === "falling"],
  ];
  return raised.flatMap(([rule, isRaised]) => (isRaised ? [rule] : []));
};

const placed = (series: Series, scale: StepScale): NonNullable<Judgement["shape"]> => {
  const found = stepOrLine(series, scale.variance);
  if (found.before === undefined) return found;
  const seenIn = found.before === series.contrasts.length - 1 ? "last-reading-only" : "several";
  return { ...found, firstAfter: at(series.tests, found.before), seenIn };
};

const shareOfEngine = ({ common, perYear, span }: Shared): number | undefined => {
  const bound = common.trend?.lossBound;
  return bound === undefined ? undefined : shareOfSteady(bound, { perYear, span });
};
