// What would change the verdict: value and unit of each input at which it turns.

import type {
  DecisionAssessment,
  PressureUnit,
  RatioView,
  Swing,
  Turn,
  UnpricedFlip,
  Verdict,
} from "@sealtrend/core/parts";
import { aboutChance, aboutMoney, inHundred, typedMoney, verdictWords, yearsText } from "./decide-words.ts";
import { ratioNumber } from "./decide-chance.ts";
import { limitAt } from "./decide-limit.ts";
import { percent } from "../words.ts";

/** One input and the value at which the verdict turns. */
export interface Flip {
  /** A path below `prices`, or `horizon`, `limit`, `yearsLeft`, `accessRatio`, `probability`. */
  readonly input: string;
  readonly at: number;
  /** As it stands; absent where nobody gave one. */
  readonly value?: number;
  readonly unit: "money" | "years" | "chance" | "ln" | "ratio";
  /** Within half the range that is allowed for it, within the range, beyond. */
  readonly where?: "half-range" | "range" | "outside";
  /** How far it lies: 1 at the end of its range. */
  readonly away?: number;
  /** Without prices: what turns there. */
  readonly turns?: "acting" | "watching";
  /** The word just beyond; absent where the two ways merely cost the same there. */
  readonly to?: Verdict | "level";
}

/** Where the word itself turns, the nearest first. Where it hangs on no money that can be moved: the values at which waiting
 *  costs the same, what lies within its range first, the widest of them first; then the others, the nearest first. */
export const flipsOf = ({
  decision,
  horizon,
  turns,
}: Pick<DecisionAssessment, "decision" | "horizon" | "turns">): readonly Flip[] => {
  const { comparison, keep, ratio, basis } = decision;
  if (horizon.kind === "for-good" && basis !== "needed")
    return keep?.flipYears === undefined
      ? []
      : [{ input: "yearsLeft", at: keep.flipYears, value: keep.yearsLeft, unit: "years" }];
  if (turns.length > 0) return turns.toSorted((a, b) => a.away - b.away).map(turnFlip);
  const flips =
    comparison === undefined
      ? [...ratioFlip(ratio), ...decision.unpricedFlips.map((flip) => unpricedFlip(flip, decision))]
      : (decision.beside ?? comparison).swings.flatMap(flipOf);
  const near = flips.filter(({ where }) => where !== "outside");
  const far = flips.filter((flip) => !near.includes(flip));
  return [...near, ...far.toSorted((a, b) => (a.away ?? 0) - (b.away ?? 0))];
};

const turnFlip = ({ input, verdict, level, ...flip }: Turn): Flip => ({
  ...flip,
  input: inputOf(input),
  unit: unitOf(input),
  to: level === "yes" ? "level" : verdict,
});

const ratioFlip = (ratio: RatioView | undefined): readonly Flip[] =>
  ratio?.flipRatio === undefined
    ? []
    : [
        {
          input: "accessRatio",
          at: ratio.flipRatio,
          unit: "ratio",
          ...(ratio.own === undefined ? {} : { value: ratio.own.ratio }),
        },
      ];

/** Acting pays beyond, or more risk than is taken makes it watched and less lets it be. */
const unpricedFlip = (
  { input, ...flip }: UnpricedFlip,
  { verdict, ratio }: DecisionAssessment["decision"],
): Flip => {
  const acting = ratio?.act === "topEnd" ? "open-the-top-end" : "re-ring";
  const watching = verdict === "leave-it" ? "watch-it" : "leave-it";
  const to = flip.turns === "acting" ? acting : watching;
  return { ...flip, input: inputOf(input), unit: unitOf(input), to };
};

const flipOf = ({ input, value, flip }: Swing): readonly Flip[] =>
  flip === undefined ? [] : [{ input: inputOf(input), value, unit: unitOf(input), ...flip }];

const inputOf = (input: string): string => (input === "years" ? "horizon" : input);

/** Of an input that the comparison varies. */
export const unitOf = (input: string): Flip["unit"] => {
  if (input === "years") return "years";
  if (input === "limit") return "ln";
  return input === "spoil" || input === "probability" || input.startsWith("redo.") ? "chance" : "money";
};

/** `re-ring: from 11 years of ownership on`.  @param unit - of a limit that is a pressure */
export const flipText = (flip: Flip, assessment: DecisionAssessment, unit: PressureUnit): string => {
  const head = turnsTo(flip, assessment);
  return `${head === "" ? "" : `${head}: `}${placeText(flip, assessment, unit)}`;
};

