// How each cylinder came down over the years, as far as its history up to the test tells.

import type { OnsetReport } from "../../diagnosis/index.ts";
import type { CylinderHistory, HistoryResult } from "../../history/index.ts";
import type { EngineRecord, Service } from "../../record/index.ts";
import { type EngineFigures, figuresOf } from "../figures.ts";
import { type HistoryAssessment, kindCourses } from "../years/assess-history.ts";
import { type Assessed, isLow } from "./assessed.ts";

/** What is asked of the years of one kind of reading. */
interface Came {
  readonly tests: readonly Pick<HistoryResult["tests"][number], "ids">[];
  readonly cylinders: readonly CameDown[];
}

interface CameDown extends Pick<CylinderHistory, "course" | "alarms" | "early" | "mirrored"> {
  readonly shape?: CylinderHistory["shape"] | undefined;
}

/** In the engine's order, by the cranking readings, else by leak-downs; undefined where the history is too short, or shows
 *  something else. Steady is told against its fellows: of one that stands out low it says that it was always so, of one
 *  that is even it says nothing of what befell them all.
 *  @param figures - of the record  @param history - of the record, where it is known already: it serves where the test is the last thing that befell it */
export const onsetsOf = (
  { record, test, cylinders }: Assessed,
  figures: EngineFigures,
  history?: HistoryAssessment,
): readonly (OnsetReport | undefined)[] => {
  // how it came down is asked only where one did: the years take as long as all the rest
  if (!cylinders.some(isLow)) return cylinders.map(() => undefined);
  const until: EngineRecord = {
    ...record,
    tests: record.tests.slice(0, record.tests.indexOf(test) + 1),
    services: record.services.filter(({ date }) => date <= test.date),
  };
  const same = isSame(until, record);
  const kinds =
    same && history?.record === record
      ? [history.cranking?.result, history.leakDown?.result]
      : kindsUntil(until, same ? figures : figuresOf(until));
  return cylinders.map((cylinder, place) =>
    kinds
      .map((kind) => (kind === undefined ? undefined : reportOf(kind, until, { cylinder, place })))
      .find((report) => report !== undefined),
  );
};

const isSame = (until: EngineRecord, record: EngineRecord): boolean =>
  until.tests.length === record.tests.length && until.services.length === record.services.length;

const kindsUntil = (until: EngineRecord, figures: EngineFigures): readonly (Came | undefined)[] =>
  (["dry", "leak-down"] as const).map((kind) => {
    const courses = kindCourses(until, kind, figures);
    return courses === undefined
      ? undefined
      : {
          tests: courses.tests,
          cylinders: courses.cylinders.map((one) => ({ ...one, mirrored: one.mirrored() })),
        };
  });

const reportOf = (
  came: Came,
  { tests, services }: EngineRecord,
  { cylinder, place }: { readonly cylinder: Assessed["cylinders"][number]; readonly place: number },
): OnsetReport | undefined => {
  const own = came.cylinders[place];
  if (own === undefined || own.mirrored === "either") return undefined;
  const { label, flagged, leakDown } = cylinder;
  const standsOut = flagged || leakDown?.flagged === true;
  if (own.alarms.length === 0) return standsOut && own.course === "steady" ? "steady" : undefined;
  const step = own.shape?.firstAfter ?? own.early?.test;
  const dateOf = (one: number): string | undefined =>
    tests.find(({ id }) => came.tests[one]?.ids.includes(id) === true)?.date;
  if (step !== undefined && isAtService(services, { label, from: dateOf(step - 1), to: dateOf(step) }))
    return undefined;
  return shapeReport(own, came);
};

/** A step seen in the last reading only is the same as a bad reading; one that a low reading came before may have been a slow
 *  loss. A cylinder that held before and holds nothing now fell at once. */
const shapeReport = ({ shape, alarms }: CameDown, { tests }: Came): OnsetReport => {
  if (alarms.includes("no-compression")) return tests.length > 1 ? "sudden" : "cannot tell";
  switch (shape?.shape) {
    case "sudden":
      return shape.seenIn === "several" ? "sudden" : "cannot tell";
    case "gradual":
      return "gradual";
    case "cannot-tell":
    case "none":
    case undefined:
      return "cannot tell";
  }
};

/** What makes no cylinder read lower. */
const harmless = new Set<Service["what"]>(["oil change", "additive", "meter replaced", "other"]);

/** A step at a service or after storage is no onset: it shifts the chances by itself, and would count twice.
 *  @source handbook/diagnosis.md 3 */
const isAtService = (
  services: readonly Service[],
  step: { readonly label: string; readonly from: string | undefined; readonly to: string | undefined },
): boolean =>
  services.some(
    ({ date, what, cylinders }) =>
      !harmless.has(what) &&
      date > (step.from ?? "") &&
      date <= (step.to ?? "") &&
      (cylinders.length === 0 || cylinders.includes(step.label)),
  );
