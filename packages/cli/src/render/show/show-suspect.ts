// Which cylinders are only suspect: low once, or by readings that contradict each other.

import { type CylinderAssessment, type TestAssessment, shownTests } from "@sealtrend/core/parts";
import { under } from "./show-lags.ts";
import { count, cylinders as named, joined, percent, theOthers } from "../words.ts";

/** Whether reading again is among the steps below: nothing else asks for it. */
export const isReadAgainNext = ({ nextTests }: TestAssessment): boolean =>
  shownTests(nextTests).some(({ code }) => code === "repeat");

/** Suspect by repeats of which not all are low. */
export const isTorn = ({ standing, dryStanding, repeats, leakDown }: CylinderAssessment): boolean =>
  standing === "suspect" &&
  ((dryStanding === "suspect" && repeats === "contradict") ||
    (leakDown?.standing === "suspect" && leakDown.repeats === "contradict"));

const takesOf = ({ repeats, pressures, leakDown }: CylinderAssessment): string =>
  repeats === "contradict"
    ? `${count(pressures.dry?.readings.length ?? 0)} readings`
    : `${count(leakDown?.takesLost.length ?? 0)} leak-down readings`;

export const contradictionSentence = (torn: readonly CylinderAssessment[]): string => {
  const [first] = torn;
  return first !== undefined && torn.length === 1
    ? `${named([first.label])} is suspect: its ${takesOf(first)} contradict each other. Read it again.`
    : `${named(torn.map(({ label }) => label))} are suspect: the readings of each contradict each other. Read them again.`;
};

/** `Cylinder 3 is suspect: 13 % under the others. Read it again before you believe it.` */
export const suspectSentence = (
  assessment: TestAssessment,
  suspect: readonly CylinderAssessment[],
): string => {
  const [it, is] = suspect.length === 1 ? ["it", "is"] : ["them", "are"];
  const again = isReadAgainNext(assessment) ? ` Read ${it} again before you believe it.` : "";
  const much = muchText(suspect, ` ${theOthers(assessment.cylinders.length)}`);
  return `${named(suspect.map(({ label }) => label))} ${is} suspect${much}.${again}`;
};

/** `; 2 is suspect: 33 % under`, after a sentence on those that lag. */
export const suspectClause = (suspect: readonly CylinderAssessment[]): string =>
  suspect.length === 0
    ? ""
    : `; ${joined(suspect.map(({ label }) => label))} ${suspect.length === 1 ? "is" : "are"} suspect${muchText(suspect, "")}`;

const muchText = (suspect: readonly CylinderAssessment[], whom: string): string => {
  const upTo = suspect.length === 1 ? "" : "up to ";
  const far = Math.max(...suspect.map(under));
  const lost = Math.max(...suspect.map(({ leakDown }) => leakDown?.lost ?? 0));
  const byLeak = suspect.every(({ leakDown }) => leakDown?.standing === "suspect");
  const byDry = far > 0 && (!byLeak || suspect.every(({ dryStanding }) => dryStanding === "suspect"));
  const parts = [
    ...(byDry ? [`${upTo}${percent(far)} under${whom}`] : []),
    ...(byLeak ? [`${upTo}${percent(lost)} lost in the leak-down`] : []),
  ];
  return parts.length === 0 ? "" : `: ${joined(parts)}`;
};
