// tests.csv: further tests, what they cost, and what keeps them from being proposed.

import type { Problem } from "../../problem/index.ts";
import type { RowView } from "../../record/index.ts";
import { type FurtherTest, findingNames, obstacles } from "./faults.ts";
import { neededCode, neededNumber, neededText, partOf, readOrigin, shownText } from "./cells.ts";
import { missingNames, noteLeftOut, rowsByName } from "./rows.ts";
import { type SheetTexts, openSheet } from "./sheet.ts";
import type { ShippedNames } from "./shipped-names.ts";

const risks: readonly FurtherTest["risk"][] = [0, 1, 2];

export const readFurtherTests = (
  texts: SheetTexts,
  shipped: ShippedNames,
  problems: Problem[],
): readonly FurtherTest[] | undefined => {
  const columns = ["code", "finds", "minutes", "risk", "tool", "action", "blocked", "status", "source"];
  const sheet = openSheet(texts, "tests.csv", columns, problems);
  if (sheet === undefined) return undefined;
  const nameOf = (row: RowView): string | undefined => neededCode(row, "code", "borescope");
  const named = rowsByName(sheet, "code", nameOf, readTest);
  const known = shipped.tests.map(({ code }) => code);
  noteLeftOut(sheet, "code", {
    names: missingNames(known, named),
    without: "a test without one is never proposed",
  });
  return [...named.rows.values()];
};

const readTest = (row: RowView, code: string): FurtherTest | undefined => {
  const findings = neededText(row, "finds", "leak + path") && joined(row, "finds", findingNames);
  const minutes = neededNumber(row, "minutes", partOf("the minutes", 1, 1440));
  const risk = readRisk(row);
  const tool = shownText(row, "tool");
  const action = neededText(row, "action", "look at valves and walls");
  const blocked = joined(row, "blocked", obstacles);
  const origin = readOrigin(row);
  if (!findings || minutes === undefined || risk === undefined || tool === undefined) return undefined;
  if (action === undefined || blocked === undefined || origin === undefined) return undefined;
  return { code, findings, minutes, risk, tool, action, blocked, ...origin };
};

const readRisk = (row: RowView): FurtherTest["risk"] | undefined => {
  const words = risks.map(String);
  const word = row.neededWord("risk", words);
  return risks.find((risk) => String(risk) === word);
};

/** Words joined by +; undefined where one is unknown, with the fault noted. */
const joined = <W extends string>(
  row: RowView,
  column: string,
  words: readonly W[],
): readonly W[] | undefined => {
  const parts = row.text(column) === "" ? [] : row.text(column).split("+");
  const read = parts.map((part) => {
    const text = part.trim();
    const word = words.find((one) => one === text.toLowerCase());
    return word ?? row.fault(column, "word-unknown", { column, text, words });
  });
  const known = read.filter((word) => word !== undefined);
  return known.length === parts.length ? known : undefined;
};