/** What it turns to; empty where the two ways merely cost the same. */
export const turnsTo = ({ to }: Flip, { input }: Pick<DecisionAssessment, "input">): string => {
  if (to === undefined || to === "level") return to ?? "";
  return to === "test-again" && input.test?.what === "measurement" ? "measure first" : verdictWords[to];
};

/** `from 11 years of ownership on`, `re-ring work at 46 EUR instead of 620`. */
export const placeText = (flip: Flip, assessment: DecisionAssessment, unit: PressureUnit): string => {
  const { input, at, value = 0 } = flip;
  switch (input) {
    case "horizon":
      return yearsFlip(flip);
    case "yearsLeft":
      return value < at
        ? `more than ${yearsText(at)} left to the rings, not ${bare(value)}`
        : `fewer than ${yearsText(at)} left to the rings, not ${bare(value)}`;
    case "limit":
      return limitText(flip, assessment, unit);
    case "accessRatio":
      return `getting in again at more than ${ratioNumber(at)} times parts and machining`;
    default:
      return flip.unit === "chance"
        ? `${inputName(input)}: ${chancesText(at, value)}`
        : moneyText(flip, assessment);
  }
};

const bare = (years: number): string => yearsText(years).replace(/ years?$/, "");

/** Said with a direction where the word turns; hardly moved, without a figure that would read as no change. */
const yearsFlip = ({ at, value = 0, to }: Flip): string => {
  const isMore = at > value;
  if (yearsText(at) === yearsText(value))
    return `hardly ${isMore ? "more" : "less"} than ${yearsText(value)} of ownership`;
  if (to === undefined) return `${yearsText(at)} of ownership instead of ${bare(value)}`;
  return isMore ? `from ${yearsText(at)} of ownership on` : `up to ${yearsText(at)} of ownership`;
};

/** Both in tens, or both in hundreds where one of them needs it. */
const chancesText = (at: number, value: number): string => {
  const texts = [at, value].map(aboutChance);
  const isFine = texts.some((text) => text.endsWith("100"));
  const [turned = "", stands = ""] = isFine ? [at, value].map(inHundred) : texts;
  return `${turned} instead of ${stands.replace("about ", "")}`;
};

const moneyText = ({ input, at, value = 0 }: Flip, assessment: DecisionAssessment): string => {
  const told = aboutMoney(at, assessment);
  if (input.startsWith("resale."))
    return `${inputName(input).replace(/^what (.*) adds at sale$/, "$1")} that adds ${told} at sale`;
  const stands = typedMoney(value, { prices: { ...assessment.prices, currency: "" } }).trim();
  return aboutMoney(value, assessment) === told
    ? `${inputName(input)} at hardly ${at > value ? "more" : "less"} than ${stands}`
    : `${inputName(input)} at ${told} instead of ${stands}`;
};

const limitText = ({ at, value = 0 }: Flip, assessment: DecisionAssessment, unit: PressureUnit): string => {
  const share = Math.expm1(at - value);
  const stands = limitAt(assessment, { at, value, unit });
  const far = Math.abs(share);
  const moved = `the limit ${far < 0.0005 ? "hardly" : percent(far, 1)} ${share > 0 ? "higher" : "lower"}`;
  return stands === undefined ? moved : `${moved} (${stands})`;
};

/** An input in words. */
export const inputName = (input: string): string => names[input] ?? input;

const names: Readonly<Partial<Record<string, string>>> = {
  "jobs.headOff": "getting the head off",
  "jobs.bottomOpen": "opening the bottom end",
  "jobs.engineOut": "getting the engine out",
  "work.topEnd": "top end work",
  "work.reRing": "re-ring work",
  "work.rebuild": "rebuild work",
  day: "a day out of use",
  runningPerYear: "a year of running it as it is",
  test: "a test",
  "redo.topEnd": "a top end that does not hold",
  "redo.reRing": "a re-ring that does not hold",
  "redo.rebuild": "a rebuild that does not hold",
  spoil: "waiting that turns a re-ring into a rebuild",
  "resale.topEnd": "what a top end adds at sale",
  "resale.reRing": "what a re-ring adds at sale",
  "resale.rebuild": "what a rebuild adds at sale",
  limit: "the limit",
  horizon: "years of ownership",
  accessRatio: "what getting in again costs",
  yearsLeft: "the years left to the rings",
  years: "years of ownership",
  probability: "the chance of passing its cranking limit",
};
