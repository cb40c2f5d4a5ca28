// Why another test comes before the decision, and what it may bring.

import type { DecisionAssessment, OfferedTest, Reason } from "@sealtrend/core";
import { aboutChance, aboutMoney, yearsText } from "./decide-words.ts";
import { chanceSentence, whose } from "./decide-chance.ts";
import { developingText } from "./decide-developing.ts";
import { doubtText, toProve } from "./decide-test-named.ts";
import { count, joined } from "../words.ts";

/** Sentences.  @source handbook/decision.md 2 (guards), 5, 6, 8 */
export const testAgainText = (assessment: DecisionAssessment): readonly string[] => {
  const said = assessment.decision.reasons
    .map((reason) => sentenceFor(reason, assessment))
    .filter((text) => text !== "");
  return said.slice(0, 2);
};

const sentenceFor = (reason: Reason, assessment: DecisionAssessment): string => {
  const { decision, test } = assessment;
  const id = test?.test.id;
  const reasons = (test?.trust.reasons ?? []).map(({ text, mend }) => `${text} (${mend})`);
  const because = reasons.length === 0 ? "" : `: ${joined(reasons.slice(0, 2))}`;
  switch (reason) {
    case "test-void":
      return id === undefined ? "No test counts yet." : `The test of ${id} says nothing${because}.`;
    case "test-doubtful":
      return `${doubtText(assessment)}${assessment.speaks === "too-old" ? "" : because}.`;
    case "one-odd-test":
      return "One test is out of step: read it again before you believe it.";
    case "not-itself":
      return "It was not itself that day: run it warm and test again. Until then its cranking readings do not count.";
    case "low-everywhere":
      return `All cylinders are low: prove ${joined(toProve(assessment))} first. Until then those readings do not count.`;
    case "one-line-only":
      return "One kind of evidence alone speaks for a rebuild: measure once more before you believe it.";
    case "limit-too-near":
      return tooNearText(assessment);
    case "outside-the-chance":
      return `${developingText(assessment)} The chance of passing a cranking limit covers none of that, and while it is open it can be measured.`;
    case "test-worth-making":
      return worthText(assessment);
    case "safety-step":
      return "Wear is developing, and lives hang on it: look inside, and test by a second method, before further use.";
    default:
      return reason === decision.reasons[0] ? chanceSentence(assessment) : "";
  }
};

/** `The limit is too near to watch: that cylinder 3 has passed it is about 1 in 10 or more already.` */
export const tooNearText = (assessment: DecisionAssessment): string =>
  `The limit is too near to watch: that ${whose(assessment)} has passed it ${nearText(assessment.decision.next)}.`;

/** Below a fortnight it is now. */
const nearText = ({ risk, riskYears = 0 }: DecisionAssessment["decision"]["next"]): string =>
  riskYears < 1 / 24
    ? `is ${aboutChance(risk)} or more already`
    : `reaches ${aboutChance(risk)} within ${yearsText(riskYears)}`;

/** `One more leak-down, three repeats, has about 4 in 10 to change this and is worth about 74 EUR against 25.` */
const worthText = (assessment: DecisionAssessment): string => {
  const { decision, input } = assessment;
  const { testWorth } = decision;
  if (testWorth === undefined) return "";
  const lead = `${offeredText(input.test)} changes this with a chance of ${aboutChance(testWorth.change)}`;
  if (testWorth.evsi === undefined) return `${lead}.`;
  const cost = input.test?.cost ?? 0;
  const priced = testWorth.what === "measurement" ? "the price of a test," : "its price of";
  const against = cost === 0 ? "" : ` against ${priced} ${aboutMoney(cost, assessment)}`;
  return `${lead} and is worth about ${aboutMoney(testWorth.evsi, assessment)}${against}.`;
};

/** `One more leak-down, three repeats,` */
const offeredText = (test: OfferedTest | undefined): string => {
  const repeats = test?.tells.kind === "readings" ? test.tells.repeats : 1;
  const often = repeats > 1 ? `, ${count(repeats)} repeats,` : "";
  switch (test?.what) {
    case "leak-down":
      return `One more leak-down${often}`;
    case "measurement":
      return "Measuring while it is open";
    default:
      return `One more compression test${often}`;
  }
};
