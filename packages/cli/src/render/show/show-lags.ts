// Which cylinders lag behind their fellows, and which only read below a limit: two things, said apart.

import type { CylinderAssessment, LimitMissed, TestAssessment } from "@sealtrend/core/parts";
import { count, cylinders as named, joined, percent, theOthers } from "../words.ts";

/** How far one is under the others, dry; 0 where that was not read. */
export const under = ({ belowOthers }: CylinderAssessment): number => Math.max(0, belowOthers ?? 0);

/** Below a limit, but no further below its fellows than chance brings. */
export const isLowByLimitAlone = ({ belowLimit, flagged, leakDown }: CylinderAssessment): boolean =>
  belowLimit && !flagged && leakDown?.standing !== "lagging";

/** Loses more than a limit allows, but no more than its fellows. */
const isOpenByLimitAlone = ({ dryStanding, leakDown }: CylinderAssessment): boolean =>
  dryStanding !== "lagging" && leakDown?.belowLimit === true && !leakDown.flagged;

/** Whether its word comes from a limit and not from its fellows. */
export const isByLimitAlone = (cylinder: CylinderAssessment): boolean =>
  cylinder.standing === "lagging" && (isLowByLimitAlone(cylinder) || isOpenByLimitAlone(cylinder));

/** Its word on the screen: what is no further from its fellows than chance brings does not lag. */
export const standingWord = (cylinder: CylinderAssessment): string | undefined => {
  const { standing, atLimit, leakDown } = cylinder;
  if (standing !== "lagging") return standing;
  if (isLowByLimitAlone(cylinder)) return atLimit === true ? "just below" : "below limit";
  if (isOpenByLimitAlone(cylinder)) return leakDown?.atLimit === true ? "just over" : "over limit";
  return "lags";
};

/** Those that stand out among their fellows, without the end of the sentence. */
export const lagsClause = (assessment: TestAssessment, lagging: readonly CylinderAssessment[]): string => {
  const [worst] = lagging.toSorted((a, b) => under(b) - under(a));
  if (worst === undefined) return "";
  const labels = named(lagging.map(({ label }) => label));
  const verb = lagging.length === 1 ? "lags" : "lag";
  const upTo = lagging.length > 1 ? "up to " : "";
  if (lagging.every(({ dryStanding }) => dryStanding !== "lagging")) {
    const lost = Math.max(...lagging.map(({ leakDown }) => leakDown?.lost ?? 0));
    const loses = lagging.every(isOpenByLimitAlone) ? (lagging.length === 1 ? "loses" : "lose") : verb;
    const much =
      loses === verb ? `${verb}: ${upTo}${percent(lost)} lost` : `${loses} ${upTo}${percent(lost)}`;
    return `${labels} ${much} in the leak-down${whyByLeak(lagging)}`;
  }
  const far =
    under(worst) === 0
      ? ""
      : `: ${upTo}${percent(under(worst))} under ${theOthers(assessment.cylinders.length)}`;
  return `${labels} ${verb}${far}${whyDry(worst)}`;
};

/** Below a limit by less than its doubt, read once, and nothing else makes it more than a suspicion. */
export const isToBeSure = ({ belowLimit, atLimit, repeats, flaggedBefore }: CylinderAssessment): boolean =>
  belowLimit && atLimit === true && repeats === undefined && !flaggedBefore;

/** What makes it more than a suspicion. */
const whyDry = (worst: CylinderAssessment): string => {
  const takes = worst.pressures.dry?.readings.length ?? 0;
  const each = takes === 2 ? "both readings" : `each of ${count(takes)} readings`;
  if (worst.flaggedBefore) return ", flagged in two tests running";
  if (worst.belowLimit && (worst.atLimit === undefined || worst.repeats === undefined))
    return `, ${limitText([worst]).replace(", too close to call", "")}`;
  if (worst.repeats === "each-low") return `, ${each} low, though they lie apart`;
  return takes > 1 ? `, ${count(takes)} readings agree` : ", shown twice the same day";
};

const whyByLeak = (lagging: readonly CylinderAssessment[]): string => {
  if (lagging.some(({ leakDown }) => leakDown?.flaggedBefore === true))
    return ", flagged in two tests running";
  const over = lagging.filter(({ leakDown }) => leakDown?.belowLimit === true);
  const isClose = over.every(({ leakDown }) => leakDown?.atLimit === true);
  if (over.some(({ leakDown }) => leakDown?.beyondMaster === true))
    return isClose
      ? ", about what the master orifice of that day lets by: too close to call"
      : ", more than the master orifice of that day";
  if (over.length === 0) return "";
  return isClose ? ", just over the maker's limit: too close to call" : ", more than the maker allows";
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
  const reads = `${which} read${low.length === 1 ? "s" : ""} ${limitText(low)}`;
  if (read.length === 1) return `${reads}.`;
  if (all && low.every(({ atLimit }) => atLimit === true))
    return `${reads}; ${low.length === 2 ? "neither stands" : "none stands"} out beside the others.`;
  if (all) return `${reads}, and no lower than one another: all worn alike, or the test was not right.`;
  if (assessment.cylinders.some(({ flagged }) => flagged)) return `${reads}.`;
  return `${reads}; beside the others ${low.length === 1 ? "it does" : "they do"} not stand out.`;
};

/** Each limit missed, and missed by less than the doubt of the reading. */
const limits: readonly (readonly [LimitMissed, string, string])[] = [
  ["maker-minimum", "below the maker's limit", "just below the maker's limit"],
  [
    "maker-difference",
    "further below the highest than the maker allows",
    "just further below the highest than the maker allows",
  ],
  ["maker-ratio", "below the maker's share of the highest", "just below the maker's share of the highest"],
  ["usual-ratio", "below three quarters of the highest", "just below three quarters of the highest"],
];

/** The first limit that any of them misses, and whether their readings can carry that. */
export const limitText = (low: readonly CylinderAssessment[]): string => {
  const limit = limits.find(([missed]) => low.some(({ limitsMissed }) => limitsMissed.includes(missed)));
  if (limit === undefined) return "";
  const [, below, justBelow] = limit;
  const near = low.filter(({ atLimit }) => atLimit === true);
  if (near.length === 0) return below;
  if (near.length === low.length) return `${justBelow}, too close to call`;
  return `${below} (${joined(near.map(({ label }) => label))} too close to call)`;
};
