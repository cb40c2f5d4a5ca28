// shifts.csv: what is known of the engine and its past, and what that does to the chances before anything is measured.

import type { Problem } from "../../problem/index.ts";
import type { RowView } from "../../record/index.ts";
import { type Shift, circumstances } from "./faults.ts";
import {
  type SheetTexts,
  isEmpty,
  neededNumber,
  openSheet,
  partOf,
  readOrigin,
  rowsByName,
} from "./sheet.ts";

/** @param entries - what can be shifted: codes of causes, and states of the engine */
export const readShifts = (
  texts: SheetTexts,
  entries: readonly string[],
  problems: Problem[],
): readonly Shift[] | undefined => {
  const columns = ["when", "entry", "factor", "odds", "status", "source"];
  const sheet = openSheet(texts, "shifts.csv", columns, problems);
  if (sheet === undefined) return undefined;
  const nameOf = (row: RowView): string | undefined => {
    const when = row.neededWord("when", circumstances);
    const entry = row.neededWord("entry", entries);
    return when === undefined || entry === undefined ? undefined : `${when}: ${entry}`;
  };
  return [...rowsByName(sheet, "entry", nameOf, readShift).rows.values()];
};

const readShift = (row: RowView): Shift | undefined => {
  const when = circumstances.find((word) => word === row.text("when").toLowerCase());
  const entry = row.text("entry").toLowerCase();
  const origin = readOrigin(row);
  const by = readBy(row);
  return when === undefined || by === undefined || origin === undefined
    ? undefined
    : { when, entry, by, ...origin };
};

const readBy = (row: RowView): Shift["by"] | undefined => {
  if (row.text("odds") === "") {
    const value = neededNumber(row, "factor", partOf("a factor", 0, 100));
    return value === undefined ? undefined : { kind: "factor", value };
  }
  const value = neededNumber(row, "odds", partOf("the odds", 0, 100));
  const isAlone = isEmpty(row, "factor", "beside odds, which stand in the place of the prior");
  return value === undefined || !isAlone ? undefined : { kind: "odds", value };
};
