// All that is said of one cylinder from its contrasts in the current epoch.

import { studentCdf } from "../statistics/index.ts";
import { alarmChance } from "./alarm-rule.ts";
import { at } from "./at.ts";
import type { Change } from "./change-test.ts";
import { courseOf, courseOfSingle, shareOfSteady, type AlarmRule, type CourseWord } from "./course.ts";
import type { EarlyChange } from "./early-change.ts";
import type { Wide } from "./engine-wide.ts";
import type { PooledVariance } from "./pooled-variance.ts";
import type { CylinderHistory } from "./result.ts";
import { onlyReturns, whichOfTwo } from "./of-two.ts";
import { distinctPlaces, lineThrough, type Line, type Series } from "./series.ts";
import {
  leastLossShown,
  lossBound,
  ownScatterSlope,
  pooledSlope,
  robustSlope,
  type SlopeTest,
} from "./slope-test.ts";
import { stepOrLine } from "./step-or-line.ts";
import { twoBelowBaseline, type BaselineTest, type StepScale } from "./two-below-baseline.ts";

/** What the engine shares among its cylinders. */
export interface Shared {
  readonly pooled: PooledVariance;
  readonly scale: StepScale;
  /** s0^2 of one cell. */
  readonly cell: number;
  /** Asked for by engines of one and of two cylinders only. */
  readonly wide: () => Wide;
  readonly perYear: number | undefined;
  readonly cylinders: number;
}

