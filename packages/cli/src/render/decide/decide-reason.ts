// Why this word: one or two sentences under the verdict, the case of the handbook first.

import type { DecisionAssessment, PressureUnit, Reason, WornPlace } from "@sealtrend/core/parts";
import { belowText, breakEvenText, chanceSentence, waitingText, whose } from "./decide-chance.ts";
import { speaksForWear } from "./decide-evidence.ts";
import { developingText } from "./decide-developing.ts";
import { levelText } from "./decide-level.ts";
import { limitNamed } from "./decide-limit.ts";
import { sentenceFor, testAgainText, tooNearText } from "./decide-test-again.ts";
import { aboutChance, aboutMoney, isOpen, placeNames, workNames, yearsText } from "./decide-words.ts";
import { counted, joined, sentence } from "../words.ts";

/** A paragraph.  @source handbook/decision.md 8 */
export const reasonText = (assessment: DecisionAssessment, unit: PressureUnit): string =>
  namedOnce(
    [stopText(assessment), belowText(assessment), ...casesOf(assessment, unit)]
      .filter((text) => text !== "")
      .join(" ")
      .replace(/\n +/g, "\n")
      .trim(),
    limitNamed(assessment, unit),
  );

/** The limit is named where it stands first. */
const namedOnce = (text: string, limit: string): string => {
  const after = text.indexOf(limit) + limit.length;
  return text.slice(0, after) + text.slice(after).replaceAll(limit, "that limit");
};

const casesOf = (assessment: DecisionAssessment, unit: PressureUnit): readonly string[] => {
  switch (assessment.decision.saying) {
    case "needed":
      return neededText(assessment);
    case "open-opportunity":
    case "opportunity":
      return opportunityText(assessment, unit);
    case "level":
      return levelTexts(assessment, breakEvenText(assessment, unit), unit);
    case "test-again":
      return testAgainText(assessment, unit);
    case "open-leave":
    case "no-prices":
      return [watchText(assessment, unit), openText(assessment, unit)];
    case "watch":
      return [watchText(assessment, unit), layupText(assessment, unit)];
    case "leave":
      return [leaveText(assessment), chanceSentence(assessment, unit)];
  }
};

const levelTexts = (assessment: DecisionAssessment, held: string, unit: PressureUnit): readonly string[] => [
  nearOpenText(assessment, unit, held),
  levelText(assessment),
  held,
];

const leaveText = ({ evidence }: DecisionAssessment): string => {
  if (evidence.length === 0) return "Nothing on record asks for work, but little was looked at.";
  return evidence.some((row) => row.use === "counted" && speaksForWear(row))
    ? "What speaks for wear is not enough for work."
    : "Nothing on record asks for work.";
};

/** `stop`, whatever the verdict: what was seen that a running engine does not forgive. */
const stopText = ({ decision, evidence }: DecisionAssessment): string => {
  if (decision.urgency === "no-hard-use") return sparedText(evidence);
  if (decision.urgency !== "stop") return "";
  const seen = evidence.filter(({ row }) => row === "F3" || row === "G1" || row === "H2");
  return `Stop: do not run it until this is looked at: ${joined(seen.map(({ text, from }) => `${text} (${from})`))}.`;
};

/** Bearing metal: no stop, but nothing to load. @source handbook/decision.md 8 */
const sparedText = (evidence: DecisionAssessment["evidence"]): string => {
  const seen = evidence.filter(({ row }) => row === "F1").map(({ text, from }) => `${text} (${from})`);
  return `${sentence(joined(seen))}: do not run it hard before the bearings are looked at.`;
};

const needPlaces: Readonly<Record<"topEnd" | "reRing" | "rebuild", readonly WornPlace[]>> = {
  topEnd: ["top"],
  reRing: ["rings", "top"],
  rebuild: ["bottom", "bore", "rings", "top"],
};

/** `Rings: leak-down, oil use and blow-by agree. No urgent stop.` */
const neededText = (assessment: DecisionAssessment): readonly string[] => {
  const { decision } = assessment;
  const { scores, need, urgency } = decision;
  if (need === undefined) return [];
  const places = needPlaces[need].filter((place) => scores[place].state === "established");
  const said = places.map((place) => {
    const lines = scores[place].linesFor;
    const agree = lines.length === 1 ? `${lines[0] ?? ""} beyond the limit` : `${joined(lines)} agree`;
    return `${sentence(placeNames[place])}: ${agree}.`;
  });
  const calm = urgency === "planned" || urgency === "not-urgent" ? "No urgent stop." : "";
  return [...said, waitingText(assessment), calm];
};

const opportunityText = (assessment: DecisionAssessment, unit: PressureUnit): readonly string[] => {
  const { decision } = assessment;
  if (decision.reasons[0] === "rings-disturbed") return disturbedText(assessment);
  if (decision.reasons[0] === "past-its-limit") return pastLimitText(assessment);
  const due = decision.reasons.includes("need-established");
  const why = isOpen(assessment)
    ? "cheaper now than later, because the way in is already paid for"
    : assessment.done.length > 0
      ? "cheaper now than later, because it is out already"
      : "cheaper now than later";
  const first = due
    ? `The top end is due; rings and bearings with it are not needed today, but ${why}.`
    : `Not needed today, but ${why}.`;
  // what stops the engine comes before what is cheap
  const even = decision.urgency === "stop" ? "" : breakEvenText(assessment, unit);
  return [first, even, measureText(assessment)];
};

