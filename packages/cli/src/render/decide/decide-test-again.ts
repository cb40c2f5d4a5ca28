// Why another test comes before the decision, and what it may bring.

import type { DecisionAssessment, OfferedTest, PressureUnit, Reason } from "@sealtrend/core/parts";
import { aboutChance, aboutMoney, typedMoney, workNames, yearsText } from "./decide-words.ts";
import { breakEvenText, chanceSentence, whose } from "./decide-chance.ts";
import { speaksForWear } from "./decide-evidence.ts";
import { developingText } from "./decide-developing.ts";
import { limitNamed } from "./decide-limit.ts";
import { spoken } from "./decide-headline.ts";
import { doubtText, lowEverywhereText, notItselfText, oddTestText } from "./decide-test-named.ts";
import { count, joined, percent, sentence } from "../words.ts";

/** Sentences: why, what the years say meanwhile, and what holds without the test.
 *  @source handbook/decision.md 2 (guards), 5, 6, 8 */
export const testAgainText = (assessment: DecisionAssessment, unit: PressureUnit): readonly string[] => {
  const { reasons } = assessment.decision;
  const meanwhile = reasons.some((reason) => withYears.includes(reason)) ? yearsSay(assessment, unit) : "";
  const said = reasons
    .map((reason) =>
      reason === "limit-too-near"
        ? tooNearText(assessment, unit, meanwhile)
        : sentenceFor(reason, assessment, unit),
    )
    .filter((text) => text !== "");
  const price = reasons.includes("test-worth-making") ? "" : priceText(assessment);
  return [...new Set([...said.slice(0, 2), meanwhile, price, otherwiseText(assessment)])];
};

/** Doubts that leave the years standing: the chance and its break-even are told beside them. */
const withYears: readonly Reason[] = [
  "one-odd-test",
  "test-worth-making",
  "one-method-only",
  "limit-too-near",
  "test-doubtful",
];

const yearsSay = (assessment: DecisionAssessment, unit: PressureUnit): string => {
  const { decision, chanceWithout } = assessment;
  if (decision.chance === undefined) return "";
  const without = chanceWithout === undefined ? "" : ` The test ${chanceWithout} is left out of that.`;
  return `${breakEvenText(assessment, unit) || chanceSentence(assessment, unit)}${without}`;
};

/** `That test costs 10 EUR and changes the answer with a chance of about 2 in 10.` */
const priceText = (assessment: DecisionAssessment): string => {
  const { cost, change } = assessment.testAgain ?? {};
  const parts = [
    ...(cost === undefined ? [] : [`costs ${typedMoney(cost, assessment)}`]),
    ...(change === undefined ? [] : [`changes the answer with a chance of ${aboutChance(change)}`]),
  ];
  return parts.length === 0 ? "" : `That test ${joined(parts)}.`;
};

/** `If you do not test: close it up, and watch it, and no hard use before it is tested.` */
const otherwiseText = (assessment: DecisionAssessment): string => {
  const { ifNotTested } = assessment.decision;
  if (ifNotTested === undefined) return "";
  // what runs in is used before it is tested
  if (ifNotTested.use === "not-used" && assessment.nextAction?.code === "run-in") return "";
  if (ifNotTested.use === "not-used")
    return assessment.decision.reasons[0] === "source-unknown"
      ? "Until then it is not run."
      : "Until it is tested it is not used.";
  const said = spoken(ifNotTested.verdict, assessment).replace(/\.$/, "").replace(":", ",");
  const use = ifNotTested.use === "no-hard-use" ? ", and no hard use before it is tested" : "";
  const plan = ifNotTested.planBy === undefined ? "" : `; ${layupOf(ifNotTested.planBy, assessment)}`;
  return `If you do not test: ${said.charAt(0).toLowerCase()}${said.slice(1)}${use}${plan}.`;
};

const layupOf = (planBy: number, { decision }: DecisionAssessment): string => {
  const work = workNames[decision.comparison?.act ?? "reRing"];
  return planBy === 0
    ? `plan ${work} for the next layup`
    : `plan ${work} for a layup within ${yearsText(planBy)}`;
};

