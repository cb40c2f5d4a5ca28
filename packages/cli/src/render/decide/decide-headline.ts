// The first line of `decide`: the verdict in words of a workshop, and how firm it stands.

import type { DecisionAssessment, Verdict } from "@sealtrend/core";
import { isOpen } from "./decide-words.ts";
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
  const { decision, done } = assessment;
  const said = sentences[decision.verdict];
  if (decision.next.step === "offered-test" && assessment.input.test?.what === "measurement")
    return "Test again: measure it before you decide.";
  if (decision.verdict === "watch-it" && decision.reasons[0] === "limit-too-near")
    return "Measure it, close it up, and watch it.";
  const state = isOpen(assessment) ? "open" : done.length > 0 ? "out" : "inPlace";
  if (decision.basis === "opportunity") return said[`${state}Chance`] ?? said[state];
  if (decision.urgency === "before-further-use")
    return `${said[state].replace(/\.$/, "")} before further use.`;
  return said[state];
};

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

/** Empty where nothing was reckoned that could tip it. */
const firmText = ({ decision }: DecisionAssessment): string => {
  if (decision.basis === "needed")
    return decision.urgency === "not-urgent" ? "(needed, not urgent)" : "(needed)";
  if (decision.margin === undefined || decision.verdict === "test-again") return "";
  return {
    clear: "(clear)",
    holds: "(holds: see what flips it)",
    close: "(level: your choice)",
  }[decision.margin];
};
