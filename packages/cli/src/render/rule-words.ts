// A rule and its verdict in one short phrase.

import { type PressureUnit, type RuleFinding, type RuleVerdict, writeNumber } from "@sealtrend/core";
import { joined } from "./words.ts";

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
};

const gapWords = {
  "not-taken": ["was not read", "were not read"],
  pegged: ["is off the scale", "are off the scale"],
  doubtful: ["is doubtful", "are doubtful"],
} as const;

/** `lowest/highest 0.87, usual rule 0.75: met`. */
export const ruleLine = (rule: RuleFinding, unit: PressureUnit): string => {
  const { id, verdict, value, limit, holds, formula, gaps } = rule;
  const number = (n: number): string =>
    holds === "pressure" ? `${writeNumber(n, unit)} ${unit}` : n.toFixed(2);
  const whose = id.startsWith("maker")
    ? "maker's limit"
    : id.startsWith("derived")
      ? "limit by the new figure"
      : "usual rule";
  const read = value === undefined ? "" : ` ${number(value)}`;
  const bound = limit === undefined ? "" : ` ${number(limit.value)}`;
  return `${subjects[formula] ?? formula}${read}, ${whose}${bound}: ${verdictWords[verdict]}${gapText(gaps)}`;
};

/** `, 3 was not read`. */
const gapText = (gaps: RuleFinding["gaps"]): string => {
  const [first] = gaps ?? [];
  if (first === undefined) return "";
  const labels = (gaps ?? []).filter(({ gap }) => gap === first.gap).map(({ label }) => label);
  const [one, several] = gapWords[first.gap];
  return `, ${joined(labels)} ${labels.length === 1 ? one : several}`;
};
