// The last lines of `history`: what an alarm may be worth, what to measure next to know more, where the chart is.

import type { HistoryAssessment, KindHistory } from "@sealtrend/core";
import { hasDropped } from "./history-sentences.ts";
import { prose } from "../prose.ts";
import { count, percent, sentence } from "../words.ts";

export const closingLines = (
  { record }: HistoryAssessment,
  kind: KindHistory,
  { width }: { readonly width: number },
): string[] => {
  const { result } = kind;
  const full = result.tests.filter(({ use }) => use === "full").length;
  const [worst] = result.cylinders.toSorted(
    (a, b) => b.alarms.length - a.alarms.length || Number(hasDropped(b)) - Number(hasDropped(a)),
  );
  const alarmed = worst !== undefined && worst.alarms.length > 0;
  const many =
    result.manyLooks === "yes" && alarmed
      ? prose("By chance alone about 1 healthy engine in 20 shows such an alarm over so many tests.", width)
      : [];
  const next = nextTexts(kind, full);
  const chart =
    full > 1 && worst !== undefined
      ? prose(`chart of one cylinder: sealtrend history ${record.engine.id} --cylinder ${worst.label}`, width)
      : [];
  return [...many, ...(next.length > 0 ? prose(next.join(" "), width, "next   ") : []), ...chart];
};

const nextTexts = (kind: KindHistory, full: number): readonly string[] => {
  const plan = kind.result.cylinders.some(hasDropped) ? undefined : planText(kind);
  if (full >= 4) return plan === undefined ? [] : [plan.text + plan.three];
  const wanted = full === 3 ? "one more test gives" : `${count(4 - full)} more tests give`;
  const course = `${wanted} a course; read each cylinder three times, that tells most`;
  if (plan === undefined) return [course];
  return [`${course}.`, sentence(plan.text + (plan.sooner ? plan.three : ""))];
};

interface PlanText {
  readonly text: string;
  /** What three readings of each cylinder would change, and whether they do. */
  readonly three: string;
  readonly sooner: boolean;
}

/** `a cylinder losing 3 % a year from now on shows after six more tests, one every 13 months (8 chances in 10)`, `; after
 *  five with three readings each`. */
const planText = ({ kind, further }: KindHistory): PlanText | undefined => {
  if (further === undefined) return undefined;
  const { loss, spacing, began, asNow, ofThree } = further;
  const rate = percent(loss);
  const what = kind === "dry" ? `losing ${rate} a year` : `leaking ${rate} more a year`;
  const since = began === "last-test" ? " from now on" : "";
  const text = (tests: number, how: string): string =>
    `a cylinder ${what}${since} shows after ${tests === 1 ? "one more test" : `${count(tests)} more tests`}${how}, ${everyText(spacing)} (8 chances in 10)`;
  const three = " with three readings each";
  if (asNow === undefined) return ofThree && { text: text(ofThree.tests, three), three: "", sooner: true };
  if (ofThree === undefined) return { text: text(asNow.tests, ""), three: "", sooner: false };
  const sooner = ofThree.tests < asNow.tests;
  const change = sooner ? `; after ${count(ofThree.tests)}${three}` : `; no sooner${three}`;
  return { text: text(asNow.tests, ""), three: change, sooner };
};

/** `one a year`, `one every 13 months`. */
const everyText = (years: number): string => {
  const months = Math.round(12 * years);
  if (months === 12) return "one a year";
  return months % 12 === 0 ? `one every ${count(months / 12)} years` : `one every ${count(months)} months`;
};
