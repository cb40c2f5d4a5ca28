// The test gone by where it does not carry the decision: how old it is, and what of its conditions is still to be proved.

import { type DecisionAssessment, dayNumber, daysInYear } from "@sealtrend/core/parts";
import { yearsText } from "./decide-words.ts";
import { counted, joined, percent, sentence } from "../words.ts";

/** `The last test is 13 months old`, or what else is wrong with it. */
export const doubtText = ({ speaks, test, today, history, notCounted }: DecisionAssessment): string => {
  const id = test?.test.id ?? "";
  if (speaks !== "too-old" || test === undefined) return `The test of ${id} is doubtful`;
  const { date } = test.test;
  const years = (dayNumber(today) - dayNumber(date)) / daysInYear;
  const which = notCounted === undefined ? "The last test" : "The last test that counts";
  if (years < 1)
    return history.record.services.some((service) => service.date > date && service.newBaseline.length > 0)
      ? `${which}, ${id}, was made before the last work`
      : `${which}, ${id}, does not speak for today`;
  const age = years < 2 ? counted(Math.floor(12 * years), "month") : yearsText(years);
  return notCounted === undefined
    ? `The last test is ${age} old`
    : `${which}, ${id}, is ${age} old, and ${notCounted} does not count`;
};

/** `All cylinders are low, the engine as a whole 24 % below its first tests: prove gauge and cranking speed first.` */
export const lowEverywhereText = (assessment: DecisionAssessment): string => {
  const { lowEverywhere } = assessment;
  const { change, reference = "its first tests", milder, test = "", unproved = [] } = lowEverywhere ?? {};
  const still = milder === undefined || milder >= 0 ? "" : ` in ${test}, ${percent(-milder)} now`;
  const below =
    change === undefined || change >= 0
      ? ""
      : `, ${isAlone(assessment) ? "" : "the engine as a whole "}${percent(-change)} below ${reference}${still}`;
  const first = unproved.length === 0 ? "" : `: prove ${joined(unproved)} first`;
  return `${allAreLow(assessment)}${below}${first}.`;
};

/** `All cylinders are low`, of one `It is low`. */
export const allAreLow = (assessment: DecisionAssessment): string =>
  isAlone(assessment) ? "It is low" : "All cylinders are low";

const isAlone = ({ history }: DecisionAssessment): boolean => history.record.engine.cylinders.length === 1;

/** `It stood 9 months, so its cranking readings do not count until it is run warm and tested again.` */
export const notItselfText = ({ notItself }: DecisionAssessment): string =>
  `${sentence(notItself?.text ?? "it was not itself that day")}, so its cranking readings do not count until it is run warm and tested again.`;

/** Which test, which cylinder and by how much; another kind of test bears it out as well as a repeat. */
export const oddTestText = ({ oddTest, nextAction }: DecisionAssessment): string => {
  const isOther = nextAction?.how === (oddTest?.kind === "leak-down" ? "dry" : "leak-down");
  const again = isOther ? "test it the other way" : "read it again";
  return `${sentence(oddTest?.text ?? "one test is out of step")}: ${again} before you believe it.`;
};
