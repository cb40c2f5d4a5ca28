// The courses alone, for a list of many engines or the reason of a fall: what only explains them or looks ahead is left out.

import { type AfterFall, afterFall } from "./after-fall.ts";
import { at } from "./at.ts";
import { earlyByCylinder } from "./changes-by-cylinder.ts";
import type { EngineWide } from "./engine-wide.ts";
import { groundwork, takenBy } from "./groundwork.ts";
import type { HistoryInput } from "./input.ts";
import { judgeCourse, mirroredOf } from "./judge-cylinder.ts";
import type { CylinderHistory, Mirrored } from "./result.ts";
import { type RobustSlope, robustSlope } from "./slope-test.ts";

/** The course of one cylinder, as `analyseHistory` has it. */
export interface CylinderCourse extends Pick<CylinderHistory, "label" | "course" | "alarms" | "early"> {
  /** Of an alarmed one, as there. */
  readonly shape: CylinderHistory["shape"];
  /** Whether it is the mirror image of its only fellow; worked out when it is asked for. */
  readonly mirrored: () => Mirrored;
  /** Whether one stepped down reads lower again, or as before, as there; worked out when it is asked for. */
  readonly afterFall: () => AfterFall;
  /** The Theil-Sen line as there, of a lone cylinder the slope of the engine as a whole without an interval; worked out when it
   *  is asked for. Undefined below four contrasts at three places, or four tests. */
  readonly slope: () => RobustSlope | undefined;
}

export interface Courses {
  /** In the order of the labels. */
  readonly cylinders: readonly CylinderCourse[];
  /** Those made on one day without work between are one, as in the whole history. */
  readonly tests: readonly { readonly ids: readonly string[] }[];
  /** Multiply a slope by this for a year; absent on a meter axis with less than a year of tests. */
  readonly perYear?: number;
}

/** The course of every cylinder by the same steps as in the whole history, in a third of its time.
 *  @throws RangeError as analyseHistory */
export const coursesOf = (input: HistoryInput): Courses => {
  const { layout, channel, cell, series, shared } = groundwork(input);
  const firsts = earlyByCylinder(channel, layout.current, cell);
  const cylinders = layout.labels.map((label, i): CylinderCourse => {
    const { early } = at(firsts, i);
    const own = { series: at(series, i), early, ...takenBy(layout, i) };
    const { course, alarms, slopes, shape } = judgeCourse(own, shared);
    const judged = { course, alarms, shape, ...(early === undefined ? {} : { early }) };
    return {
      label,
      ...judged,
      mirrored: () => mirroredOf(own, shared),
      afterFall: () => afterFall(judged, own.series, cell),
      slope: () => {
        if (layout.labels.length === 1) return slopeOfEngine(shared.wide().common);
        return slopes === undefined ? undefined : robustSlope(own.series);
      },
    };
  });
  const { tests } = layout;
  return { cylinders, tests, ...(layout.perYear === undefined ? {} : { perYear: layout.perYear }) };
};

/** Below four tests it is no slope but the change between two. */
const slopeOfEngine = ({ count, trend }: EngineWide): RobustSlope | undefined =>
  count < 4 || trend === undefined ? undefined : { slope: trend.slope };
