// The first sentence of `show`: what this test says, in words an owner uses.

import type { CylinderAssessment, TestAssessment } from "@sealtrend/core";
import { count, cylinders as named, joined, percent, sentence, theOthers } from "./words.ts";

/** The answer, one or two sentences. */
export const showHeadline = (assessment: TestAssessment): string => {
  const { setAside } = assessment.test;
  const answer = answerOf(assessment);
  return setAside === undefined ? answer : `Set aside (${setAside}), so it counts nowhere. ${answer}`;
};

const answerOf = (assessment: TestAssessment): string => {
  const { trust, cylinders: all } = assessment;
  const fatal = trust.reasons.find(({ weight }) => weight === "void");
  if (fatal !== undefined) return `This test tells nothing: ${fatal.text}. ${sentence(fatal.mend)}.`;
  const dead = all.filter(({ pressures, leakDown }) => pressures.dry?.value === 0 || leakDown?.lost === 1);
  const lagging = all.filter((cylinder) => cylinder.standing === "lagging" && !dead.includes(cylinder));
  const suspect = all.filter(({ standing }) => standing === "suspect");
  if (lagging.length > 1 && lagging.every(isLowAlike)) return alikeSentence(assessment, lagging);
  const sentences = [
    ...(dead.length === 0 ? [] : [`${labelsOf(dead)}: no compression.`]),
    ...(lagging.length === 0 ? [] : [lagsSentence(assessment, lagging)]),
    ...(suspect.length === 0 ? [] : [suspectSentence(assessment, suspect)]),
  ];
  return sentences.length > 0 ? sentences.join(" ") : evenSentence(assessment);
};

const labelsOf = (some: readonly CylinderAssessment[]): string => named(some.map(({ label }) => label));

/** How far one is under the others, dry; 0 where that was not read. */
const under = ({ belowOthers }: CylinderAssessment): number => Math.max(0, belowOthers ?? 0);

/** Below a limit, but no lower than its fellows. */
const isLowAlike = ({ belowLimit, t, leakDown }: CylinderAssessment): boolean =>
  belowLimit && (t === undefined || t < 2) && leakDown?.standing !== "lagging";

const alikeSentence = ({ cylinders: all }: TestAssessment, low: readonly CylinderAssessment[]): string => {
  const read = all.filter(({ standing }) => standing !== undefined);
  const which =
    low.length < read.length ? labelsOf(low) : low.length === 2 ? "Both" : `All ${count(low.length)}`;
  return `${which} read below the maker's limit, and no lower than one another: all worn alike, or the test was not right.`;
};

const lagsSentence = (assessment: TestAssessment, lagging: readonly CylinderAssessment[]): string => {
  const [worst] = lagging.toSorted((a, b) => under(b) - under(a));
  if (worst === undefined) return "";
  const verb = lagging.length === 1 ? "lags" : "lag";
  const upTo = lagging.length > 1 ? "up to " : "";
  if (lagging.every(({ dryStanding }) => dryStanding !== "lagging")) {
    const lost = Math.max(...lagging.map(({ leakDown }) => leakDown?.lost ?? 0));
    return `${labelsOf(lagging)} ${verb}: ${upTo}${percent(lost)} lost in the leak-down${whyByLeak(lagging)}.`;
  }
  const far =
    under(worst) === 0
      ? ""
      : `: ${upTo}${percent(under(worst))} under ${theOthers(assessment.cylinders.length)}`;
  return `${labelsOf(lagging)} ${verb}${far}${whyDry(assessment, worst)}.`;
};

/** What makes it more than a suspicion. */
const whyDry = (assessment: TestAssessment, worst: CylinderAssessment): string => {
  if (worst.flaggedBefore) return ", flagged in two tests running";
  if (worst.belowLimit) return limitText(assessment, worst.label);
  const takes = worst.pressures.dry?.readings.length ?? 0;
  return takes > 1 ? `, ${count(takes)} readings agree` : ", shown twice the same day";
};

const whyByLeak = (lagging: readonly CylinderAssessment[]): string => {
  if (lagging.some(({ leakDown }) => leakDown?.flaggedBefore === true))
    return ", flagged in two tests running";
  return lagging.some(({ leakDown }) => leakDown?.belowLimit === true) ? ", more than the maker allows" : "";
};

/** Below a limit, and whether the reading can carry that. */
const limitText = ({ rules }: TestAssessment, label: string): string => {
  const makers = rules.filter(({ status }) => status === "engine record");
  if (makers.length === 0) return ", below three quarters of the highest";
  const sure = makers.some(({ byCylinder = [] }) =>
    byCylinder.some((one) => one.label === label && one.verdict === "not-met"),
  );
  return sure ? ", below the maker's limit" : ", just below the maker's limit (too close to be sure)";
};

const suspectSentence = (
  { cylinders: all }: TestAssessment,
  suspect: readonly CylinderAssessment[],
): string => {
  const one = suspect.length === 1;
  const upTo = one ? "" : "up to ";
  const far = Math.max(...suspect.map(under));
  const lost = Math.max(...suspect.map(({ leakDown }) => leakDown?.lost ?? 0));
  const byLeak = suspect.every(({ leakDown }) => leakDown?.standing === "suspect");
  const much = byLeak
    ? `: ${upTo}${percent(lost)} lost in the leak-down`
    : far > 0
      ? `: ${upTo}${percent(far)} under ${theOthers(all.length)}`
      : "";
  return `${labelsOf(suspect)} ${one ? "is" : "are"} suspect${much}. Read ${one ? "it" : "them"} again before you believe it.`;
};

const evenSentence = ({ cylinders: all, spread, apart, record, rules }: TestAssessment): string => {
  const read = all.filter(({ standing }) => standing !== undefined);
  const [only] = read;
  if (only === undefined) return "Nothing in this test can be compared.";
  const makers = rules.find(({ status, holds }) => status === "engine record" && holds === "pressure");
  const limit = makers?.verdict === "met" ? " It meets the maker's limit." : "";
  if (record.engine.cylinders.length === 1)
    return `One cylinder, so nothing to compare it with: watch it over the years.${limit}`;
  if (read.length === 1) return `Only ${only.label} was read, so nothing can be compared.${limit}`;
  const which =
    read.length < all.length
      ? `${sentence(joined(read.map(({ label }) => label)))} are even`
      : all.length === 2
        ? "Both are even"
        : `All ${count(all.length)} are even`;
  const lost = read.flatMap(({ leakDown }) => leakDown?.lost ?? []);
  if (spread !== undefined && read.every(({ dryStanding }) => dryStanding !== undefined)) {
    const far = `the lowest reads ${percent(1 - spread.ratio)} under the highest`;
    if (apart === "wider")
      return `No cylinder stands out alone, yet ${far}, more than healthy ones show: several may have lost. Read all again.`;
    return spread.ratio === 1
      ? `${which}: they read the same.`
      : `${which}: ${far}, within what healthy cylinders show.`;
  }
  if (lost.length === 0) return `${which}.`;
  const [least, most] = [percent(Math.min(...lost)), percent(Math.max(...lost))];
  return `${which} in the leak-down: ${least === most ? most : `${least.replace(" %", "")} to ${most}`} lost.`;
};
