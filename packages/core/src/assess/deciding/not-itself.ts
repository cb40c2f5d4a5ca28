// Why the engine was not itself in its last test (guard G4): what befell it since it was last sound, or rings that bed in.

import type { EngineRecord, Service, Test } from "../../record/index.ts";
import type { TestAssessment } from "../assessment.ts";
import { monthsOf } from "../causes/circumstances.ts";
import { workSince } from "../causes/work-since.ts";
import { listed } from "../labels.ts";
import { useOf } from "../years/history-input.ts";
import { valuesOf } from "../values/values.ts";
import type { Deciding } from "./deciding.ts";

type Trouble = "storage" | "overheated" | "flooded";

/** Why the engine was not itself in its last test: what befell it, or rings that bed in. */
export interface NotItself {
  readonly what: Trouble | "run-in";
  /** Of the service that says so. ISO. */
  readonly date: string;
  /** How long it stood, where its note says it. */
  readonly months?: number;
  /** As told to a mechanic: `it stood 9 months`. */
  readonly text: string;
}

/** @param dry - a test that reads low  @source handbook/decision.md 2, G4; handbook/trade.md C5, F3 */
export const notItselfOf = (dry: TestAssessment, deciding: Deciding): readonly NotItself[] => {
  const { record, figures } = deciding;
  const fresh = useOf(record, dry.test, figures) === "run-in" ? runInOf(record, dry.test) : [];
  const befell = workSince(dry, figures)
    .filter(({ date }) => !isRetested(record, date, dry.test))
    .flatMap((service) => troubleOf(service, record));
  return [...fresh, ...befell];
};

const runInOf = ({ services }: EngineRecord, { date }: Test): readonly NotItself[] => {
  const work = services.findLast(
    (service) => service.date <= date && ["re-ring", "rebore", "rebuild"].includes(service.what),
  );
  return work === undefined
    ? []
    : [
        {
          what: "run-in",
          date: work.date,
          text: `it was still running in after the ${work.what} of ${work.date}`,
        },
      ];
};

const troubles: Readonly<Partial<Record<Service["what"], Trouble>>> = {
  storage: "storage",
  overheated: "overheated",
  flooded: "flooded",
};

const troubleOf = (service: Service, { engine }: EngineRecord): readonly NotItself[] => {
  const what = troubles[service.what];
  if (what === undefined) return [];
  const { date, cylinders } = service;
  if (what !== "storage") {
    const isAll = cylinders.length === 0 || cylinders.length === engine.cylinders.length;
    const where = isAll ? "it" : `cylinder ${listed(cylinders)}`;
    return [{ what, date, text: `${where} was ${what} (${date})` }];
  }
  const months = monthsOf(service);
  return months > 0
    ? [{ what, date, months, text: `it stood ${months === 1 ? "a month" : `${String(months)} months`}` }]
    : [{ what, date, text: `it stood before (storage noted ${date})` }];
};

/** One of these since it was last sound, and no test between it and this one: a second test has run it warm. */
const isRetested = ({ tests }: EngineRecord, after: string, test: Test): boolean =>
  tests.some(
    (other) =>
      other !== test &&
      other.date >= after &&
      other.date <= test.date &&
      other.setAside === undefined &&
      valuesOf(other, "dry") !== undefined,
  );
