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
  const tells = fatal === undefined ? "" : `tells nothing: ${fatal.text}. ${sentence(fatal.mend)}.`;
  if (trust.voids === "all") return `This test ${tells}`;
  const spoilt = fatal === undefined ? [] : [`The leak-down ${tells}`];
  const mistyped = trust.reasons.filter(
    (reason) => leading.includes(reason.code) && reason.code !== "set-aside",
  );
  const dead = all.filter(({ pressures }) => pressures.dry?.value === 0);
  const open = all.filter(
    (cylinder) => fatal === undefined && !dead.includes(cylinder) && holdsNothing(cylinder),
  );
  const lagging = all.filter(
    (cylinder) => cylinder.standing === "lagging" && !dead.includes(cylinder) && !open.includes(cylinder),
  );
  const lags = lagging.filter((cylinder) => !isLowByLimitAlone(cylinder));
  const belowLimit = lagging.filter(
    (cylinder) => isLowByLimitAlone(cylinder) && !(high !== undefined && isLowBesideHighOnly(cylinder)),
  );
  const torn = all.filter(isTorn);
  const suspect = all.filter((cylinder) => cylinder.standing === "suspect" && !isTorn(cylinder));
  const sentences = [
    ...(dead.length === 0 ? [] : [`${named(dead.map(({ label }) => label))}: no compression.`]),
    ...(open.length === 0
      ? []
      : [`${named(open.map(({ label }) => label))}: no seal measurable in the leak-down.`]),
    ...(lags.length === 0 ? [] : [lagsSentence(assessment, lags)]),
    ...(high === undefined ? [] : [highSentence(assessment, high)]),
    ...(belowLimit.length === 0 ? [] : [belowLimitSentence(assessment, belowLimit)]),
    ...(torn.length === 0 ? [] : [contradictionSentence(torn)]),
    ...(suspect.length === 0 ? [] : [suspectSentence(assessment, suspect)]),
  ];
  return [
    ...mistyped.map(({ text }) => sentence(text)),
    ...(sentences.length > 0 ? sentences : [evenSentence(assessment)]),
    ...spoilt,
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
  const below = rest.length > 0 && rest.every(isLowByLimitAlone) ? `, ${limitText(rest)}, have` : " have";
  const others = rest.length > 4 ? `the other ${count(rest.length)}` : joined(rest.map(({ label }) => label));
  return `${named(high)} read${one ? "s" : ""} high, ${one ? "" : "up to "}${percent(over)} over the others: carbon, oil in the chamber, or a slip, unless ${others}${below} all lost alike, which one test cannot tell. Read ${one ? "it" : "them"} again.`;
};

/** Suspect by repeats of which not all are low. */
const isTorn = ({ standing, dryStanding, repeats, leakDown }: CylinderAssessment): boolean =>
  standing === "suspect" &&
  ((dryStanding === "suspect" && repeats === "contradict") ||
    (leakDown?.standing === "suspect" && leakDown.repeats === "contradict"));

const takesOf = ({ repeats, pressures, leakDown }: CylinderAssessment): string =>
  repeats === "contradict"
    ? `${count(pressures.dry?.readings.length ?? 0)} readings`
    : `${count(leakDown?.takesLost.length ?? 0)} leak-down readings`;

const contradictionSentence = (torn: readonly CylinderAssessment[]): string => {
  const [first] = torn;
  return first !== undefined && torn.length === 1
    ? `${named([first.label])} is suspect: its ${takesOf(first)} contradict each other. Read it again.`
    : `${named(torn.map(({ label }) => label))} are suspect: the readings of each contradict each other. Read them again.`;
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

/** Lost by every cylinder and held against no limit; teaching texts call so much too much. */
const muchForAll = 0.2;

const evenSentence = ({ cylinders: all, spread, apart, record, rules, speed }: TestAssessment): string => {
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
    if (speed?.uneven?.refused !== undefined)
      return `No cylinder stands out beyond what its cranking speed may explain: ${far}.`;
    return spread.ratio === 1
      ? `${which}: they read the same.`
      : `${which}: ${far}, within what healthy cylinders show.`;
  }
  if (lost.length === 0) return `${which}.`;
  const [least, most] = [percent(Math.min(...lost)), percent(Math.max(...lost))];
  const much = `${which} in the leak-down: ${least === most ? most : `${least.replace(" %", "")} to ${most}`} lost.`;
  const isJudged = rules.some(
    ({ id, tester }) => id === "master" || tester === "as-read" || tester === "matches",
  );
  return isJudged || Math.min(...lost) <= muchForAll
    ? much
    : `${much} That is much for all of them: worn alike, cylinders look even. The maker's limit, or a master orifice read that day, would tell.`;
};
