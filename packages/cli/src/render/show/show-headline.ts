// The first sentence of `show`: what this test says, in words an owner uses.

import type { CylinderAssessment, TestAssessment, TrustReason } from "@sealtrend/core";
import { belowLimitSentence, isLowByLimitAlone, isToBeSure, lagsClause, limitText } from "./show-lags.ts";
import {
  contradictionSentence,
  isReadAgainNext,
  isTorn,
  suspectClause,
  suspectSentence,
} from "./show-suspect.ts";
import { count, cylinders as named, joined, percent, sentence } from "../words.ts";

/** The answer, one to three sentences. */
export const showHeadline = (assessment: TestAssessment): string => {
  const { setAside } = assessment.test;
  const answer = answerOf(assessment);
  if (setAside === undefined) return answer;
  const alone = answer.charAt(0).toLowerCase() + answer.slice(1);
  return `Set aside: ${setAside.replace(/\.$/, "")}; it counts in nothing. Read alone: ${alone}`;
};

/** Reasons that stand in the headline, so that the line of trust need not repeat them. */
const leading: readonly TrustReason["code"][] = ["set-aside", "slip", "beyond-engine", "below-engine"];
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
  const besideLags = lags.length > 0 ? suspect : [];
  const sentences = [
    ...(dead.length === 0 ? [] : [deadSentence(assessment, dead)]),
    ...(open.length === 0
      ? []
      : [`${named(open.map(({ label }) => label))}: no seal measurable in the leak-down.`]),
    ...(lags.length === 0 ? [] : [lowSentence(assessment, lags, besideLags)]),
    ...(high === undefined ? [] : [highSentence(assessment, high)]),
    ...(belowLimit.length === 0 ? [] : [belowLimitSentence(assessment, belowLimit)]),
    ...(torn.length === 0 ? [] : [contradictionSentence(torn)]),
    ...(suspect.length === 0 || besideLags.length > 0 ? [] : [suspectSentence(assessment, suspect)]),
  ];
  return [
    ...mistyped.map(({ text }) => sentence(text)),
    ...(sentences.length > 0 ? [...sentences, ...besidesText(assessment)] : [evenSentence(assessment)]),
    ...spoilt,
  ].join(" ");
};

/** Those that lag and, in the same breath, those that are only suspect. */
const lowSentence = (
  assessment: TestAssessment,
  lags: readonly CylinderAssessment[],
  suspect: readonly CylinderAssessment[],
): string => {
  const says = `${lagsClause(assessment, lags)}${suspectClause(suspect)}`;
  const doubted = lags.every(isToBeSure) ? [...lags, ...suspect] : suspect;
  if (doubted.length === 0 || !isReadAgainNext(assessment)) return `${says}.`;
  if (suspect.length === 0) return `${says}; read ${lags.length === 1 ? "it" : "them"} again to be sure.`;
  const which = doubted === suspect ? joined(suspect.map(({ label }) => label)) : "them";
  return `${says}. Read ${which} again before you believe it.`;
};

