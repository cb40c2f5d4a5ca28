// The first sentence of `show`: what this test says, in words an owner uses.

import type { CylinderAssessment, TestAssessment, TrustReason } from "@sealtrend/core";
import { belowLimitSentence, isLowByLimitAlone, lagsSentence, limitText, under } from "./show-lags.ts";
import { count, cylinders as named, joined, percent, sentence, theOthers } from "../words.ts";

/** The answer, one to three sentences. */
export const showHeadline = (assessment: TestAssessment): string => {
  const { setAside } = assessment.test;
  const answer = answerOf(assessment);
  if (setAside === undefined) return answer;
  const alone = answer.charAt(0).toLowerCase() + answer.slice(1);
  return `Set aside: ${setAside.replace(/\.$/, "")}; it counts in nothing. Read alone: ${alone}`;
};

/** Reasons that stand in the headline, so that the line of trust need not repeat them. */
const leading: readonly TrustReason["code"][] = ["set-aside", "slip", "beyond-engine"];
export const isInHeadline = ({ code, weight }: TrustReason): boolean =>
  weight === "void" || leading.includes(code);

const answerOf = (assessment: TestAssessment): string => {
  const { trust, cylinders: all, high } = assessment;
  const fatal = trust.reasons.find(({ weight }) => weight === "void");
  if (fatal !== undefined) return `This test tells nothing: ${fatal.text}. ${sentence(fatal.mend)}.`;
  const mistyped = trust.reasons.filter((reason) => isInHeadline(reason) && reason.code !== "set-aside");
  const dead = all.filter(({ pressures }) => pressures.dry?.value === 0);
  const open = all.filter((cylinder) => !dead.includes(cylinder) && holdsNothing(cylinder));
  const lagging = all.filter(
    (cylinder) => cylinder.standing === "lagging" && !dead.includes(cylinder) && !open.includes(cylinder),
  );
  const lags = lagging.filter((cylinder) => !isLowByLimitAlone(cylinder));
  const belowLimit = lagging.filter(
    (cylinder) => isLowByLimitAlone(cylinder) && !(high !== undefined && isLowBesideHighOnly(cylinder)),
  );
  const suspect = all.filter(({ standing }) => standing === "suspect");
  const sentences = [
    ...(dead.length === 0 ? [] : [`${named(dead.map(({ label }) => label))}: no compression.`]),
    ...(open.length === 0
      ? []
      : [`${named(open.map(({ label }) => label))}: no seal measurable in the leak-down.`]),
    ...(lags.length === 0 ? [] : [lagsSentence(assessment, lags)]),
    ...(high === undefined ? [] : [highSentence(assessment, high)]),
    ...(belowLimit.length === 0 ? [] : [belowLimitSentence(assessment, belowLimit)]),
    ...(suspect.length === 0 ? [] : [suspectSentence(assessment, suspect)]),
  ];
  return [
    ...mistyped.map(({ text }) => sentence(text)),
    ...(sentences.length > 0 ? sentences : [evenSentence(assessment)]),
  ].join(" ");
};

/** The needle on the cylinder side hardly leaves its rest. */
const holdsNothing = ({ leakDown }: CylinderAssessment): boolean =>
  leakDown !== undefined && (leakDown.lost === 1 || leakDown.sizing.judgement?.kind === "no-seal");

/** Low against the highest only, which may itself read high. */
const isLowBesideHighOnly = ({ limitsMissed }: CylinderAssessment): boolean =>
  limitsMissed.every((limit) => limit !== "maker-minimum");

/** One reading high and all the rest low look the same. */
const highSentence = (assessment: TestAssessment, high: readonly string[]): string => {
  const { cylinders: all } = assessment;
  const highest = all.filter(({ label }) => high.includes(label));
  const rest = all.filter(({ label, dryStanding }) => dryStanding !== undefined && !high.includes(label));
  const one = high.length === 1;
  const over = Math.max(...highest.map(({ belowOthers = 0 }) => -belowOthers));
  const below =
    rest.length > 0 && rest.every(isLowByLimitAlone) ? `, ${limitText(assessment, rest)}, have` : " have";
  const others = rest.length > 4 ? `the other ${count(rest.length)}` : joined(rest.map(({ label }) => label));
  return `${named(high)} read${one ? "s" : ""} high, ${one ? "" : "up to "}${percent(over)} over the others: carbon, oil in the chamber, or a slip, unless ${others}${below} all lost alike, which one test cannot tell. Read ${one ? "it" : "them"} again.`;
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
  return `${named(suspect.map(({ label }) => label))} ${one ? "is" : "are"} suspect${much}. Read ${one ? "it" : "them"} again before you believe it.`;
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
