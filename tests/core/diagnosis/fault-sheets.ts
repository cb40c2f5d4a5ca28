// The tables of faults as they are shipped, and with a text changed.

import { readFileSync } from "node:fs";
import { type Faults, type Problem, faultSheets, readFaults } from "@sealtrend/core/parts";

export const shipped = Object.fromEntries(
  faultSheets.map((name) => [
    name,
    readFileSync(new URL(`../../../data/faults/${name}`, import.meta.url), "utf8"),
  ]),
);

export const problemsOf = (sheets: Readonly<Record<string, string>>): readonly Problem[] => {
  const outcome = readFaults(sheets);
  return outcome.ok ? outcome.cautions : outcome.problems;
};
export const faultsOf = (sheets: Readonly<Record<string, string>>): Faults => {
  const outcome = readFaults(sheets);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
};

/** The shipped sheets, one of them with a text changed; the text must be there. */
export const changed = (name: string, from: string, to: string): Readonly<Record<string, string>> => {
  const text = shipped[name] ?? "";
  if (!text.includes(from)) throw new Error(`${name} does not hold ${from}`);
  return { ...shipped, [name]: text.replace(from, to) };
};
export const without = (name: string, row: RegExp): Readonly<Record<string, string>> => ({
  ...shipped,
  [name]: (shipped[name] ?? "").replace(row, ""),
});

/** The line of the file on which a text stands, from 1. */
export const lineOf = (name: string, text: string): number => {
  const sheet = shipped[name] ?? "";
  return sheet.slice(0, sheet.indexOf(text)).split("\n").length;
};