/** Where nothing held anything there is nothing to compare, and the gauge comes before the engine. */
const deadSentence = (
  { cylinders, record: { engine } }: TestAssessment,
  dead: readonly CylinderAssessment[],
): string => {
  const read = cylinders.filter(({ pressures }) => pressures.dry !== undefined);
  if (dead.length < read.length) return `${named(dead.map(({ label }) => label))}: no compression.`;
  const which =
    dead.length === 1
      ? `${named(dead.map(({ label }) => label))} held nothing`
      : "Nothing held in any cylinder";
  const first = [
    "a dead gauge",
    "a leaking adapter",
    ...(engine.compressionRelease === "none" ? [] : ["an open release"]),
    ...(engine.porting === "ports" ? [] : ["a broken timing drive"]),
  ];
  return `${which}: first of all ${first.slice(0, -1).join(", ")} or ${first.at(-1) ?? ""}.`;
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

const expectedFrom = {
  maker: "the maker's figure for a new engine",
  estimate: "what the compression ratio lets expect",
} as const;

/** Where some stand out, that the others are low as well. */
const besidesText = ({ levelBelow }: TestAssessment): readonly string[] =>
  levelBelow === undefined
    ? []
    : [`The middle one reads ${percent(-levelBelow.change)} under ${expectedFrom[levelBelow.from]}.`];

/** How far all of them are under what a sound engine reads; empty where they are not. */
const lowText = ({ levelBelow }: TestAssessment): string =>
  levelBelow === undefined ? "" : `${percent(-levelBelow.change)} under ${expectedFrom[levelBelow.from]}`;

/** Lost by every cylinder and held against no limit; teaching texts call so much too much. */
const muchForAll = 0.2;

const evenSentence = (assessment: TestAssessment): string => {
  const { cylinders: all, spread, apart, record, rules, speed, levelSince } = assessment;
  const low = lowText(assessment);
  const read = all.filter(({ standing }) => standing !== undefined);
  const [only] = read;
  if (only === undefined) return "Nothing in this test can be compared.";
  const makers = rules.find(({ status, holds }) => status === "engine record" && holds === "pressure");
  const limit = makers?.verdict === "met" ? " It meets the maker's limit." : "";
  if (record.engine.cylinders.length === 1)
    return low !== "" ? `It reads ${low}.${limit}` : `${singleText(only, isJudged(rules))}${limit}`;
  if (read.length === 1) return `Only ${only.label} was read, so nothing can be compared.${limit}`;
  const which =
    read.length < all.length
      ? `${sentence(joined(read.map(({ label }) => label)))} are even`
      : all.length === 2
        ? "Both are even"
        : `All ${count(all.length)} are even`;
  const lost = read.flatMap(({ leakDown }) => leakDown?.lost ?? []);
  if (spread !== undefined && read.every(({ dryStanding }) => dryStanding !== undefined)) {
    const under = percent(1 - spread.ratio);
    const far =
      spread.ratio === 1
        ? "they read the same"
        : `the lowest reads ${under === percent(0) ? `less than ${percent(0.01)}` : under} under the highest`;
    if (apart === "wider")
      return `No cylinder stands out alone, yet ${far}, more than healthy ones show: several may have lost. Read all again.`;
    if (speed?.uneven?.refused !== undefined)
      return `No cylinder stands out beyond what its cranking speed may explain: ${far}.`;
    if (low !== "") return `${which.replace(/even$/, "low")}, ${low}, and even among themselves.`;
    if (levelSince !== undefined) return `${which} among themselves (${far}), but lower than they were.`;
    return `${which}: ${far}${spread.ratio === 1 ? "" : ", within what healthy cylinders show"}.`;
  }
  if (lost.length === 0) return `${which}.`;
  const [least, most] = [percent(Math.min(...lost)), percent(Math.max(...lost))];
  const much = `${which} in the leak-down: ${least === most ? most : `${least.replace(" %", "")} to ${most}`} lost.`;
  return isJudged(rules) || Math.min(...lost) <= muchForAll
    ? much
    : `${much} That is much for all of them: worn alike, cylinders look even. The maker's limit, or a master orifice read that day, would tell.`;
};

/** Whether a limit or a master judges the leak-down. */
const isJudged = (rules: TestAssessment["rules"]): boolean =>
  rules.some(({ id, tester }) => id === "master" || tester === "as-read" || tester === "matches");

/** Of an engine of one cylinder: a large leak is one, with nothing beside it. */
const singleText = ({ leakDown }: CylinderAssessment, judged: boolean): string =>
  leakDown === undefined || judged || leakDown.lost <= muchForAll
    ? "One cylinder, so nothing to compare it with: watch it over the years."
    : `It loses ${percent(leakDown.lost)} in the leak-down, which is much; there is no other cylinder to compare it with.`;
