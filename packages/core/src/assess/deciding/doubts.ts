// What is wrong with the readings beside their trust: guards G3, G4 and G5.

import type { Doubt } from "../../decision/index.ts";
import type { EngineRecord, Service, Test } from "../../record/index.ts";
import type { TestAssessment } from "../assessment.ts";
import { workSince } from "../causes/work-since.ts";
import { useOf } from "../years/history-input.ts";
import { valuesOf } from "../values/values.ts";
import { newestOf } from "./current-notes.ts";
import type { Deciding } from "./deciding.ts";

/** @source handbook/decision.md 2 */
export const doubtsOf = (deciding: Deciding): readonly Doubt[] => {
  const { dry, main, record, figures } = deciding;
  const odd = main !== undefined && isOdd(main, deciding);
  const fresh = dry !== undefined && isLow(dry) && useOf(record, dry.test, figures) === "run-in";
  const disturbed = dry !== undefined && isLow(dry) && afterTrouble(dry, deciding);
  const everywhere = dry !== undefined && isLowEverywhere(dry) && !isProved(dry, deciding);
  return [
    ...(odd ? (["one-odd-test"] as const) : []),
    ...(fresh || disturbed ? (["not-itself"] as const) : []),
    ...(everywhere ? (["low-everywhere"] as const) : []),
  ];
};

/** So much higher than in the test before, ln, is no scatter and no healing; judgement. */
const recovery = 0.1;

/** Flagged once and by one instrument only; out of its own past in this one test, with nothing confirmed; or low in the test
 *  before and sound again with no work in between, so that one of the two is odd. */
const isOdd = ({ cylinders, test }: TestAssessment, { history }: Deciding): boolean => {
  if (cylinders.some(({ standing }) => standing === "lagging")) return false;
  const once = cylinders.some(
    ({ dryStanding, leakDown }) => (dryStanding === "suspect") !== (leakDown?.standing === "suspect"),
  );
  const { tests = [], cylinders: years = [] } = history.cranking?.result ?? {};
  const now = tests.findIndex(({ ids }) => ids.includes(test.id));
  const before = tests.findLastIndex(({ use }, at) => use === "full" && at < now);
  const fell = years.some(
    ({ alarms, change }) =>
      alarms.length === 0 && change?.flagged === true && change.change < 0 && change.test === now,
  );
  const recovered = cylinders.some(({ label, flagged, flaggedBefore }) => {
    const ratios = years.find((one) => one.label === label)?.ratios ?? [];
    const rise = (ratios[now] ?? 0) - (ratios[before] ?? 0);
    return flaggedBefore && !flagged && rise > recovery;
  });
  return once || fell || recovered;
};

const isLow = ({ cylinders, levelSince }: TestAssessment): boolean =>
  levelSince !== undefined ||
  cylinders.some(({ flagged, limitsMissed }) => flagged || limitsMissed.length > 0);

const troubles: readonly Service["what"][] = ["storage", "overheated", "flooded"];

/** One of these since it was last sound, and no test between it and this one: a second test has run it warm. */
const afterTrouble = (dry: TestAssessment, { record, figures }: Deciding): boolean =>
  workSince(dry, figures).some(
    ({ what, date }) => troubles.includes(what) && !isRetested(record, date, dry.test),
  );

const isRetested = ({ tests }: EngineRecord, after: string, test: Test): boolean =>
  tests.some(
    (other) =>
      other !== test &&
      other.date >= after &&
      other.date <= test.date &&
      other.setAside === undefined &&
      valuesOf(other, "dry") !== undefined,
  );

/** All cylinders below the maker's minimum, or all lower by as much as the ladder asks of a baseline.
 *  @source handbook/trade.md F2 (85 % of the own baseline; judgement) */
const isLowEverywhere = ({ cylinders, levelSince }: TestAssessment): boolean => {
  const read = cylinders.filter(({ pressures }) => pressures.dry !== undefined);
  return (
    (levelSince?.change ?? 0) <= -0.15 ||
    (read.length > 0 && read.every(({ limitsMissed }) => limitsMissed.includes("maker-minimum")))
  );
};

/** Gauge proved within the year, throttle open where there is one, speed recorded. */
const isProved = ({ test, speed }: TestAssessment, deciding: Deciding): boolean => {
  const isOpen = deciding.record.engine.ignition === "compression" || test.conditions.throttle === "open";
  return newestOf(deciding, "gauge proved")?.value === "yes" && isOpen && speed?.from !== undefined;
};
