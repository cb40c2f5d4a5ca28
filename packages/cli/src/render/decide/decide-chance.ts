// The chance of need, and beside it what it is held against: the break-even by price, by ratio, or by life used up.

import type {
  CylinderAssessment,
  DecisionAssessment,
  LimitMissed,
  PressureUnit,
} from "@sealtrend/core/parts";
import { limitNamed } from "./decide-limit.ts";
import { aboutChance, aboutMoney, workNames, yearsText } from "./decide-words.ts";
import { cylinders as named, fixed, joined, percent } from "../words.ts";

/** `Doing rings and bearings now pays only if the chance of passing its limit within 5 years exceeds about 4 in 10; the readings
 *  say about 1 in 10.` Empty where nothing can be held against anything. */
export const breakEvenText = (assessment: DecisionAssessment, unit: PressureUnit): string => {
  const { decision, horizon } = assessment;
  if (horizon.kind === "for-good") return keptText(assessment);
  if (decision.comparison?.breakEven !== undefined) return pricedText(assessment, unit);
  return decision.ratio === undefined ? "" : ratioText(assessment, unit);
};

/** What the readings say of the chance; empty where they say nothing. */
export const chanceSentence = (assessment: DecisionAssessment, unit: PressureUnit): string => {
  const { decision, horizon, chanceUnknown } = assessment;
  const { chance } = decision;
  if (chance === undefined)
    return chanceUnknown === undefined || isPast(assessment)
      ? ""
      : `The chance of passing its cranking limit is not known: ${lowered(chanceUnknown)}`;
  return `The chance that ${whose(assessment)} passes ${limitNamed(assessment, unit)} within ${yearsText(horizon.years)} is ${aboutChance(chance.probability)}.`;
};

/** Cylinders that today's test shows past a limit already, where no chance of passing one is known. */
const alreadyPast = ({ test, speaks, chanceUnknown }: DecisionAssessment): readonly CylinderAssessment[] =>
  speaks === "today" && chanceUnknown !== undefined && test?.trust.code === "trusted"
    ? test.cylinders.filter(({ limitsMissed }) => limitsMissed.length > 0)
    : [];

/** Past one by more than the doubt of the reading: nothing is left to be passed. */
export const isPast = (assessment: DecisionAssessment): boolean =>
  alreadyPast(assessment).some(({ atLimit }) => atLimit !== true);

const limitsPassed: readonly (readonly [LimitMissed, string])[] = [
  ["maker-minimum", "below the maker's minimum"],
  ["maker-difference", "further below the highest than the maker allows"],
  ["maker-ratio", "below the maker's share of the highest"],
  ["usual-ratio", "below three quarters of the highest"],
];

/** What is known though the chance is not: a reading of today's test that is past a limit already. Where a test is asked for the
 *  reason says how far below its fellows it reads. */
export const belowText = (assessment: DecisionAssessment): string => {
  const past = alreadyPast(assessment);
  const isTest = assessment.decision.verdict === "test-again";
  const told = limitsPassed
    .slice(0, isTest ? 1 : limitsPassed.length)
    .find(([limit]) => past.some(({ limitsMissed }) => limitsMissed.includes(limit)));
  if (told === undefined) return "";
  const [limit, text] = told;
  const below = past.filter(({ limitsMissed }) => limitsMissed.includes(limit));
  const doubt = below.every(({ atLimit }) => atLimit === true) ? ", by less than its own doubt" : "";
  return `${named(below.map(({ label }) => label))} ${below.length === 1 ? "reads" : "read"} ${text} already${doubt}.`;
};

/** `cylinder 3`: of which the chance is; `any cylinder` where none is named first. */
export const whose = ({ decision: { chance }, history, wear }: DecisionAssessment): string => {
  const { cylinders } = history.record.engine;
  if (chance?.label === undefined)
    return wear.length > 0 && cylinders.length > 1 ? "any cylinder" : "the engine";
  return cylinders.includes(chance.label) ? `cylinder ${chance.label}` : "the engine";
};

/** A command ends its line. */
const lowered = (text: string): string => {
  const first = text.charAt(0).toLowerCase() + text.slice(1);
  if (/: sealtrend [^:]*$/.test(first)) return `${first}\n`;
  return first.endsWith(".") ? first : `${first}.`;
};

