// What would change the verdict: value and unit of each input at which it turns.

import type { DecisionAssessment, PressureUnit, RatioView, Swing } from "@sealtrend/core";
import { aboutChance, aboutMoney, inHundred, typedMoney, yearsText } from "./decide-words.ts";
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
  /** Without prices: what turns there. */
  readonly turns?: "acting" | "watching";
}

/** What lies within its range first, each group the widest first. Where the need is established they are the values at
 *  which waiting costs the same. */
export const flipsOf = ({
  decision,
  horizon,
}: Pick<DecisionAssessment, "decision" | "horizon">): readonly Flip[] => {
  const { comparison, keep, ratio, basis } = decision;
  if (horizon.kind === "for-good" && basis !== "needed")
    return keep?.flipYears === undefined
      ? []
      : [{ input: "yearsLeft", at: keep.flipYears, value: keep.yearsLeft, unit: "years" }];
  const flips =
    comparison === undefined
      ? [...ratioFlip(ratio), ...decision.unpricedFlips.map(unpricedFlip)]
      : (decision.beside ?? comparison).swings.flatMap(flipOf);
  const near = flips.filter(({ where }) => where !== "outside");
  return [...near, ...flips.filter((flip) => !near.includes(flip))];
};

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

const unpricedFlip = ({ input, ...flip }: DecisionAssessment["decision"]["unpricedFlips"][number]): Flip => ({
  ...flip,
  input: input === "years" ? "horizon" : input,
  unit: unitOf(input),
});

const flipOf = ({ input, value, flip }: Swing): readonly Flip[] =>
  flip === undefined
    ? []
    : [
        {
          input: input === "years" ? "horizon" : input,
          at: flip.at,
          value,
          unit: unitOf(input),
          where: flip.where,
        },
      ];

/** Of an input that the comparison varies. */
export const unitOf = (input: string): Flip["unit"] => {
  if (input === "years") return "years";
  if (input === "limit") return "ln";
  return input === "spoil" || input === "probability" || input.startsWith("redo.") ? "chance" : "money";
};

/** `re-ring work at 46 EUR instead of 620`.  @param unit - of a limit that is a pressure */
export const flipText = (flip: Flip, assessment: DecisionAssessment, unit: PressureUnit): string =>
  `${inputText(flip, assessment, unit)}${turnText(flip, assessment)}`;

/** Which word it turns to, where it is not the work. */
const turnText = ({ turns }: Flip, { decision }: DecisionAssessment): string => {
  if (turns !== "watching") return "";
  if (decision.reasons[0] === "chance-above-risk") return " (then leave it)";
  return decision.verdict === "leave-it" ? " (then watch it)" : " (there watching turns)";
};

const inputText = (flip: Flip, assessment: DecisionAssessment, unit: PressureUnit): string => {
  const { input, at, value } = flip;
  switch (input) {
    case "horizon":
      return `${yearsText(at)} of ownership instead of ${yearsText(value ?? 0).replace(/ years?$/, "")}`;
    case "yearsLeft":
      return `${(value ?? 0) < at ? "more" : "fewer"} than ${yearsText(at)} left to the rings, not ${yearsText(value ?? 0).replace(/ years?$/, "")}`;
    case "limit":
      return limitText(flip, assessment, unit);
    case "accessRatio":
      return `getting in again at more than ${ratioNumber(at)} times parts and machining`;
    default:
      return flip.unit === "chance"
        ? `${inputName(input)}: ${chancesText(at, value ?? 0)}`
        : moneyText(flip, assessment);
  }
};

/** Both in tens, or both in hundreds where one of them needs it. */
const chancesText = (at: number, value: number): string => {
  const texts = [at, value].map(aboutChance);
  const isFine = texts.some((text) => text.endsWith("100"));
  const [turned = "", stands = ""] = isFine ? [at, value].map(inHundred) : texts;
  return `${turned} instead of ${stands.replace("about ", "")}`;
};

const moneyText = ({ input, at, value = 0 }: Flip, assessment: DecisionAssessment): string =>
  input.startsWith("resale.")
    ? `${inputName(input).replace(/^what (.*) adds at sale$/, "$1")} that adds ${aboutMoney(at, assessment)} at sale`
    : `${inputName(input)} at ${aboutMoney(at, assessment)} instead of ${typedMoney(value, { prices: { ...assessment.prices, currency: "" } }).trim()}`;

const limitText = ({ at, value = 0 }: Flip, assessment: DecisionAssessment, unit: PressureUnit): string => {
  const share = Math.expm1(at - value);
  const stands = limitAt(assessment, { at, value, unit });
  const moved = `the limit ${percent(Math.abs(share), 1)} ${share > 0 ? "higher" : "lower"}`;
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
  years: "years of ownership",
  probability: "the chance of passing its cranking limit",
};
