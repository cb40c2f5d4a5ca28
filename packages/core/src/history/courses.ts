// The courses alone, for a list of many engines: what only explains them or looks ahead is left out.

import { at } from "./at.ts";
import { earlyByCylinder } from "./changes-by-cylinder.ts";
import type { Course } from "./course.ts";
import { groundwork, takenBy } from "./groundwork.ts";
import type { HistoryInput } from "./input.ts";
import { judgeCourse } from "./judge-cylinder.ts";
import { robustSlope } from "./slope-test.ts";

/** The course of one cylinder, as `analyseHistory` has it. */
export interface CylinderCourse {
  readonly label: string;
  readonly course: Course;
  /** Slope of the Theil-Sen line, worked out when it is asked for; undefined below four contrasts at three places. */
  readonly slope: () => number | undefined;
}

export interface Courses {
  /** In the order of the labels. */
  readonly cylinders: readonly CylinderCourse[];
  /** Multiply a slope by this for a year; absent on a meter axis with less than a year of tests. */
  readonly perYear?: number;
}

/** The course of every cylinder by the same steps as in the whole history, in a third of its time.
 *  @throws RangeError as analyseHistory */
export const coursesOf = (input: HistoryInput): Courses => {
  const { layout, channel, cell, series, shared } = groundwork(input);
  const early = earlyByCylinder(channel, layout.current, cell);
  const cylinders = layout.labels.map((label, i): CylinderCourse => {
    const own = { series: at(series, i), ...at(early, i), ...takenBy(layout, i) };
    const { course, slopes } = judgeCourse(own, shared);
    return {
      label,
      course,
      slope: () => (slopes === undefined ? undefined : robustSlope(own.series).slope),
    };
  });
  return { cylinders, ...(layout.perYear === undefined ? {} : { perYear: layout.perYear }) };
};
