// The likely causes on the screen of `show`: what leads and how surely, what speaks for it that is not said elsewhere, what
// does not fit, and what cannot be seen.

import {
  type Diagnosis,
  type RankedCause,
  type CauseReason,
  type TestAssessment,
  isWorthExplaining,
} from "@sealtrend/core";
import { joined } from "../words.ts";
import { bandText, causeText, chanceText, groupNames } from "./cause-words.ts";
import { reasonText } from "./reason-words.ts";
import { isByLimitAlone } from "./show-lags.ts";

/** From here on a further cause is named. @source handbook/diagnosis.md 5.3, 5.4 (less likely), judgement */
const told = 0.1;

/** A paragraph; empty where there is nothing to explain. */
export const causesText = (assessment: TestAssessment): string => {
  const { diagnosis } = assessment;
  const [first] = diagnosis?.causes ?? [];
  if (diagnosis === undefined || first === undefined || !isWorthExplaining(assessment)) return "";
  if (isEvenWithoutMeasure(assessment, diagnosis))
    return "What they should read is not known, so no cause can be told: the maker's figure for a new engine, or the compression ratio, would tell.";
  const answer =
    diagnosis.leads === "group"
      ? groupText(assessment, diagnosis)
      : first.code === "no-fault"
        ? soundText(assessment, diagnosis, first)
        : leadingText(assessment, diagnosis, first);
  return [answer, ...twoFaultsText(assessment, diagnosis), ...misfitText(diagnosis)].join(" ");
};

/** Cylinders differ by nature too: that one stands apart for certain does not make it a faulty one. */
const soundText = (
  assessment: TestAssessment,
  { causes, target, evenLoss }: Diagnosis,
  { shown, low, high }: RankedCause,
): string => {
  const label = assessment.cylinders[target]?.label ?? "";
  const faults = causes.filter(({ code }) => code !== "no-fault" && code !== "none-of-these").slice(0, 2);
  const first = faults.map(({ code, cylinders }) => {
    const text = causeText(code, cylinders, assessment);
    return cylinders.join() === String(target) ? withoutPlace(text) : text;
  });
  const blind =
    evenLoss === "cannot be seen"
      ? " A loss alike in all would not show: nothing tells what they should read."
      : "";
  return `${label} need not have a fault: ${chanceText(shown)} (${bandText(low, high)}) it has none, for sound cylinders differ too; else first ${first.join(", or ")}.${blind}`;
};

/** All low alike by a limit, and nothing else to go by. */
const isEvenWithoutMeasure = ({ cylinders }: TestAssessment, { causes, evenLoss }: Diagnosis): boolean => {
  const low = cylinders.filter(({ standing }) => standing === "lagging" || standing === "suspect");
  return (
    evenLoss === "cannot be seen" &&
    causes[0]?.code === "no-fault" &&
    low.length > 0 &&
    low.every(isByLimitAlone)
  );
};

const leadingText = (assessment: TestAssessment, diagnosis: Diagnosis, first: RankedCause): string => {
  const { code, cylinders, shown, low, high, word } = first;
  const lead = `Most likely ${causeText(code, cylinders, assessment)}: ${word}, ${chanceText(shown)} (${bandText(low, high)})`;
  const others = diagnosis.causes
    .filter((cause) => cause !== first && cause.shown >= told)
    .slice(0, 2)
    .map((cause) => {
      const text = causeText(cause.code, cause.cylinders, assessment);
      const isThere = cause.cylinders.join() === cylinders.join();
      return `${isThere ? withoutPlace(text) : text} ${chanceText(cause.shown)}`;
    });
  return `${[`${lead}${becauseText(first)}`, ...others].join("; ")}.`;
};

/** A place that was named before it. */
const withoutPlace = (text: string): string => text.replace(/,? (?:in|at|of) [^ ]+(?: and [^ ]+)?$/, "");

/** Findings that have a sentence of their own on this screen, or are its first one. */
const elsewhere = new Set<CauseReason["finding"]>(["level", "wet", "first-stroke", "leak", "oiled", "lower"]);

const becauseText = ({ for: pro, against }: RankedCause): string => {
  const said = (reasons: readonly CauseReason[]): readonly string[] =>
    reasons
      .filter(({ finding }) => !elsewhere.has(finding))
      .slice(0, 2)
      .map(reasonText);
  const [speaks, contradicts] = [said(pro), said(against)];
  return [
    ...(speaks.length === 0 ? [] : [`, for ${joined(speaks)}`]),
    ...(contradicts.length === 0 ? [] : [`, though ${joined(contradicts)}`]),
  ].join("");
};

/** Whether where the air goes is said as a reason of the leading cause. */
export const isAirSaid = (assessment: TestAssessment, label: string): boolean => {
  const { diagnosis, cylinders } = assessment;
  const [first] = diagnosis?.causes ?? [];
  return (
    diagnosis?.leads === "cause" &&
    isWorthExplaining(assessment) &&
    cylinders[diagnosis.target]?.label === label &&
    (first?.for.filter(({ finding }) => !elsewhere.has(finding)).slice(0, 2) ?? []).some(
      ({ finding }) => finding === "path",
    )
  );
};

const groupText = (assessment: TestAssessment, { groups, target, causes }: Diagnosis): string => {
  const label = assessment.cylinders[target]?.label ?? "";
  const ranked = ([...Object.entries(groups)] as const)
    .toSorted(([, a], [, b]) => b - a)
    .filter(([, chance]) => chance >= told);
  const parts = ranked.map(([group, chance]) => `${nameOf(group)} ${chanceText(chance)}`);
  const first = causes.find(({ code }) => code !== "no-fault");
  if (first === undefined) return "";
  const cause = causeText(first.code, first.cylinders, assessment);
  const isThere = first.cylinders.join() === String(target);
  return `No single cause stands out in ${label}: ${parts.join("; ")}. First of all ${isThere ? withoutPlace(cause) : cause}, ${chanceText(first.shown)}.`;
};

const nameOf = (group: string): string =>
  Object.entries(groupNames).find(([name]) => name === group)?.[1] ?? group;

const twoFaultsText = (assessment: TestAssessment, { twoFaults, target }: Diagnosis): readonly string[] => {
  if (twoFaults === undefined) return [];
  const [one, other] = twoFaults.causes.map((code) => causeText(code, [target], assessment));
  return [`Two faults at once may fit as well: ${one ?? ""}, and ${other ?? ""}.`];
};

/** That a reading is low is no contradiction where no fault leads: it is what was to be explained. */
const misfitText = ({ misfits, causes }: Diagnosis): readonly string[] => {
  const isSound = causes[0]?.code === "no-fault";
  const first = misfits.find(({ finding }) => !(isSound && (finding === "level" || finding === "leak")));
  if (first === undefined) return [];
  const why = isSound ? "the tests contradict each other" : "it may be another";
  return [`It does not fit that ${reasonText(first)}: ${why}.`];
};
