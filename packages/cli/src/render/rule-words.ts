// A rule and its verdict in one short phrase.

import {
  type PressureUnit,
  type RuleFinding,
  type RuleVerdict,
  type TesterMatch,
  writeNumber,
} from "@sealtrend/core/parts";
import { fixed, joined, percent } from "./words.ts";

export const verdictWords: Readonly<Record<RuleVerdict, string>> = {
  met: "met",
  near: "near",
  "not-met": "not met",
  "cannot-tell": "cannot tell",
};

const subjects: Readonly<Record<string, string>> = {
  "p / max": "lowest/highest",
  "(max - p) / max": "lowest under highest",
  "max - p": "highest less lowest",
  p: "lowest",
  "(mean - p) / mean": "lowest under the mean",
  "mean - p": "mean less lowest",
  lost: "most lost",
  "mostLost - leastLost": "most less least lost",
};

const gapWords = {
  "not-taken": ["was not read", "were not read"],
  pegged: ["is off the scale", "are off the scale"],
  doubtful: ["is doubtful", "are doubtful"],
} as const;

/** `lowest/highest 0.87, usual rule 0.75: met`. */
export const ruleLine = (rule: RuleFinding, unit: PressureUnit): string => {
  const { id, verdict, value, limit, holds, formula, gaps } = rule;
  if (id === "master")
    return `${value === undefined ? `${rule.cylinder ?? ""} leaks more than` : `largest leak ${percent(value)} of what`} the master allows: ${verdictWords[verdict]}`;
  const number = (n: number): string =>
    holds === "pressure"
      ? `${writeNumber(n, unit)} ${unit}`
      : rule.tester === undefined && limit?.unit !== "%"
        ? n.toFixed(2)
        : percent(n);
  const whose = id.startsWith("maker")
    ? "maker's limit"
    : id.startsWith("derived")
      ? "limit by the new figure"
      : "usual rule";
  const read = value === undefined ? "" : ` ${number(value)}`;
  const bound = limit === undefined ? "" : ` ${number(limit.value)}`;
  return `${subjects[formula] ?? formula}${read}, ${whose}${bound}: ${verdictWords[verdict]}${gapText(gaps)}${testerText(rule, unit)}`;
};

const testerWords: Readonly<Record<TesterMatch, (asked: string) => string>> = {
  "as-read": () => " (as read: it names no tester)",
  matches: () => "",
  another: (asked) => ` (it is for another tester${asked})`,
  unknown: (asked) => ` (it is for one restrictor and supply${asked}, and here they are not known)`,
};

/** What is to be said of the tester a leak-down limit is for. */
const testerText = ({ tester, testerAsked }: RuleFinding, unit: PressureUnit): string => {
  const asked =
    testerAsked === undefined
      ? ""
      : `, ${fixed(testerAsked.restrictor * 1e3, 2)} mm at ${writeNumber(testerAsked.supply, unit)} ${unit}`;
  return tester === undefined ? "" : testerWords[tester](asked);
};

/** `, 3 was not read`. */
const gapText = (gaps: RuleFinding["gaps"]): string => {
  const [first] = gaps ?? [];
  if (first === undefined) return "";
  const labels = (gaps ?? []).filter(({ gap }) => gap === first.gap).map(({ label }) => label);
  const [one, several] = gapWords[first.gap];
  return `, ${joined(labels)} ${labels.length === 1 ? one : several}`;
};
