// How many more tests would show a loss, as sentences.

import type { KindHistory } from "@sealtrend/core";
import { isAlone } from "./history-numbers.ts";
import { count, percent, sentence } from "../words.ts";

interface PlanText {
  /** `a cylinder losing 3 % a year from now on shows after six more tests, one every 13 months (8 chances in 10)` */
  readonly text: string;
  /** `; after five with three readings each`: empty unless sooner. */
  readonly three: string;
}

type Planned = NonNullable<NonNullable<KindHistory["further"]>["whole"]>;

/** Of one cylinder against the others; with two of both alike too, with one of itself. */
export const planText = (kind: KindHistory): PlanText | undefined => {
  const { further } = kind;
  if (further?.one === undefined) return isAlone(kind) ? wholePlan(kind, "it") : undefined;
  const one = written(kind, further.one, `a cylinder ${losing(kind)}`, "");
  const both = kind.result.cylinders.length === 2 ? wholePlan(kind, "both") : undefined;
  if (one === undefined || both === undefined) return one;
  const tests = further.whole?.asNow?.tests ?? further.whole?.ofThree?.tests ?? 0;
  const readings = further.whole?.asNow === undefined ? " with three readings each" : "";
  return {
    text: one.text,
    three: `${one.three}; both alike after ${count(tests)}${readings}${byGauge(kind).replace(",", "")}`,
  };
};

/** Of the whole engine, for the detail: empty with one cylinder or two, whose screen says it. */
export const wholeSentences = (kind: KindHistory): readonly string[] => {
  const { length } = kind.result.cylinders;
  const plan = length > 2 ? wholePlan(kind, `all ${count(length)}`) : undefined;
  return plan === undefined ? [] : [`${sentence(plan.text)}${plan.three}.`];
};

const wholePlan = (kind: KindHistory, who: string): PlanText | undefined => {
  const whole = kind.further?.whole;
  if (whole === undefined) return undefined;
  const what = isAlone(kind) ? `a loss of ${rateOf(kind)}` : `${who} ${losing(kind)} alike`;
  return written(kind, whole, what, byGauge(kind));
};

/** `3 % a year`; of a leak-down what it leaks more. */
const rateOf = (kind: KindHistory): string => `${percent(kind.further?.loss ?? 0)} a year`;

const losing = (kind: KindHistory): string =>
  kind.kind === "dry"
    ? `losing ${rateOf(kind)}`
    : `leaking ${rateOf(kind).replace(" a year", " more a year")}`;

const byGauge = ({ further }: KindHistory): string =>
  further?.whole?.gauge === undefined ? "" : ", by the same gauge";

const written = (
  kind: KindHistory,
  { began, asNow, ofThree }: Planned,
  what: string,
  gauge: string,
): PlanText | undefined => {
  const spacing = kind.further?.spacing ?? 1;
  const since = began === "last-test" ? " from now on" : "";
  const verb = what.startsWith("both") || what.startsWith("all") ? "show" : "shows";
  const text = (tests: number, how: string): string =>
    `${what}${since} ${verb} after ${tests === 1 ? "one more test" : `${count(tests)} more tests`}${how}, ${everyText(spacing)}${gauge} (8 chances in 10)`;
  const three = " with three readings each";
  if (asNow === undefined) return ofThree && { text: text(ofThree.tests, three), three: "" };
  const isSooner = ofThree !== undefined && ofThree.tests < asNow.tests;
  return { text: text(asNow.tests, ""), three: isSooner ? `; after ${count(ofThree.tests)}${three}` : "" };
};

/** `one a year`, `one every 13 months`. */
const everyText = (years: number): string => {
  const months = Math.round(12 * years);
  if (months === 12) return "one a year";
  return months % 12 === 0 ? `one every ${count(months / 12)} years` : `one every ${count(months)} months`;
};
