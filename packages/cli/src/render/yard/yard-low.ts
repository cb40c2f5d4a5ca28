// Which cylinders of one engine of a yard are low, and why that is said.

import type { YardRow, YardWorst } from "@sealtrend/core/parts";
import { count, joined } from "../words.ts";

/** More than these are counted, not named. */
const mostNamed = 6;

/** `cylinder 3 lags: below the maker's limit`, a text for each reason; more than two reasons are left to `show`. */
export const lowTexts = (row: YardRow): readonly string[] => {
  const { low = [], worst } = row;
  const reasons = reasonCodes
    .map((code) => ({ code, own: low.filter((one) => reasonOf(one) === code).map(({ label }) => label) }))
    .filter(({ own }) => own.length > 0);
  if (reasons.length > 2)
    return [
      `${namesOf(
        low.map(({ label }) => label),
        row,
      )} low${mostText(low.length, worst)}`,
    ];
  return reasons.map(({ code, own }) => {
    const [verb, because] = words[code](own.length === 1 ? "one" : "several");
    const isWorst = worst !== undefined && own.includes(worst.label);
    const most = isWorst && code !== "nothing" ? mostText(own.length, worst) : "";
    return `${namesOf(own, row)} ${verb}${most}${because === "" ? "" : `: ${because}`}`;
  });
};

/** `cylinder 3`, `cylinders 2 and 5`, `all four`, `nine of 12 cylinders`. */
const namesOf = (labels: readonly string[], { cylinders }: Pick<YardRow, "cylinders">): string => {
  if (labels.length === 1) return `cylinder ${labels.join("")}`;
  if (labels.length === cylinders) return cylinders === 2 ? "both" : `all ${count(cylinders)}`;
  if (labels.length > mostNamed) return `${count(labels.length)} of ${String(cylinders)} cylinders`;
  return `cylinders ${joined(labels)}`;
};

const mostText = (low: number, worst: YardWorst | undefined): string =>
  low === 1 || worst === undefined ? "" : `, ${worst.label} most`;

/** The gravest first. */
const reasonCodes = [
  "nothing",
  "maker-limit",
  "usual-limit",
  "leak-limit",
  "each-low",
  "before",
  "agree",
  "torn",
  "once",
] as const;
type ReasonCode = (typeof reasonCodes)[number];

const reasonOf = (one: YardWorst): ReasonCode => {
  const { standing, held, limitsMissed, flaggedBefore, leak, repeats } = one;
  if (standing === "suspect") return repeats === "contradict" ? "torn" : "once";
  if (held === "nothing" && leak === undefined) return "nothing";
  if (leak?.overLimit === true) return "leak-limit";
  if (leak === undefined && limitsMissed.length > 0)
    return limitsMissed.some((limit) => limit !== "usual-ratio") ? "maker-limit" : "usual-limit";
  if (flaggedBefore) return "before";
  return repeats === "each-low" ? "each-low" : "agree";
};

type Words = (n: "one" | "several") => readonly [verb: string, because: string];

const lags: Readonly<Record<"one" | "several", string>> = { one: "lags", several: "lag" };
const suspect = "suspect";

const words: Readonly<Record<ReasonCode, Words>> = {
  nothing: (n) => [n === "one" ? "holds nothing" : "hold nothing", ""],
  "maker-limit": (n) => [lags[n], "below the maker's limit"],
  "usual-limit": (n) => [lags[n], "below 3/4 of the highest"],
  "leak-limit": (n) => [lags[n], n === "one" ? "it loses more than its limit" : "more lost than the limit"],
  "each-low": (n) => [lags[n], "each reading low, though they lie apart"],
  before: (n) => [lags[n], "flagged in two tests running"],
  agree: (n) => [lags[n], `flagged, and ${n === "one" ? "its" : "their"} repeats agree`],
  torn: (n) => [
    suspect,
    n === "one" ? "its readings contradict each other" : "the readings of each contradict each other",
  ],
  once: (n) => [suspect, `flagged once, repeat ${n === "one" ? "it" : "them"}`],
};
