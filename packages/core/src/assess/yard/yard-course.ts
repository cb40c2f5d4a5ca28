// What one cylinder of an engine of a yard did over its years: the one that has lost most, else the worst of today.

import type { Course, Courses, CylinderCourse } from "../../history/index.ts";
import type { EngineRecord } from "../../record/index.ts";

/** What the worst cylinder of an engine did over its years. */
export interface YardCourse {
  readonly code: Course;
  readonly label: string;
  /** ln units a year, of a course that has a slope; absent where no year is known. */
  readonly perYear?: number;
  /** Of one stepped down that reads lower again since: the day (ISO). A step or a steady loss, that cannot be told yet. */
  readonly wentOn?: string;
  /** Of one stepped down that reads as before again: the day (ISO). */
  readonly cameBack?: string;
}

const lost: readonly Course[] = ["stepped-down", "falling"];

/** Whether a cylinder of that course has lost against the others, or a lone one against itself. */
export const hasLost = (code: Course): boolean => lost.includes(code);

/** Where a cylinder has lost, of the one that has lost most. */
export const courseOf = (
  record: EngineRecord,
  years: Courses | undefined,
  worst: string | undefined,
): YardCourse | undefined => {
  if (years === undefined) return undefined;
  const { cylinders, perYear: units } = years;
  const dayOf = (place = -1): string | undefined => {
    const [id] = years.tests[place]?.ids ?? [];
    return record.tests.find((test) => test.id === id)?.date;
  };
  const told = ({ label, course, slope, afterFall }: CylinderCourse): YardCourse => {
    const own = units === undefined ? undefined : slope();
    const { wentOn, cameBack } = afterFall();
    const [lower, back] = [dayOf(wentOn), dayOf(cameBack)];
    return {
      code: course,
      label,
      ...(own === undefined || units === undefined ? {} : { perYear: own * units }),
      ...(lower === undefined ? {} : { wentOn: lower }),
      ...(back === undefined ? {} : { cameBack: back }),
    };
  };
  const [most] = cylinders
    .filter(({ course }) => hasLost(course))
    .map(told)
    .sort((a, b) => lost.indexOf(a.code) - lost.indexOf(b.code) || (a.perYear ?? 0) - (b.perYear ?? 0));
  const next = cylinders.find(({ label }) => label === worst) ?? cylinders[0];
  return most ?? (next && told(next));
};
