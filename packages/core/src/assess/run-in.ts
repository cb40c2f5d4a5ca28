// Work on rings or bores that no test followed yet: what was read before it says nothing more, and new rings bed in first.

import type { EngineRecord, MeterUnit, Service, Test, Work } from "../record/index.ts";
import type { NextTest } from "./assessment.ts";

const ringWorks: readonly Work[] = ["re-ring", "rebore", "rebuild"];

/** Whether new rings or bores have to run in. */
export const runsIn = ({ what }: Pick<Service, "what">): boolean => ringWorks.includes(what);

const kmPerMile = 1.609344;

/** Rings and seats bed in that long, and read as they stay from then on; judgement, no published figure. */
export const runInLengths: Readonly<
  Record<MeterUnit, { readonly runIn: number; readonly baseline: number }>
> = {
  h: { runIn: 25, baseline: 50 },
  km: { runIn: 1000, baseline: 3000 },
  mi: { runIn: 1000 / kmPerMile, baseline: 3000 / kmPerMile },
};

/** The same as told, in the engine's own meter. */
export const runInSpans: Readonly<
  Record<MeterUnit | "either", { readonly runIn: string; readonly baseline: string }>
> = {
  h: { runIn: "25 h", baseline: "50 h" },
  km: { runIn: "1000 km", baseline: "3000 km" },
  mi: { runIn: "620 mi", baseline: "1900 mi" },
  either: { runIn: "25 h or 1000 km", baseline: "50 h or 3000 km" },
};

/** The newest work since which cylinders began anew, where no test was made after it. A test on its day counts as after it. */
export const workAfter = ({ tests, services }: EngineRecord, test: Test): Service | undefined => {
  const last = services.findLast(({ date, newBaseline }) => date > test.date && newBaseline.length > 0);
  const isTested = tests.some(({ date, setAside }) => setAside === undefined && date >= (last?.date ?? ""));
  return isTested ? undefined : last;
};

/** Where all cylinders began anew, what comes next whatever the test before it asked for. */
export const afterWork = (record: EngineRecord, test: Test): Omit<NextTest, "by"> | undefined => {
  const work = workAfter(record, test);
  const { cylinders, meter } = record.engine;
  if (work === undefined || work.newBaseline.length < cylinders.length) return undefined;
  const all = cylinders.length === 1 ? "it" : "every cylinder";
  if (!runsIn(work)) return { code: "cranking", text: `read ${all} anew, warm`, minutes };
  const { runIn, baseline } = runInSpans[meter ?? "either"];
  const text = `run it in for ${runIn}, then read ${all}, warm; again after ${baseline}, the new baseline`;
  return { code: "run-in", text, minutes };
};

/** Common practice, no source. */
const minutes = 12;