const pricedText = (assessment: DecisionAssessment, unit: PressureUnit): string => {
  const { decision, horizon } = assessment;
  const { comparison, chance } = decision;
  if (comparison?.breakEven === undefined || chance === undefined) return "";
  const turns = comparison.breakEven.probability;
  const work = workNames[comparison.act];
  const said = aboutChance(chance.probability);
  const passing = `passing ${limitNamed(assessment, unit)} within ${yearsText(horizon.years)}`;
  const even = decision.saying === "level" ? levelEven(assessment) : "";
  if (even !== "") return even;
  if (turns === undefined)
    return `At these prices doing ${work} before it is needed never pays; the chance of ${passing} is ${said}.`;
  if (turns <= 0) return `At these prices doing ${work} now pays whatever the chance of needing it.`;
  const bound = aboutChance(turns);
  const apart =
    bound === said ? `much the same, a little ${chance.probability > turns ? "more" : "less"}` : said;
  return `Doing ${work} now pays only if the chance of ${passing} exceeds ${bound}; the readings say ${apart}.`;
};

/** Level, and yet no chance tips it: what certainty would do, for the prices still may. */
const levelEven = (assessment: DecisionAssessment): string => {
  const { breakEven, act } = assessment.decision.comparison ?? {};
  if (breakEven === undefined || act === undefined) return "";
  const { K, G, probability } = breakEven;
  if (probability === undefined)
    return `Even if ${workNames[act]} came to be needed, waiting would be about ${aboutMoney(Math.abs(K - G), assessment)} ${K > G ? "dearer" : "cheaper"}.`;
  return probability <= 0
    ? `Even if ${workNames[act]} never came to be needed, doing it now would be about ${aboutMoney(Math.abs(G), assessment)} ${G > 0 ? "dearer" : "cheaper"}.`
    : "";
};

/** Without any price. */
const ratioText = (assessment: DecisionAssessment, unit: PressureUnit): string => {
  const { decision, horizon, prices, input } = assessment;
  const { ratio, chance } = decision;
  if (ratio === undefined) return "";
  const work = workNames[ratio.act];
  const said =
    chance === undefined || decision.reasons[0] === "chance-above-risk"
      ? ""
      : ` The chance of passing ${limitNamed(assessment, unit)} within ${yearsText(horizon.years)} is ${aboutChance(chance.probability)}.`;
  const given =
    prices.known === "none" ? "No prices are given." : `Prices still missing: ${joined(prices.missing)}.`;
  // closed, and no price told: nobody asked whether getting in pays
  const isAsked = prices.known !== "none" || input.accessRatio !== undefined || assessment.done.length > 0;
  if (ratio.flipRatio === undefined && ratio.toOpen > 0 && !isAsked) return said.trim();
  return ratio.flipRatio === undefined
    ? `${given} Doing ${work} now does not pay, whatever getting in again costs${ratio.toOpen > 0 ? ", for part of the way in is still to do" : ": it is likelier to spoil a sound engine than to be needed"}.${said}`
    : `${given} Doing ${work} now pays only if getting in again costs more than about ${ratioNumber(ratio.flipRatio)} times its parts and machining.${said}`;
};

export const ratioNumber = (ratio: number): string => fixed(ratio, ratio < 10 ? 1 : 0);

/** Kept for good: the share of life used up against what the job costs now for what it costs later. */
const keptText = ({ decision, history }: DecisionAssessment): string => {
  const { keep, keepFromAge } = decision;
  const set = `sealtrend engine set ${history.record.engine.id}`;
  const someDay = "Kept for good every engine needs its rings some day; whether now depends on";
  if (keep === undefined)
    return decision.missing.includes("age")
      ? `${someDay} their age${keepFromAge === undefined ? "" : `, and pays from about ${yearsText(keepFromAge)} on`}: say when they were last new (--renewed 2004); kept on record: ${set} renewed 2004\n`
      : `${someDay} the years they have left, which no reading here tells: say what you reckon (--years-left 12); kept on record: ${set} yearsLeft 12\n`;
  const life = `about ${percent(keep.used)} of the life of its rings is used up`;
  if (keep.priceRatio === undefined)
    return `Kept for good: doing rings and bearings now pays if it costs less than ${percent(keep.used)} of what it costs later, for ${life}.`;
  const costs = `than the ${percent(keep.priceRatio)} that the job costs now of what it costs later`;
  return keep.pays === "yes"
    ? `Kept for good: ${life}, more ${costs}, so now is the cheaper time${keep.margin === "close" ? ", if new rings last as long as is judged" : ""}.`
    : `Kept for good: ${keep.used <= 0 ? "a re-ring would hardly outlast the years that its rings still have" : `${life}, less ${costs}`}, so waiting is the cheaper way.`;
};

/** What waiting costs where the need is there. */
export const waitingText = (assessment: DecisionAssessment): string => {
  const { comparison } = assessment.decision;
  if (comparison === undefined) return "";
  const within = `within ${yearsText(assessment.horizon.years)}`;
  const amount = aboutMoney(Math.abs(comparison.difference), assessment);
  return comparison.difference > 0
    ? `Waiting is expected to cost about ${amount} more ${within}.`
    : `In money waiting is about ${amount} cheaper ${within}.`;
};