/** What concerns this cylinder only. */
export interface Own {
  readonly series: Series;
  readonly change: (Change & { readonly test: number }) | undefined;
  readonly early: (EarlyChange & { readonly test: number }) | undefined;
  /** Its last reading taken in the epoch, and whether it held in any. */
  readonly lastTaken: "read" | "no-compression" | "none";
  readonly held: "some" | "none";
  /** In how many tests of it. */
  readonly taken: "one-at-most" | "several";
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
  | "wentOn"
  | "cameBack"
  | "lowAgain"
  | "limit"
  | "absolute"
  | "stays"
>;

/** The word for one cylinder, and all that it rests on. */
export interface JudgedCourse extends CourseWord {
  readonly alarms: readonly AlarmRule[];
  /** From four contrasts on. */
  readonly twoBelow: BaselineTest | undefined;
  /** From four contrasts at three places on. */
  readonly slopes:
    { readonly line: Line; readonly ownScatter: SlopeTest; readonly lossBound: number } | undefined;
  /** Of one alarmed by its contrasts. */
  readonly shape: Judgement["shape"];
}

/** The tests from four contrasts at three places on, the alarm at four places, the word.
 *  @source handbook/statistics.md C.8, L.4, L.5, L.9 */
export const judgeCourse = (own: Omit<Own, "change">, shared: Shared): JudgedCourse => {
  const { series, early } = own;
  const { pooled, scale } = shared;
  const count = series.contrasts.length;
  const judged = count >= 4;
  const line = judged && distinctPlaces(series.x, 0.02) >= 3 ? lineThrough(series) : undefined;
  const slopes =
    line === undefined
      ? undefined
      : { line, ownScatter: ownScatterSlope(line, pooled), lossBound: lossBound(line, pooled) };
  const twoBelow = judged ? twoBelowBaseline(series, scale) : undefined;
  const compared = count === 0 ? 1 : at(series.others, count - 1) + 1;
  const atFourPlaces = distinctPlaces(series.x, 0.02) >= 4;
  const ownScatter = slopes?.ownScatter;
  const alarms = alarmsOf(own, shared, {
    twoBelow: distinctPlaces(series.x, 0) >= 4 ? twoBelow?.p : undefined,
    slope: atFourPlaces ? ownScatter?.p : undefined,
    compared,
  });
  const ruled = alarms.includes("two-below-baseline") || alarms.includes("slope");
  const shape = ruled ? placed(series, scale, alarms) : undefined;
  const share =
    slopes === undefined
      ? undefined
      : shareOfSteady(slopes.lossBound, {
          perYear: shared.perYear,
          span: at(series.x, count - 1) - at(series.x, 0),
        });
  const word =
    shared.cylinders === 1 && own.lastTaken !== "no-compression"
      ? courseOfSingle(shared.wide().common, shareOfEngine(shared))
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
  return { ...word, alarms, twoBelow, slopes, shape };
};

/** The same with all else that is told of a cylinder. */
export const judgeCylinder = (own: Own, shared: Shared): Judgement => {
  const { series, change, early } = own;
  const { pooled, scale } = shared;
  const { course, leaning, alarms, twoBelow, slopes, shape } = judgeCourse(own, shared);
  const count = series.contrasts.length;
  return {
    course,
    ...(leaning === undefined ? {} : { leaning }),
    mirrored: mirroredOf(own, shared),
    alarms,
    count,
    ...(slopes === undefined
      ? {}
      : {
          theilSen: robustSlope(series),
          pooled: pooledSlope(slopes.line, pooled),
          ownScatter: slopes.ownScatter,
          lossBound: slopes.lossBound,
          leastLossShown: leastLossShown(slopes.line, pooled),
        }),
    ...(twoBelow === undefined ? {} : { twoBelow }),
    ...(change === undefined ? {} : { change: unmirrored(change, own, shared) }),
    ...(early === undefined
      ? {}
      : { early: { direction: early.direction, test: early.test, change: early.change } }),
    ...shaped(course === "rising" && count >= 4 ? placedRise(series, scale) : shape),
  };
};

/** Asks for the engine-wide channel where there are two cylinders. */
export const mirroredOf = (
  own: Pick<Own, "series" | "early">,
  { cylinders, wide, cell }: Shared,
): CylinderHistory["mirrored"] => (cylinders === 2 ? whichOfTwo(own, wide(), cell) : "no");

/** Of two, a low one that is back is no fall of the other. */
const unmirrored = (
  change: NonNullable<Own["change"]>,
  own: Pick<Own, "series" | "early">,
  { cylinders, cell }: Shared,
): NonNullable<Own["change"]> =>
  cylinders === 2 && change.flagged && onlyReturns(own, { last: 1, cell })
    ? { ...change, flagged: false }
    : change;

const shaped = (shape: Judgement["shape"]): Pick<Judgement, "shape"> =>
  shape === undefined ? {} : { shape };

/** A rise is a fall upside down. */
const placedRise = (series: Series, scale: StepScale): Judgement["shape"] => {
  const contrasts = series.contrasts.map((contrast) => -contrast);
  const { fall, ...found } = placed({ ...series, contrasts }, scale);
  return fall === undefined ? found : { ...found, fall: -fall };
};

const alarmsOf = (
  { series, early, lastTaken, taken }: Omit<Own, "change" | "held">,
  { cylinders, wide, cell }: Shared,
  p: { readonly twoBelow: number | undefined; readonly slope: number | undefined; readonly compared: number },
): readonly AlarmRule[] => {
  const raised: readonly (readonly [AlarmRule, boolean])[] = [
    // one test is no history
    ["no-compression", lastTaken === "no-compression" && taken === "several"],
    ["early-change", early?.direction === "down"],
    ["two-below-baseline", p.twoBelow !== undefined && p.twoBelow < alarmChance.lastTwo / p.compared],
    ["slope", p.slope !== undefined && p.slope < alarmChance.slope / p.compared],
    ["engine-wide", cylinders === 1 && wide().common.word === "falling"],
  ];
  const alarms = raised.flatMap(([rule, isRaised]) => (isRaised ? [rule] : []));
  if (cylinders !== 2 || alarms.length === 0 || !onlyReturns({ series, early }, { last: 2, cell }))
    return alarms;
  return alarms.filter((rule) => rule === "no-compression");
};

/** A step at the last reading is seen in it alone, unless the last two are both below where they began. */
const placed = (
  series: Series,
  scale: StepScale,
  alarms: readonly AlarmRule[] = [],
): NonNullable<Judgement["shape"]> => {
  const found = stepOrLine(series, scale.variance);
  if (found.before === undefined) return found;
  const isLast = found.before === series.contrasts.length - 1;
  const last = alarms.includes("two-below-baseline") ? "last-two" : "last-reading-only";
  const seenIn = isLast ? last : "several";
  return { ...found, firstAfter: at(series.tests, found.before), seenIn };
};

const shareOfEngine = ({ wide, perYear }: Shared): number | undefined => {
  const { common, span } = wide();
  const bound = common.trend?.lossBound;
  return bound === undefined ? undefined : shareOfSteady(bound, { perYear, span });
};