/** Not by any reading: rings that ran do not go back in. */
const disturbedText = (assessment: DecisionAssessment): readonly string[] => {
  const { decision, ringsDue } = assessment;
  const wears = assessment.evidence.some((row) => row.use === "counted" && speaksForWear(row));
  const top = decision.reasons.includes("need-established")
    ? "The top end is due, and"
    : `No reading ${wears ? "alone establishes" : "asks for"} it, but`;
  const price = decision.due?.price;
  const cost = price === undefined ? "" : `Rings and bearings now: about ${aboutMoney(price, assessment)}.`;
  return [`${top} ${ringsDue?.text ?? "the pistons are out"}.`, cost, measureText(assessment)];
};

/** By a maker's limit, not by how it seals. */
const pastLimitText = (assessment: DecisionAssessment): readonly string[] => {
  const { decision, evidence } = assessment;
  const past = evidence.filter(({ row }) => row === "J3" || row === "J7").length;
  const what = decision.due?.act === "topEnd" ? "The top end" : "Rings and bearings";
  const price = decision.due?.price;
  const cost = price === undefined ? "" : `${what} now: about ${aboutMoney(price, assessment)}.`;
  const first = decision.reasons.includes("need-established") ? "The top end is due, and what" : "What";
  return [
    `${first} is past its limit does not go back in (${counted(past, "part")}).`,
    cost,
    measureText(assessment),
  ];
};

const partNames = { bore: "bore", "ring-gap": "ring gap", bearings: "bearings" } as const;

/** `Measure bore, ring gap and bearings before ordering.` */
const measureText = ({ decision }: DecisionAssessment): string => {
  const open = decision.guards.flatMap((guard) => (guard.code === "subject-to-measuring" ? guard.open : []));
  return open.length === 0 ? "" : `Measure ${joined(open.map((part) => partNames[part]))} before ordering.`;
};

const openText = (assessment: DecisionAssessment, unit: PressureUnit): string => {
  const held = breakEvenText(assessment, unit);
  if (held === "" || assessment.horizon.kind === "for-good")
    return `${held} ${chanceSentence(assessment, unit)}`.trim();
  return held;
};

/** Why it is watched; empty where it is not. */
const watchText = (assessment: DecisionAssessment, unit: PressureUnit): string => {
  if (assessment.decision.verdict !== "watch-it") return "";
  const [first] = assessment.decision.reasons
    .map((reason) => watchSentence(reason, assessment, unit))
    .filter((text) => text !== "");
  return first ?? "";
};

/** Open it can be measured, not tested. */
const nearOpenText = (assessment: DecisionAssessment, unit: PressureUnit, rest: string): string =>
  assessment.decision.reasons[0] === "limit-too-near"
    ? `${tooNearText(assessment, unit, rest)} Open it cannot be tested: measure it before you close it.`
    : "";

const watchSentence = (reason: Reason, assessment: DecisionAssessment, unit: PressureUnit): string => {
  const { decision, horizon } = assessment;
  const chance = decision.chance === undefined ? "" : aboutChance(decision.chance.probability);
  switch (reason) {
    case "limit-too-near":
      return nearOpenText(assessment, unit, openText(assessment, unit));
    case "test-void":
    case "test-doubtful":
    case "one-odd-test":
    case "not-itself":
    case "low-everywhere":
    case "read-again":
    case "leak-unplaced":
    case "low-unexplained":
      return sentenceFor(reason, assessment, unit);
    case "instruments-disagree":
      return "Cranking and leak-down contradict each other.";
    case "wear-developing":
      return developingText(assessment);
    case "history-alarm":
      return alarmText(assessment);
    case "limit-in-sight":
      return `The limit is in sight: within ${yearsText(decision.next.riskYears ?? 0)} the chance of passing it reaches ${aboutChance(decision.next.risk)}.`;
    case "watching-cheaper":
      return "Watching costs less than leaving it alone: it catches what waiting would make dear.";
    case "chance-above-risk":
      return `The chance that ${whose(assessment)} passes ${limitNamed(assessment, unit)} within ${yearsText(horizon.years)} is ${chance}, more than the ${aboutChance(decision.next.risk).replace("about ", "")} that is taken without watching.`;
    case "safety-step":
      return `${leaveText(assessment)} Where lives hang on it, it is watched all the same.`;
    default:
      return "";
  }
};

/** The years alone, or with evidence of other kinds that is not enough. */
const alarmText = ({ evidence }: DecisionAssessment): string =>
  evidence.some((row) => row.use === "counted" && row.line !== "cranking" && speaksForWear(row))
    ? "The history gives an alarm; with the rest it is not enough for work."
    : evidence.some((row) => row.use === "counted" && row.row !== "A8" && speaksForWear(row))
      ? "The history gives an alarm; cranking readings alone are not enough for work."
      : "The history gives an alarm, and no more than that speaks for wear.";

/** In place: acting pays, but not yet. */
const layupText = (assessment: DecisionAssessment, unit: PressureUnit): string => {
  const { decision } = assessment;
  if (!decision.reasons.includes("work-in-sight")) return chanceSentence(assessment, unit);
  const { comparison, plan, planBy } = decision;
  const work = workNames[comparison?.act ?? "reRing"];
  const said = chanceSentence(assessment, unit);
  if (plan === undefined || planBy === undefined)
    return `Doing ${work} before it is needed would pay, but no layup is cheaper than the next. ${said}`.trim();
  const best = plan.best === 0 ? "at the next layup" : `in ${yearsText(plan.best)}`;
  const latest =
    planBy === plan.best
      ? ""
      : ` and costs hardly more until ${planBy === 0 ? "then" : `${yearsText(planBy)} from now`}`;
  return `Plan ${work} for a layup: cheapest ${best}${latest}. ${said}`.trim();
};
