// What was measured on the engine apart and still holds: of the last year, and not of a part that was worked on since.

import type { EngineRecord, MeasuredPart, Measurement, Service, Work } from "../../record/index.ts";
import {
  type TeardownAssessment,
  type TeardownFinding,
  type WearFound,
  currentFindings,
  judgeTeardown,
  wearFound,
} from "../../teardown/index.ts";
import { isCurrent } from "./current.ts";

/** Work that makes what was measured before it untrue (judgement): rings and bores, the bottom, the top. */
const bottomWork: readonly Work[] = ["re-ring", "rebuild"];
const boreWork: readonly Work[] = ["re-ring", "rebore", "rebuild"];
const topWork: readonly Work[] = ["valve job", "head gasket", "rebuild"];

const boreParts: readonly MeasuredPart[] = ["bore", "piston", "ring", "crown"];
const topParts: readonly MeasuredPart[] = [
  "head",
  "deck",
  "guide",
  "stem",
  "seat",
  "valve",
  "spring",
  "chamber",
];

export interface MeasuredNow {
  readonly assessment: TeardownAssessment;
  readonly found: readonly WearFound[];
}

/** The newest teardown of which anything still holds. */
export const measuredNow = (
  { engine, services, measurements: all }: Pick<EngineRecord, "engine" | "services" | "measurements">,
  today: string,
): MeasuredNow | undefined => {
  const measurements = all.filter(
    (one) =>
      isCurrent(one.date, today) &&
      !services.some((service) => service.date <= today && isCuredBy(one, service)),
  );
  const assessment = judgeTeardown({ engine, measurements });
  return assessment === undefined ? undefined : { assessment, found: wearFound(assessment, engine) };
};

/** What was seen on the engine apart and still holds. */
export interface FoundNow {
  readonly teardown: number;
  readonly findings: readonly TeardownFinding[];
}

export const findingsNow = (measured: MeasuredNow | undefined): FoundNow => {
  if (measured === undefined) return { teardown: 0, findings: [] };
  const { teardown, items, findings } = measured.assessment;
  return { teardown, findings: currentFindings(findings, [...items, ...findings]) };
};

/** On the day of the work itself, what was found was before it, what is new or machined is its outcome. */
const isCuredBy = (one: Measurement, { what, date, cylinders }: Service): boolean => {
  const isOutcome = one.state === "new part" || one.state === "after machining";
  if (isOutcome ? date <= one.date : date < one.date) return false;
  const isTouched = cylinders.some((label) => cylinderOf(one) === label);
  if (boreParts.includes(one.part)) return boreWork.includes(what) && isTouched;
  if (topParts.includes(one.part))
    return topWork.includes(what) && (one.part === "head" || one.part === "deck" || isTouched);
  return bottomWork.includes(what);
};

/** `3` of bore 3 and of valve 3ex. */
const cylinderOf = ({ part, label = "" }: Pick<Measurement, "part" | "label">): string =>
  topParts.includes(part) ? label.replace(/(?:in|ex)[1-4]?$/, "") : label;

/** The cylinder that a figure is of; absent where it is of the crank or of a whole face. */
export const cylinderMeasured = (
  item: Pick<Measurement, "part" | "label">,
  cylinders: readonly string[],
): string | undefined =>
  boreParts.includes(item.part) || topParts.includes(item.part)
    ? cylinders.find((label) => label === cylinderOf(item))
    : undefined;
