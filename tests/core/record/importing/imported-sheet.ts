// A sample sheet (invented) through the guess, its questions answered by hints, to tests in short form.

import { readFileSync } from "node:fs";
import {
  type GuessedMap,
  type ImportHints,
  type ImportMap,
  type Imported,
  type ImportedTest,
  guessImportMap,
  importReadings,
  parseSheet,
} from "@sealtrend/core/parts";

export const sampleText = (name: string): string =>
  readFileSync(new URL(`./sheets/${name}.csv`, import.meta.url), "utf8");

export const guessed = (text: string, hints: ImportHints = {}): GuessedMap =>
  guessImportMap(parseSheet(text, "sheet.csv").sheet, hints);

/** @throws TypeError where the map does not go with the sheet */
export const imported = (text: string, map: ImportMap): Imported => {
  const outcome = importReadings(parseSheet(text, "sheet.csv").sheet, map);
  if (!outcome.ok) throw new TypeError(outcome.problems.map(({ found }) => found).join("; "));
  return outcome.value;
};

/** `boat 2026-05-03: dry 1 psi 118,121`. */
export const inShort = ({ engine, date, rows }: ImportedTest): string =>
  `${engine} ${date}: ${rows
    .map(({ what, take, unit, cells }) => `${what} ${String(take)} ${unit} ${cells.join(",")}`)
    .join(" / ")}`;

/** What was left, as `fault D4 number-bad 1`: why, cell or row, code, readings lost. */
export const leftInShort = ({ left }: Imported): readonly string[] =>
  left.map(
    ({ why, row, column = "", readings, problem }) =>
      `${why} ${column}${String(row)} ${problem.code} ${String(readings)}`,
  );

export const openCodes = ({ open }: GuessedMap): readonly string[] => open.map(({ code }) => code);
