// The test gone by where it does not carry the decision: how old it is, and what of its conditions is still to be proved.

import { type DecisionAssessment, dayNumber, daysInYear } from "@sealtrend/core";
import { yearsText } from "./decide-words.ts";
import { counted } from "../words.ts";

/** `The last test is 13 months old`, or what else is wrong with it. */
export const doubtText = ({ speaks, test, today, history }: DecisionAssessment): string => {
  const id = test?.test.id ?? "";
  if (speaks !== "too-old" || test === undefined) return `The test of ${id} is doubtful`;
  const { date } = test.test;
  const years = (dayNumber(today) - dayNumber(date)) / daysInYear;
  if (years < 1)
    return history.record.services.some((service) => service.date > date && service.newBaseline.length > 0)
      ? `The last test, ${id}, was made before the last work`
      : `The last test, ${id}, does not speak for today`;
  const age = years < 2 ? counted(Math.floor(12 * years), "month") : yearsText(years);
  return `The last test is ${age} old`;
};

/** What stands between a low reading and the cylinders. */
export type Proof = "gauge" | "throttle" | "battery" | "cranking speed";

/** Without what is recorded; a diesel has no throttle to open. */
export const toProve = ({ test, history: { record }, today }: DecisionAssessment): readonly Proof[] => {
  const gauge = record.notes.findLast(({ what, date }) => what === "gauge proved" && date <= today);
  const isDiesel = record.engine.ignition === "compression";
  const proofs: readonly (readonly [Proof, boolean])[] = [
    ["gauge", gauge?.value === "yes" && dayNumber(today) - dayNumber(gauge.date) <= 365],
    ["throttle", isDiesel || test?.test.conditions.throttle === "open"],
    ["battery", false],
    ["cranking speed", test?.speed?.from !== undefined],
  ];
  return proofs.flatMap(([proof, isKnown]) => (isKnown ? [] : [proof]));
};
