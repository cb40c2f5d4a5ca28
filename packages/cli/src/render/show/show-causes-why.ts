// The causes in the detail behind `show`: each with its chance before and after the cap, what speaks for it and against it
// and how that is known, and what every test would tell.

import {
  type CauseReason,
  type Diagnosis,
  type TestAssessment,
  isWorthExplaining,
} from "@sealtrend/core/parts";
import { fixed, joined, sentence } from "../words.ts";
import { causeIn, causeText, groupName, groupsTold } from "./cause-words.ts";
import { reasonText } from "./reason-words.ts";

/** Those that are listed. @source handbook/diagnosis.md 5, judgement */
const listed = { least: 0.01, atLeastFirst: 5 } as const;

/** The causes that are told in full. */
export const causesListed = ({ diagnosis }: Pick<TestAssessment, "diagnosis">) =>
  (diagnosis?.causes ?? []).filter(
    ({ probability }, i) => probability >= listed.least || i < listed.atLeastFirst,
  );

/** Paragraphs, not wrapped. */
export const causesWhy = (assessment: TestAssessment): readonly string[] => {
  const { diagnosis, evidence, cylinders } = assessment;
  if (diagnosis === undefined || !isWorthExplaining(assessment)) return [];
  const { groups, states, evenLoss, capped, tests, target } = diagnosis;
  const known = (evidence?.circumstances ?? []).map(({ when }) =>
    when === "gauge changed since the last test" && evidence?.expected?.from === "baseline"
      ? "no gauge named, so perhaps another one than in its first tests"
      : when,
  );
  const groupParts = groupsTold.map((group) => `${groupName(group, assessment)} ${fixed(groups[group], 2)}`);
  const ofEngine = states.filter(({ probability }) => probability >= listed.least);
  return [
    `Causes in ${cylinders[target]?.label ?? ""}, in chances out of 1. All are judgement: how often which fault stands behind which finding was never published.`,
    ...causesListed(assessment).flatMap(({ code, cylinders: places, ...cause }) => [
      `${sentence(causeText(code, places, assessment))}: ${cause.word}, ${fixed(cause.shown, 2)} (${fixed(cause.low, 2)} to ${fixed(cause.high, 2)})${cause.shown < cause.probability ? `, ${fixed(cause.probability, 2)} before the cap: a cranking gauge alone makes no cause surer` : ""}.${reasonsText("For it", cause.for)}${reasonsText("Against it", cause.against)}`,
    ]),
    `By what it would take: ${groupParts.join("; ")}.`,
    ...(ofEngine.length === 0
      ? []
      : [
          `Of the whole engine: ${ofEngine.map((state) => `${stateText(state, assessment)} ${fixed(state.probability, 2)}`).join("; ")}.`,
        ]),
    `${known.length === 0 ? "Nothing known beforehand shifts these chances" : `Shifted beforehand by: ${known.join("; ")}`}${capped ? "; only cranking readings speak" : ""}${expectedText(evidence)}${evenLoss === "cannot be seen" ? "; nothing tells what a sound engine would read, so a loss in all alike cannot be seen" : ""}.`,
    ...(tests.length === 0
      ? []
      : [
          `What tests would tell, in bits, and their effort in minutes (10 for each step of risk, 20 for a tool not owned): ${tests
            .map(({ test, bits, effort }) => `${test.action}: ${fixed(bits, 2)}, ${fixed(effort, 0)}`)
            .join("; ")}.`,
        ]),
  ];
};

/** `worn rings or bore in all`, `slow cranking`, `late cam timing in 2, 4, 6 and 8`. */
const stateText = (
  { id, cause }: Diagnosis["states"][number],
  { faults, record }: TestAssessment,
): string => {
  const [reach, bank] = id.split(" ");
  const where =
    reach === "bank" ? joined(record.engine.banks[Number(bank) - 1] ?? []) : reach === "all" ? "all" : "some";
  return causeIn(cause, where, faults);
};

const expectedFrom = {
  baseline: "its own first tests",
  maker: "the maker's figure for a new engine",
  estimate: "an estimate from its sizes",
} as const;

const expectedText = (evidence: TestAssessment["evidence"]): string =>
  evidence?.expected === undefined
    ? ""
    : `; the level is held against ${expectedFrom[evidence.expected.from]}`;

const reasonsText = (lead: string, reasons: readonly CauseReason[]): string =>
  reasons.length === 0 ? "" : ` ${lead}: ${reasons.map(oneText).join("; ")}.`;

const oneText = (reason: CauseReason): string =>
  `${reasonText(reason)} (${reason.ratio >= 1 ? `${fixed(reason.ratio, 1)} times as likely` : `${fixed(reason.ratio, 2)} times`}; ${reason.link})`;
