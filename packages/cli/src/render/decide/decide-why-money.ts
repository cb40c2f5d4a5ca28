// The money behind `decide`: what each act is expected to cost, where it breaks even, what each input does to it.

import type { Comparison, DecisionAssessment, PressureUnit, Swing } from "@sealtrend/core/parts";
import { unitOf, inputName } from "./decide-flips.ts";
import { ratioNumber } from "./decide-chance.ts";
import { limitAt } from "./decide-limit.ts";
import { aboutMoney, actNames, typedMoney, verdictWords, yearsText } from "./decide-words.ts";
import { fixed, percent, sentence } from "../words.ts";

/** Paragraphs, not wrapped. */
export const moneyTexts = (assessment: DecisionAssessment, unit: PressureUnit): readonly string[] => [
  ...pricesText(assessment),
  ...optionsText(assessment),
  ...comparedTexts(assessment, unit),
  ...ratioText(assessment),
  ...keepText(assessment),
  ...planText(assessment),
  ...worthText(assessment),
];

const pricesText = ({ prices, history }: DecisionAssessment): readonly string[] =>
  prices.known === "all"
    ? []
    : [
        `${prices.known === "none" ? "No prices are given" : "Too few prices are given to compare in money"}; needed: ${prices.missing.join(", ")}; --price work.reRing=620, or sealtrend engine set ${history.record.engine.id} prices.work.reRing 620`,
      ];

const optionsText = (assessment: DecisionAssessment): readonly string[] => {
  const costs = assessment.decision.options.flatMap(({ code, expectedCost }) =>
    expectedCost === undefined ? [] : [`${verdictWords[code]} ${aboutMoney(expectedCost, assessment)}`],
  );
  return costs.length === 0
    ? []
    : [`Expected cost within ${yearsText(assessment.horizon.years)}: ${costs.join("; ")}.`];
};

const comparedTexts = (assessment: DecisionAssessment, unit: PressureUnit): readonly string[] => {
  const { comparison, beside } = assessment.decision;
  return [comparison, beside].flatMap((one) =>
    one === undefined ? [] : comparedText(one, assessment, unit),
  );
};

const comparedText = (
  comparison: Comparison,
  assessment: DecisionAssessment,
  unit: PressureUnit,
): readonly string[] => {
  const { act, idle, difference, breakEven, swings } = comparison;
  const more = difference > 0 ? "dearer" : "cheaper";
  const even =
    breakEven === undefined
      ? ""
      : ` Were it never needed, doing it would cost ${aboutMoney(breakEven.G, assessment)} more than waiting; the need itself, once spared, is worth ${aboutMoney(breakEven.K, assessment)}; ${breakEven.probability === undefined ? "no chance makes the two level" : `so the two are level at a chance of ${fixed(breakEven.probability, 2)}`}.`;
  return [
    `${sentence(actNames[idle])} is ${aboutMoney(Math.abs(difference), assessment)} ${more} than ${actNames[act]} (${aboutMoney(comparison.price, assessment)} now).${even}`,
    `What each input does to that difference, one at a time, the widest first: ${swings.map((swing) => swingText(swing, assessment, unit)).join("; ")}.`,
  ];
};

/** `re-ring work 413 to 930: +207 to -310, turns at 46` */
const swingText = (swing: Swing, assessment: DecisionAssessment, unit: PressureUnit): string => {
  const { input, low, high, flip } = swing;
  const at = (value: number): string => valueText(swing, value, { assessment, unit });
  const turn =
    flip === undefined ? "" : `, turns at ${at(flip.at)}${flip.where === "outside" ? " (far off)" : ""}`;
  return `${inputName(input)} ${at(low.at)} to ${at(high.at)}: ${signedMoney(low.difference)} to ${signedMoney(high.difference)}${turn}`;
};

const valueText = (
  { input, value }: Swing,
  at: number,
  { assessment, unit }: { readonly assessment: DecisionAssessment; readonly unit: PressureUnit },
): string => {
  switch (unitOf(input)) {
    case "years":
      return fixed(at, Number.isInteger(at) ? 0 : 1);
    case "chance":
      return fixed(at, 2);
    case "ln":
      return limitAt(assessment, { at, value, unit, places: 3 }) ?? percent(Math.expm1(at - value), 1);
    default:
      return bareMoney(at);
  }
};

const noCurrency = { prices: { known: "all", missing: [] } } as const;
const bareMoney = (amount: number): string => aboutMoney(amount, noCurrency);
const signedMoney = (amount: number): string => (amount > 0 ? `+${bareMoney(amount)}` : bareMoney(amount));

const ratioText = ({ decision }: DecisionAssessment): readonly string[] => {
  const { ratio } = decision;
  if (ratio === undefined) return [];
  const flip =
    ratio.flipRatio === undefined
      ? "no ratio of the way in to the work makes it pay"
      : `it pays above a way in of ${ratioNumber(ratio.flipRatio)} times the work`;
  const own =
    ratio.own === undefined
      ? ""
      : `; at your ${ratioNumber(ratio.own.ratio)} it breaks even at a chance of ${fixed(ratio.own.breakEven, 2)}`;
  return [
    `Without prices: chance that this very work is needed ${fixed(ratio.chance, 2)}, share of the way in still to do ${fixed(ratio.toOpen, 2)}; ${flip}${own}.`,
  ];
};

const keepText = ({ decision }: DecisionAssessment): readonly string[] => {
  const { keep } = decision;
  if (keep === undefined) return [];
  const ratio =
    keep.priceRatio === undefined
      ? ""
      : `; the job costs ${fixed(keep.priceRatio, 2)} now of what it costs later`;
  const flip = keep.flipYears === undefined ? "" : `; it turns at ${yearsText(keep.flipYears)} left`;
  return [
    `Kept for good: ${yearsText(keep.yearsLeft)} left in the middle, a re-ring lasts ${yearsText(keep.lifeAfter)} (judgement), so ${fixed(keep.used, 2)} of the life is used up${ratio}${flip}.`,
  ];
};

const planText = (assessment: DecisionAssessment): readonly string[] => {
  const { plan } = assessment.decision;
  if (plan === undefined) return [];
  const layups = plan.costs.map(
    ({ years, cost }) => `${fixed(years, Number.isInteger(years) ? 0 : 1)}: ${bareMoney(cost)}`,
  );
  return [
    `Cost of acting at the layup so many years from now, if it lasts till then (the last: never): ${layups.join(", ")}. Best ${fixed(plan.best, Number.isInteger(plan.best) ? 0 : 1)}, nearly as cheap until ${fixed(plan.planBy, Number.isInteger(plan.planBy) ? 0 : 1)}.`,
  ];
};

const worthText = (assessment: DecisionAssessment): readonly string[] => {
  const { testWorth } = assessment.decision;
  if (testWorth === undefined) return [];
  const { share, change, evsi, evpi, net, possible } = testWorth;
  const money =
    evsi === undefined || evpi === undefined || net === undefined
      ? ""
      : `, worth ${aboutMoney(evsi, assessment)} (${signedMoney(net)} after its price of ${typedMoney(assessment.input.test?.cost ?? 0, assessment)}); to know all would be worth ${aboutMoney(evpi, assessment)}`;
  const can = possible === "yes" ? "" : "; it cannot be made as the engine stands";
  return [
    `One more test (${testWorth.what}) takes away ${fixed(share, 2)} of the doubt and changes the verdict with a chance of ${fixed(change, 2)}${money}${can}.`,
  ];
};
