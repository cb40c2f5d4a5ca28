// What one cylinder of an engine of a yard did over its years: the one that has lost most, else the worst of today.

import type { Course, Courses, CylinderCourse } from "../../history/index.ts";
import type { EngineRecord } from "../../record/index.ts";
import type { YardWorst } from "./worst.ts";

/** What the worst cylinder of an engine did over its years. */
export interface YardCourse {
  readonly code: Course;
  readonly label: string;
  /** ln units a year, of a course that has a slope; absent where no year is known. */
  readonly perYear?: number;
  /** The interval of it; absent of a lone cylinder, and where there are too few tests for one. */
  readonly perYearLow?: number;
  readonly perYearHigh?: number;
  /** Of one stepped down that reads lower again since: the day (ISO). A step or a steady loss, that cannot be told yet. */
  readonly wentOn?: string;
  /** Of one stepped down that reads as before again: the day (ISO). */
  readonly cameBack?: string;
  /** Of two cylinders, where nobody can tell which one moved: it has lost against the other, or that one has gained. */
  readonly mirrored?: "either";
}

const lost: readonly Course[] = ["stepped-down", "falling"];

/** Whether a cylinder of that course has lost against the others, or a lone one against itself. */
export const hasLost = (code: Course): boolean => lost.includes(code);

/** Where a cylinder has lost, of the one that has lost most; else of the worst, unless that is even and steady and another is
 *  not. */
export const courseOf = (
  record: EngineRecord,
  years: Courses | undefined,
  worst: YardWorst | undefined,
): YardCourse | undefined => {
  if (years === undefined) return undefined;
  const { cylinders, perYear: units } = years;
  const dayOf = (place = -1): string | undefined => {
    const [id] = years.tests[place]?.ids ?? [];
    return record.tests.find((test) => test.id === id)?.date;
  };
  const told = (cylinder: CylinderCourse): YardCourse => {
    const { label, course, slope, afterFall } = cylinder;
    const { slope: own, low, high } = (units === undefined ? undefined : slope()) ?? {};
    const { wentOn, cameBack } = afterFall();
    const [lower, back] = [dayOf(wentOn), dayOf(cameBack)];
    return {
      code: course,
      label,
      ...(own === undefined || units === undefined ? {} : { perYear: own * units }),
      ...(low === undefined || units === undefined ? {} : { perYearLow: low * units }),
      ...(high === undefined || units === undefined ? {} : { perYearHigh: high * units }),
      ...(lower === undefined ? {} : { wentOn: lower }),
      ...(back === undefined ? {} : { cameBack: back }),
      ...(isEither(cylinder) ? { mirrored: "either" as const } : {}),
    };
  };
  const [most] = cylinders
    .filter(({ course }) => hasLost(course))
    .map(told)
    .sort((a, b) => lost.indexOf(a.code) - lost.indexOf(b.code) || (a.perYear ?? 0) - (b.perYear ?? 0));
  const first = cylinders.find(({ label }) => label === worst?.label) ?? cylinders[0];
  // nothing is steady in an engine of which the history says otherwise
  const isQuiet = worst?.standing === "even" && first?.course === "steady";
  const other = !isQuiet
    ? undefined
    : (cylinders.find(({ course }) => !unmoved.includes(course)) ??
      cylinders.find(({ course }) => course !== "steady"));
  const next = other ?? first;
  return most ?? (next && told(next));
};

const unmoved: readonly Course[] = ["steady", "too-short-to-tell"];

/** What holds nothing is told by itself. */
const isEither = ({ course, alarms, mirrored }: CylinderCourse): boolean =>
  !unmoved.includes(course) && !alarms.includes("no-compression") && mirrored() === "either";
