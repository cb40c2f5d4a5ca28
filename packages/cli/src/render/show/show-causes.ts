// The likely causes on the screen of `show`: what leads and how surely, what speaks for it that is not said elsewhere, what
// does not fit, and what cannot be seen.

import {
  type Diagnosis,
  type RankedCause,
  type CauseReason,
  type TestAssessment,
  isWorthExplaining,
  shownTests,
} from "@sealtrend/core/parts";
import { joined } from "../words.ts";
import { bandText, causeText, chanceText, groupName, groupsTold } from "./cause-words.ts";
import { alikeText } from "./show-alike.ts";
import { reasonText } from "./reason-words.ts";
import { largeLeakText } from "./show-unexplained.ts";
import { isByLimitAlone } from "./show-lags.ts";

/** From here on a further cause is named. @source handbook/diagnosis.md 5.3, 5.4 (less likely), judgement */
const told = 0.1;

/** A paragraph; empty where there is nothing to explain. */
export const causesText = (assessment: TestAssessment): string => {
  const { diagnosis } = assessment;
  const [first] = diagnosis?.causes ?? [];
  if (diagnosis === undefined || first === undefined || !isWorthExplaining(assessment)) return "";
  if (isEvenWithoutMeasure(assessment, diagnosis))
    return `What ${assessment.cylinders.length === 1 ? "it" : "they"} should read is not known, so no cause can be told: the maker's figure for a new engine, or the compression ratio, would tell.`;
  const answer =
    diagnosis.leads === "group"
      ? groupText(assessment, diagnosis)
      : first.code === "no-fault"
        ? soundText(assessment, diagnosis, first)
        : leadingText(assessment, diagnosis, first);
  return [
    answer,
    ...alikeText(assessment),
    ...twoFaultsText(assessment, diagnosis),
    ...misfitText(assessment, diagnosis),
  ].join(" ");
};

/** Cylinders differ by nature too: that one stands apart for certain does not make it a faulty one. A leak that stands out
 *  is not explained away by that. */
const soundText = (
  assessment: TestAssessment,
  { causes, target, evenLoss }: Diagnosis,
  { shown, low, high }: RankedCause,
): string => {
  const { cylinders } = assessment;
  const { label = "", lowWithoutLeak } = cylinders[target] ?? {};
  const faults = causes.filter(({ code }) => code !== "no-fault" && code !== "none-of-these").slice(0, 2);
  const first = faults.map((cause) => {
    const text = causeText(cause.code, cause.cylinders, assessment);
    return cause.cylinders.join() === String(target) ? withoutPlace(text) : text;
  });
  // what a low reading without a leak calls for is said there
  const orElse = lowWithoutLeak === true ? "" : `; else first ${first.join(", or ")}`;
  const chance = `${chanceText(shown)} (${bandText(low, high)})`;
  const large = largeLeakText(assessment, label, first);
  if (large !== undefined) return large;
  const differ = cylinders.length === 1 ? "" : ", for sound cylinders differ too";
  const blind =
    evenLoss === "can be seen" || lowWithoutLeak === true
      ? ""
      : cylinders.length === 1
        ? " What it should read is not known: the maker's figure, or the compression ratio, would tell."
        : " A loss alike in all would not show: nothing tells what they should read.";
  return `${label} need not have a fault: ${chance} it has none${differ}${orElse}.${blind}`;
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
  const parts = groupsTold
    .filter((group) => groups[group] >= told)
    .toSorted((a, b) => groups[b] - groups[a])
    .map((group) => `${groupName(group, assessment)} ${chanceText(groups[group])}`);
  const first = causes.find(({ code }) => code !== "no-fault");
  if (first === undefined) return "";
  const cause = causeText(first.code, first.cylinders, assessment);
  const isThere = first.cylinders.join() === String(target);
  const where = first.cylinders.length === assessment.cylinders.length ? "" : ` in ${label}`;
  const lead = isUnlisted(first.code) ? "Likeliest is" : "First of all";
  return `No single cause stands out${where}: ${parts.join("; ")}. ${lead} ${isThere ? withoutPlace(cause) : cause}, ${chanceText(first.shown)}.`;
};

/** What is left when all that we know was weighed. */
const isUnlisted = (code: string): boolean => code === "unlisted" || code === "none-of-these";

const twoFaultsText = (assessment: TestAssessment, { twoFaults, target }: Diagnosis): readonly string[] => {
  if (twoFaults === undefined) return [];
  const [one, other] = twoFaults.causes.map((code) => causeText(code, [target], assessment));
  return [`Two faults at once may fit as well: ${one ?? ""}, and ${other ?? ""}.`];
};

/** The step below says what air at a neighbour may mean. */
export const isReIndexNext = ({ nextTests }: Pick<TestAssessment, "nextTests">): boolean =>
  shownTests(nextTests).some(({ code }) => code === "re-index-the-neighbour");

/** That a reading is low, or how it came down, is no contradiction of tests where no fault leads: it is what was to be explained.
 *  Nor is a low reading one where no single cause stands out, nor what leads to the fault that the screen names first. Two tests
 *  contradict each other only where another finding is that of a sound cylinder. */
const misfitText = (
  { cylinders, nextTests, unexplained }: TestAssessment,
  { misfits, causes, leads, target }: Diagnosis,
): readonly string[] => {
  const [leading] = causes;
  const isSound = leading?.code === "no-fault";
  const { label } = cylinders[target] ?? {};
  const isFaultFirst = unexplained.some((one) => one.label === label && one.finding === "leak-heard");
  if (isSound && leads === "cause" && isFaultFirst) return [];
  const isAsked = (finding: CauseReason["finding"]): boolean => finding === "level" || finding === "leak";
  const first = misfits.find(({ finding }) => !((isSound || leads === "group") && isAsked(finding)));
  if (first === undefined || (first.finding === "path" && isReIndexNext({ nextTests }))) return [];
  if (!isSound) return [`It does not fit that ${reasonText(first)}: it may be another.`];
  const isContradicted = leading.for.some(({ finding }) => finding !== first.finding);
  return isContradicted && first.finding !== "onset"
    ? [`It does not fit that ${reasonText(first)}: the tests contradict each other.`]
    : [`It does not fit a sound one that ${reasonText(first)}.`];
};
