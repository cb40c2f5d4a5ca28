// The first line of `decide`: the verdict in words of a workshop, and how firm it stands.

import type { DecisionAssessment, Margin, Verdict } from "@sealtrend/core/parts";
import { isMeasuredFirst, isOpen, isTestedOpen } from "./decide-words.ts";
import { prose } from "../prose.ts";
import { displayWidth } from "../width.ts";

/** The verdict at the left, how firm at the right end where there is room. */
export const headlineLines = (assessment: DecisionAssessment, width: number): readonly string[] => {
  const answer = headline(assessment);
  const firm = firmText(assessment);
  if (firm === "") return prose(answer, width);
  const line = Math.min(width, 80);
  const gap = line - displayWidth(answer) - displayWidth(firm);
  return gap >= 2 ? [`${answer}${" ".repeat(gap)}${firm}`] : prose(`${answer} ${firm}`, width);
};

/** `Close it up as it is.` */
export const headline = (assessment: DecisionAssessment): string => {
  const { decision } = assessment;
  const said = sentences[decision.verdict];
  if (decision.next.step === "measure-again") return "Test again: measure it once more before you decide.";
  if (decision.next.step === "find-the-source") return "Test again: find the source before you decide.";
  if (decision.next.step === "offered-test" && assessment.input.test?.what === "measurement")
    return "Test again: measure it before you decide.";
  if (decision.verdict === "test-again" && assessment.nextAction?.code === "run-in")
    return "Run it in, and test it anew before you decide.";
  if (isMeasuredFirst(assessment)) return "Measure it, close it up, and watch it.";
  if (isTestedOpen(assessment)) return "Test again before you close it up.";
  const state = stateOf(assessment);
  if (decision.basis === "opportunity") return said[`${state}Chance`] ?? said[state];
  if (decision.urgency === "before-further-use")
    return `${said[state].replace(/\.$/, "")} before further use.`;
  return said[state];
};

/** The same for a word that is not the verdict, such as what holds without another test. */
export const spoken = (verdict: Verdict, assessment: DecisionAssessment): string =>
  sentences[verdict][stateOf(assessment)];

const stateOf = (assessment: DecisionAssessment): State =>
  isOpen(assessment) ? "open" : assessment.done.length > 0 ? "out" : "inPlace";

type State = "open" | "out" | "inPlace";
type Sentences = Readonly<Record<State, string> & Partial<Record<`${State}Chance`, string>>>;

const alike = (text: string): Sentences => ({ open: text, out: text, inPlace: text });

const sentences: Readonly<Record<Verdict, Sentences>> = {
  "leave-it": {
    open: "Close it up as it is.",
    out: "Put it back as it is.",
    inPlace: "Leave it as it is.",
  },
  "test-again": alike("Test again before you decide."),
  "watch-it": {
    open: "Close it up, and watch it.",
    out: "Put it back, and watch it.",
    inPlace: "Watch it: no work now.",
  },
  "open-the-top-end": {
    ...alike("Open the top end."),
    openChance: "Do the top end now, while it is open.",
    outChance: "Do the top end now, while it is out.",
    inPlaceChance: "Do the top end at this layup.",
  },
  "re-ring": {
    ...alike("Re-ring, subject to measuring."),
    openChance: "Re-ring now, while it is open.",
    outChance: "Re-ring now, while it is out.",
    inPlaceChance: "Re-ring at this layup.",
  },
  rebuild: alike("Rebuild."),
};

/** How firm; of what is needed how firm the money says when. Empty where nothing was reckoned that could tip it. */
const firmText = ({ decision, turns }: DecisionAssessment): string => {
  const { basis, urgency, verdict } = decision;
  // the balance may hold where the word does not: it is measured or tested first
  const isNear = turns.some(({ where }) => where !== "outside");
  const margin = decision.margin === "clear" && isNear ? "holds" : decision.margin;
  if (basis === "needed") {
    const pressing = urgency === "stop" ? ": stop" : urgency === "not-urgent" ? ", not urgent" : "";
    const when = margin === undefined || urgency === "stop" ? "" : `; ${moments[margin]}`;
    return `(needed${pressing}${when})`;
  }
  return margin === undefined || verdict === "test-again" ? "" : `(${margins[margin]})`;
};

const margins: Readonly<Record<Margin, string>> = {
  clear: "clear: nothing near flips it",
  holds: "holds: see what flips it",
  close: "level: your choice",
};

/** The work is needed either way; the money tells only whether now or later. */
const moments: Readonly<Record<Margin, string>> = {
  clear: "clear: nothing near makes it level",
  holds: "holds: see where it is level",
  close: "when: your choice",
};
