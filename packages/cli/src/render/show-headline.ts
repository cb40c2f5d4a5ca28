// The first sentence of `show`: what this test says, in words an owner uses.

import type { CylinderAssessment, TestAssessment } from "@sealtrend/core";
import { count, cylinders, joined, percent, sentence } from "./words.ts";

/** The answer, one or two sentences. */
export const showHeadline = (assessment: TestAssessment): string => {
  const { trust, cylinders: all } = assessment;
  if (trust.code === "void") {
    const [first] = trust.reasons.filter(({ weight }) => weight === "void");
    return first === undefined ? "" : `This test tells nothing: ${first.text}. ${sentence(first.mend)}.`;
  }
  const lagging = all.filter(({ standing }) => standing === "lagging");
  const suspect = all.filter(({ standing }) => standing === "suspect");
  if (lagging.length > 0) return [lagsSentence(assessment, lagging), ...(suspect.length > 0 ? [suspectSentence(suspect)] : [])].join(" ");
  if (suspect.length > 0) return suspectSentence(suspect);
  return evenSentence(assessment);
};

const lagsSentence = (assessment: TestAssessment, lagging: readonly CylinderAssessment[]): string => {
  const dead = lagging.filter(({ pressures, leakDown }) => pressures.dry?.value === 0 || leakDown?.lost === 1);
  if (dead.length > 0) return `${cylinders(dead.map(({ label }) => label))}: no compression.`;
  const [worst] = [...lagging].sort((a, b) => (b.belowOthers ?? 0) - (a.belowOthers ?? 0));
  if (worst === undefined) return "";
  const labels = lagging.map(({ label }) => label);
  const verb = labels.length === 1 ? "lags" : "lag";
  const byLeak = lagging.every(({ dryStanding }) => dryStanding !== "lagging");
  const leak = worst.leakDown?.lost;
  if (byLeak && leak !== undefined) return `${cylinders(labels)} ${verb}: ${percent(leak)} lost in the leak-down${why(assessment, worst)}.`;
  const under = worst.belowOthers === undefined || worst.belowOthers <= 0 ? "" : `: ${lagging.length > 1 ? "up to " : ""}${percent(worst.belowOthers)} under the others`;
  return `${cylinders(labels)} ${verb}${under}${why(assessment, worst)}.`;
};

/** What makes it more than a suspicion. */
const why = ({ record }: TestAssessment, { flaggedBefore, belowLimit, pressures }: CylinderAssessment): string => {
  if (flaggedBefore) return ", flagged in two tests running";
  if (belowLimit) {
    const maker = Object.keys(record.engine.compressionLimits).some((key) => key !== "speed" && key !== "source" && key !== "new");
    return maker ? ", below the maker's limit" : ", below three quarters of the highest";
  }
  const takes = pressures.dry?.readings.length ?? 0;
  return takes > 1 ? `, ${count(takes)} readings agree` : "";
};

const suspectSentence = (suspect: readonly CylinderAssessment[]): string => {
  const labels = suspect.map(({ label }) => label);
  const under = Math.max(...suspect.map(({ belowOthers }) => belowOthers ?? 0));
  const far = under > 0 ? `: ${suspect.length > 1 ? "up to " : ""}${percent(under)} under the others` : "";
  return `${cylinders(labels)} ${labels.length === 1 ? "is" : "are"} suspect${far}. Read ${labels.length === 1 ? "it" : "them"} again before you believe it.`;
};

const evenSentence = ({ cylinders: all, spread, record, rules }: TestAssessment): string => {
  const read = all.filter(({ standing }) => standing !== undefined);
  const low = rules.filter(({ verdict, holds }) => verdict === "not-met" && holds === "pressure");
  if (record.engine.cylinders.length === 1 || read.length === 1) {
    const only = read[0]?.label ?? record.engine.cylinders[0] ?? "";
    const against = record.engine.cylinders.length === 1 ? "it has no fellows to compare it with" : `only ${only} was read, so nothing can be compared`;
    return `${sentence(against)}${low.length > 0 ? "; it is below the maker's limit" : "; watch it over the years"}.`;
  }
  if (read.length === 0) return "Nothing in this test can be compared.";
  const which = read.length === all.length ? all.length === 2 ? "Both are even" : `All ${count(all.length)} are even` : `${sentence(joined(read.map(({ label }) => label)))} are even`;
  if (low.length > 0) return `${which}, but below the maker's limit: all worn alike, or the test was not right.`;
  if (spread !== undefined) return `${which}: the lowest reads ${percent(1 - spread.ratio)} under the highest, as healthy cylinders do.`;
  const lost = all.flatMap(({ leakDown }) => (leakDown === undefined ? [] : [leakDown.lost]));
  return `${which} in the leak-down: ${percent(Math.min(...lost))} to ${percent(Math.max(...lost))} lost.`;
};
