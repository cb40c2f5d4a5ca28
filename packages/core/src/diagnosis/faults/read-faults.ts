// The tables of the diagnosis from their sheets: every fault of every sheet named, and all of the tables or nothing.

import { type Outcome, type Problem, bad, byPlace, good, problem } from "../../problem/index.ts";
import { type Faults, findingNames } from "./faults.ts";
import { noteCauses } from "./cause-rows.ts";
import { notePriorless, readCauses } from "./read-causes.ts";
import { findingSheet, readFindings } from "./read-findings.ts";
import { readOnsetReports, readSettings, readWords } from "./read-settings.ts";
import { readShifts } from "./read-shifts.ts";
import { readSigns } from "./read-signs.ts";
import { readStates } from "./read-states.ts";
import { readFurtherTests } from "./read-tests.ts";
import type { SheetTexts } from "./sheet.ts";
import { shippedFaults, shippedSources } from "./shipped-faults.ts";
import type { ShippedNames } from "./shipped-names.ts";
import { type SourceTitles, withTitles } from "./source-titles.ts";

/** The file names of the sheets; all of them together are the tables. */
export const faultSheets: readonly string[] = [
  "causes.csv",
  "states.csv",
  "shifts.csv",
  "signs.csv",
  "signs-by-cause.csv",
  "tests.csv",
  "findings.csv",
  "bounds.csv",
  ...findingNames.map(findingSheet),
  "onset-reports.csv",
  "words.csv",
  "settings.csv",
];

/** Reads the tables. A sheet has the columns that the shipped one has, in any order; a column `note` is free. Lines that
 *  begin with # at its top are comments; `,` `;` or tab between cells, a decimal point or a decimal comma.
 *  @param sheets - text by file name; the problems name the files by it
 *  @param titles - of published sources, by the keys that the sheets name them by
 *  @param shipped - a slip is told by what these name */
export const readFaults = (
  sheets: SheetTexts,
  titles: SourceTitles = shippedSources(),
  shipped: ShippedNames = shippedFaults(),
): Outcome<Faults> => {
  const problems: Problem[] = Object.keys(sheets)
    .filter((name) => !faultSheets.includes(name))
    .map((name) => problem("sheet-unknown", { name, names: faultSheets }, { file: name }, "caution"));
  const tables = readTables(sheets, shipped, problems);
  const sorted = problems.toSorted(byPlace);
  const isFaulty = sorted.some(({ severity }) => severity === "error");
  return tables === undefined || isFaulty ? bad(sorted) : good(withTitles(tables, titles), sorted);
};

const readTables = (sheets: SheetTexts, shipped: ShippedNames, problems: Problem[]): Faults | undefined => {
  const settings = readSettings(sheets, problems);
  const words = readWords(sheets, problems);
  const onset = readOnsetReports(sheets, problems);
  const tests = readFurtherTests(sheets, shipped, problems);
  const read = readCauses(sheets, shipped, problems);
  if (read === undefined) return undefined;
  const { causes, names } = read;
  const ofEngine = readStates(sheets, { causes: names, shipped }, problems);
  const entries = [...read.shiftable, ...(ofEngine?.names ?? [])];
  const shifts = ofEngine && readShifts(sheets, { entries, causes: names, shipped }, problems);
  const signs = readSigns(sheets, names, problems);
  const findings = readFindings(sheets, names, problems);
  if (ofEngine !== undefined) notePriorless(read, ofEngine.causes);
  noteCauses(names);
  if (!settings || !words || !onset || !tests || !ofEngine || !shifts || !signs || !findings)
    return undefined;
  const { states } = ofEngine;
  return { settings, onset, words, causes, states, findings, signs, shifts, tests };
};
