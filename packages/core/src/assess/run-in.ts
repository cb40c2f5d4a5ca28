// Work on rings or bores that no test followed yet: what was read before it says nothing more, and new rings bed in first.

import type { EngineRecord, MeterUnit, Service, Test, Work } from "../record/index.ts";
import type { NextTest } from "./assessment.ts";
import { isLeakOnly } from "./leak-only.ts";

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

/** Work since which cylinders began anew, where no test was made after it: the newest, or the newest with rings to run in. A test
 *  on its day counts as after it. */
export const workAfter = ({ tests, services }: EngineRecord, test: Test): Service | undefined => {
  const isTested = (day: string): boolean =>
    tests.some(({ date, setAside }) => setAside === undefined && date >= day);
  const open = services.filter(
    ({ date, newBaseline }) => date > test.date && newBaseline.length > 0 && !isTested(date),
  );
  return open.findLast(runsIn) ?? open.at(-1);
};

/** What comes next after it, whatever the test before it asked for: the others are read with those worked on, as fellows. */
export const afterWork = (record: EngineRecord, test: Test): Omit<NextTest, "by"> | undefined => {
  const work = workAfter(record, test);
  const { cylinders, meter } = record.engine;
  if (work === undefined) return undefined;
  const all = cylinders.length === 1 ? "it" : "every cylinder";
  const leakOnly = isLeakOnly(test);
  const read = leakOnly ? `leak-down on ${all}` : `read ${all}`;
  const minutes = leakOnly ? long : short;
  if (!runsIn(work))
    return { code: leakOnly ? "leak-down-and-listen" : "cranking", text: `${read} anew, warm`, minutes };
  const { runIn, baseline } = runInSpans[meter ?? "either"];
  const text = `run it in for ${runIn}, then ${read}, warm; again after ${baseline}, the new baseline`;
  return { code: "run-in", text, minutes };
};

/** Minutes, common practice, no source: cranked, and by leak-down. */
const [short, long] = [12, 25];