/** What a reason for a test says. */
export const sentenceFor = (reason: Reason, assessment: DecisionAssessment, unit: PressureUnit): string => {
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
      return oddTestText(assessment);
    case "not-itself":
      return notItselfText(assessment);
    case "low-everywhere":
      return `${lowEverywhereText(assessment)} Until then those readings do not count.`;
    case "one-method-only":
      return `${lowEverywhereText(assessment)} ${assessment.history.record.engine.ignition === "compression" ? "Gauge and speed" : "Gauge, throttle and speed"} are proved: a second method, a leak-down, comes before anything is decided.`;
    case "source-unknown":
      return sourceText(assessment);
    case "scored-bore":
      return "New rings do not cure what was seen in a bore: measure it before anything is ordered.";
    case "read-again":
      return readAgainText(assessment);
    case "leak-unplaced":
      return unplacedText(assessment);
    case "low-unexplained":
      return lowText(assessment);
    case "one-line-only":
      return "One kind of evidence alone speaks for a rebuild: measure once more before you believe it.";
    case "outside-the-chance":
      return `${developingText(assessment)} The chance of passing a cranking limit covers none of that, and while it is open it can be measured.`;
    case "test-worth-making":
      return worthText(assessment);
    case "safety-step":
      return "Wear is developing, and lives hang on it: look inside, and test by a second method, before further use.";
    default:
      return reason === decision.reasons[0] ? chanceSentence(assessment, unit) : "";
  }
};

/** Valves, gasket and rings ask for different work: a leak is placed before it is left or mended. */
const unplacedText = ({ unplacedLeaks }: DecisionAssessment): string => {
  const lost = unplacedLeaks.map(({ label, lost }) => `cylinder ${label} lost ${percent(lost)}`);
  return `${sentence(joined(lost))} in the leak-down, and where the air goes is not known: a valve, a gasket and rings ask for different work.`;
};

/** Believed, and yet no answer: a gauge that is cranked shows that it is lost, not where. */
const lowText = (assessment: DecisionAssessment): string => {
  const low = sentence(joined(lowTexts(assessment)));
  const isPlaced = assessment.evidence.some(
    (row) => row.use === "counted" && row.line !== "cranking" && speaksForWear(row),
  );
  return isPlaced
    ? `${low}: too far to be watched, and with the rest not enough for work.`
    : `${low}, and nothing tells why: cranking shows that it is lost, not where.`;
};

const lowTexts = ({ evidence }: DecisionAssessment): readonly string[] =>
  evidence.filter(({ row }) => row === "A2").map(({ text }) => text);

/** What stops the engine is said before; damage that was seen is named here. */
const sourceText = ({ decision, damage }: DecisionAssessment): string => {
  const seen = damage.length === 0 ? "" : `Seen or heard: ${joined(damage.slice(0, 3))}. `;
  const what = decision.urgency === "stop" ? "Where it comes from" : "What that comes to";
  return `${seen}${what} is found before anything is closed up or ordered.`;
};

/** `Too near to watch: cylinder 3 may have passed its cranking limit (95 psi) already.` One chance is enough: that of being
 *  there now stands only where none is told after it.  @param rest - what is said after it */
export const tooNearText = (assessment: DecisionAssessment, unit: PressureUnit, rest: string): string => {
  const { next, chance } = assessment.decision;
  const { risk, riskYears = 0 } = next;
  const isTold = chance !== undefined && rest.includes(aboutChance(chance.probability));
  const limit = limitNamed(assessment, unit);
  if (riskYears < alreadyThere)
    return `Too near to watch: ${whose(assessment)} may have passed ${limit} already${isTold ? "" : `, ${aboutChance(risk)} or more`}.`;
  return `Too near to watch: ${whose(assessment)} may pass ${limit} within ${yearsText(riskYears)}${isTold ? "" : `, ${aboutChance(risk)}`}.`;
};

/** Half a month. [years] */
const alreadyThere = 1 / 24;

/** `One more leak-down, three repeats, has about 4 in 10 to change this and is worth about 74 EUR against 25.` */
const worthText = (assessment: DecisionAssessment): string => {
  const { decision, input } = assessment;
  const { testWorth } = decision;
  if (testWorth === undefined) return "";
  const lead = `${offeredText(input.test)} changes the answer with a chance of ${aboutChance(testWorth.change)}`;
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

/** Cylinders that were passed over are named, and those that hold nothing; what is read again for another reason stands with
 *  the test. */
const readAgainText = (assessment: DecisionAssessment): string => {
  const { test, notSeen, input } = assessment;
  const unread = notSeen.find(({ cylinders }) => cylinders !== undefined);
  const repeats = test?.nextTests.filter(({ code, by }) => code === "repeat" && by === "rule") ?? [];
  const passed = unread === undefined ? "" : `${sentence(unread.text.replace(", which", ""))}.`;
  if (unread !== undefined && repeats.length === 1)
    return `${passed} What the others read says nothing of ${unread.cylinders?.length === 1 ? "it" : "them"}.`;
  const low = input.farPast === undefined ? "" : `${sentence(joined(lowTexts(assessment)))}.`;
  return `${passed} ${low} The readings of ${test?.test.id ?? ""} carry no answer yet: some are to be made again first.`
    .trim()
    .replace(/ +/g, " ");
};
