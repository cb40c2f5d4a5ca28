// A rule and its verdict in one short phrase.

import { type PressureUnit, type RuleFinding, type RuleVerdict, writeNumber } from "@sealtrend/core";

export const verdictWords: Readonly<Record<RuleVerdict, string>> = { met: "met", near: "near", "not-met": "not met", "cannot-tell": "cannot tell" };

const subjects: Readonly<Record<string, string>> = {
  "p / max": "lowest/highest",
  "(max - p) / max": "lowest under highest",
  "max - p": "highest less lowest",
  p: "lowest",
  "(mean - p) / mean": "lowest under the mean",
  "mean - p": "mean less lowest",
};

/** `lowest/highest 0.87, usual rule 0.75 met`. */
export const ruleLine = ({ id, verdict, value, limit, holds, formula }: RuleFinding, unit: PressureUnit): string => {
  const number = (n: number): string => (holds === "pressure" ? `${writeNumber(n, unit)} ${unit}` : n.toFixed(2));
  const whose = id.startsWith("maker") ? "maker's limit" : id.startsWith("derived") ? "limit by the new figure" : "usual rule";
  const read = value === undefined ? "" : ` ${number(value)}`;
  const bound = limit === undefined ? "" : ` ${number(limit.value)}`;
  return `${subjects[formula] ?? formula}${read}, ${whose}${bound} ${verdictWords[verdict]}`;
};
