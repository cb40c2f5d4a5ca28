// Which cylinders lag behind their fellows, and which only read below a limit: two things, said apart.

import type { CylinderAssessment, LimitMissed, TestAssessment } from "@sealtrend/core";
import { count, cylinders as named, joined, percent, theOthers } from "../words.ts";

/** How far one is under the others, dry; 0 where that was not read. */
export const under = ({ belowOthers }: CylinderAssessment): number => Math.max(0, belowOthers ?? 0);

/** Below a limit, but no further below its fellows than chance brings. */
export const isLowByLimitAlone = ({ belowLimit, flagged, leakDown }: CylinderAssessment): boolean =>
  belowLimit && !flagged && leakDown?.standing !== "lagging";

/** Those that stand out among their fellows. */
export const lagsSentence = (assessment: TestAssessment, lagging: readonly CylinderAssessment[]): string => {
  const [worst] = lagging.toSorted((a, b) => under(b) - under(a));
  if (worst === undefined) return "";
  const labels = named(lagging.map(({ label }) => label));
  const verb = lagging.length === 1 ? "lags" : "lag";
  const upTo = lagging.length > 1 ? "up to " : "";
  if (lagging.every(({ dryStanding }) => dryStanding !== "lagging")) {
    const lost = Math.max(...lagging.map(({ leakDown }) => leakDown?.lost ?? 0));
    return `${labels} ${verb}: ${upTo}${percent(lost)} lost in the leak-down${whyByLeak(lagging)}.`;
  }
  const far =
    under(worst) === 0
      ? ""
      : `: ${upTo}${percent(under(worst))} under ${theOthers(assessment.cylinders.length)}`;
  return `${labels} ${verb}${far}${whyDry(assessment, worst)}.`;
};

/** What makes it more than a suspicion. */
const whyDry = (assessment: TestAssessment, worst: CylinderAssessment): string => {
  if (worst.flaggedBefore) return ", flagged in two tests running";
  if (worst.belowLimit) return `, ${limitText(assessment, [worst])}`;
  const takes = worst.pressures.dry?.readings.length ?? 0;
  return takes > 1 ? `, ${count(takes)} readings agree` : ", shown twice the same day";
};

const whyByLeak = (lagging: readonly CylinderAssessment[]): string => {
  if (lagging.some(({ leakDown }) => leakDown?.flaggedBefore === true))
    return ", flagged in two tests running";
  if (lagging.some(({ leakDown }) => leakDown?.master !== undefined && leakDown.belowLimit))
    return ", more than the master orifice of that day";
  return lagging.some(({ leakDown }) => leakDown?.belowLimit === true) ? ", more than the maker allows" : "";
};

/** Those that only read below a limit. */
export const belowLimitSentence = (
  assessment: TestAssessment,
  low: readonly CylinderAssessment[],
): string => {
  const read = assessment.cylinders.filter(({ dryStanding }) => dryStanding !== undefined);
  const all = low.length === read.length;
  const which =
    all && low.length > 1
      ? low.length === 2
        ? "Both"
        : `All ${count(low.length)}`
      : named(low.map(({ label }) => label));
  const reads = `${which} read${low.length === 1 ? "s" : ""} ${limitText(assessment, low)}`;
  if (read.length === 1) return `${reads}.`;
  if (all) return `${reads}, and no lower than one another: all worn alike, or the test was not right.`;
  if (assessment.cylinders.some(({ flagged }) => flagged)) return `${reads}.`;
  return `${reads}; beside the others ${low.length === 1 ? "it does" : "they do"} not stand out.`;
};

const limits: readonly {
  readonly missed: LimitMissed;
  readonly rule: (rule: TestAssessment["rules"][number]) => boolean;
  readonly text: string;
}[] = [
  { missed: "maker-minimum", rule: ({ id }) => id === "maker-minimum", text: "below the maker's limit" },
  {
    missed: "maker-difference",
    rule: ({ id }) => id === "maker-difference",
    text: "further below the highest than the maker allows",
  },
  {
    missed: "maker-ratio",
    rule: ({ id }) => id === "maker-ratio",
    text: "below the maker's share of the highest",
  },
  {
    missed: "usual-ratio",
    rule: ({ formula }) => formula === "p / max",
    text: "below three quarters of the highest",
  },
];

/** The first limit that any of them misses, and whether their readings can carry that. */
export const limitText = ({ rules }: TestAssessment, low: readonly CylinderAssessment[]): string => {
  const limit = limits.find(({ missed }) => low.some(({ limitsMissed }) => limitsMissed.includes(missed)));
  if (limit === undefined) return "";
  const verdicts = rules.find(limit.rule)?.byCylinder ?? [];
  const near = low.filter(({ label }) =>
    verdicts.some((one) => one.label === label && one.verdict === "near"),
  );
  if (near.length === 0) return limit.text;
  if (near.length === low.length) return `${limit.text} (too close to be sure)`;
  return `${limit.text} (${joined(near.map(({ label }) => label))} too close to be sure)`;
};
