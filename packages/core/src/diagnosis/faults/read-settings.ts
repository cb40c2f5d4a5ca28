// settings.csv, words.csv and onset-reports.csv: how readings are weighed, what chances are called, and how well the years
// of a cylinder are told.

import type { Problem } from "../../problem/index.ts";
import type { Bounds, RowView } from "../../record/index.ts";
import { readChances } from "./chances.ts";
import { type FaultSettings, type Faults, type OnsetReports, onsetReports } from "./faults.ts";
import { findingClasses } from "./finding-classes.ts";
import { neededNumber, neededText, partOf, readOrigin } from "./cells.ts";
import { needNames, rowForEach, rowsByName } from "./rows.ts";
import { type SheetTexts, openSheet } from "./sheet.ts";
import { valueForEach } from "./value-for-each.ts";

interface Setting {
  readonly key: keyof FaultSettings;
  /** As it stands in the sheet. */
  readonly name: string;
  readonly bounds: Bounds;
}

const setting = (key: keyof FaultSettings, name: string, least: number, most: number): Setting => ({
  key,
  name,
  bounds: partOf(`the ${name}`, least, most),
});

const settings: readonly Setting[] = [
  setting("repeatability", "repeatability", 0.001, 0.2),
  setting("sharedWeight", "shared weight", 0, 1),
  setting("pairPrior", "gasket pair", 0, 0.3),
  setting("bankRetardedPrior", "bank with late cam", 0, 0.3),
  setting("bankBentPrior", "bank with bent valves", 0, 0.3),
  setting("bankRetardedShare", "share met by late cam", 0, 1),
  setting("bankBentShare", "share met by bent valves", 0, 1),
  setting("baselineDoubt", "doubt of own baseline", 0.005, 0.5),
  setting("makerDoubt", "doubt of maker's figure", 0.005, 0.5),
  setting("estimateDoubt", "doubt of an estimate", 0.005, 0.5),
  setting("oilMost", "most rise by oil", 0, 1),
  setting("leakDoubt", "doubt of a leak", 0.01, 1),
  setting("testerDoubt", "doubt of an unknown tester", 0.01, 1),
  setting("pathWeightLeast", "least weight of a place", 0, 1),
  setting("oddsBand", "band of the odds", 1, 100),
  setting("crankingCap", "cap without looking inside", 0.3, 1),
  setting("twoFaultFactor", "factor of two faults", 0, 100),
  setting("unstableSpread", "spread of unsteady repeats", 0.002, 1),
  setting("stableSpread", "spread of steady repeats", 0.001, 0.5),
  setting("fallEdge", "edge of a fall", 0.1, 0.99),
];

export const readSettings = (texts: SheetTexts, problems: Problem[]): FaultSettings | undefined => {
  const sheet = openSheet(texts, "settings.csv", ["name", "value", "status", "source"], problems);
  if (sheet === undefined) return undefined;
  const names = settings.map(({ name }) => name);
  const values = rowForEach(sheet, "name", names, (row, name) => {
    const bounds = settings.find((one) => one.name === name)?.bounds ?? partOf(name);
    const value = neededNumber(row, "value", bounds);
    return readOrigin(row) !== undefined ? value : undefined;
  });
  if (values === undefined) return undefined;
  const keys = settings.map(({ key }) => key);
  return valueForEach(keys, (key) => values.get(settings.find((one) => one.key === key)?.name ?? ""));
};

export const readWords = (texts: SheetTexts, problems: Problem[]): Faults["words"] | undefined => {
  const sheet = openSheet(texts, "words.csv", ["word", "least", "status", "source"], problems);
  if (sheet === undefined) return undefined;
  const named = rowsByName(
    sheet,
    "word",
    (row) => neededText(row, "word", "probable"),
    (row, word) => {
      const least = neededNumber(row, "least", partOf("the least chance of a word"));
      const origin = readOrigin(row);
      return least === undefined || origin === undefined ? undefined : { least, word, row };
    },
  );
  const words = [...named.rows.values()];
  if (named.views.size === 0) needNames(sheet, "word", ["unlikely"], named);
  if (words.length === sheet.rows.length) noteScale(words);
  return words.map(({ least, word }) => ({ least, word }));
};

/** Words begin lower and lower, the last at 0. */
const noteScale = (words: readonly { readonly least: number; readonly row: RowView }[]): void => {
  for (const [i, { least, row }] of words.entries()) {
    const isLast = i === words.length - 1;
    const above = words[i - 1]?.least ?? Infinity;
    if (isLast && least > 0) row.fault("least", "words-scale", { kind: "last", least });
    else if (least >= above) row.fault("least", "words-scale", { kind: "order", least, above });
  }
};

export const readOnsetReports = (texts: SheetTexts, problems: Problem[]): OnsetReports | undefined => {
  const columns = ["truth", ...onsetReports, "status", "source"];
  const sheet = openSheet(texts, "onset-reports.csv", columns, problems);
  if (sheet === undefined) return undefined;
  const rows = rowForEach(sheet, "truth", findingClasses.onset, (row) => {
    const chances = readChances(row, onsetReports);
    return readOrigin(row) !== undefined ? chances : undefined;
  });
  if (rows === undefined) return undefined;
  return { reports: onsetReports, rows: findingClasses.onset.map((truth) => rows.get(truth) ?? []) };
};
