// shifts.csv: what is known of the engine and its past, and what that does to the chances before anything is measured.

import type { Problem } from "../../problem/index.ts";
import type { RowView } from "../../record/index.ts";
import type { CauseNames } from "./cause-rows.ts";
import { neededNumber, partOf, readOrigin } from "./cells.ts";
import { type Shift, circumstances } from "./faults.ts";
import { missingNames, noteLeftOut, rowsByName } from "./rows.ts";
import { type SheetTexts, openSheet } from "./sheet.ts";
import { type ShippedNames, shiftName } from "./shipped-names.ts";

interface Shiftable {
  /** Codes of causes, and states of the engine. */
  readonly entries: readonly string[];
  readonly causes: CauseNames;
  readonly shipped: ShippedNames;
}

/** The shifts; those of what was left out of causes.csv or states.csv shift nothing. */
export const readShifts = (
  texts: SheetTexts,
  { entries, causes, shipped }: Shiftable,
  problems: Problem[],
): readonly Shift[] | undefined => {
  const columns = ["when", "entry", "factor", "odds", "status", "source"];
  const sheet = openSheet(texts, "shifts.csv", columns, problems);
  if (sheet === undefined) return undefined;
  const known = [...entries, ...causes.leftOut];
  const nameOf = (row: RowView): string | undefined => {
    const when = row.neededWord("when", circumstances);
    const entry = entryOf(row, known, causes);
    return when === undefined || entry === undefined ? undefined : shiftName({ when, entry });
  };
  const named = rowsByName(sheet, "entry", nameOf, readShift);
  noteLeftOut(sheet, "entry", {
    names: missingNames(shipped.shifts.map(shiftName), named),
    without: "a circumstance without one shifts nothing",
  });
  return [...named.rows.values()];
};

const entryOf = (row: RowView, known: readonly string[], causes: CauseNames): string | undefined => {
  const entry = row.text("entry").toLowerCase();
  if (known.includes(entry)) return entry;
  const code = entry.replace(/^(?:all|some) /, "");
  const tell = (): void => {
    row.neededWord("entry", known);
  };
  if (code === "" || causes.codes.includes(code) || causes.leftOut.includes(code)) tell();
  else causes.unlisted.push({ code, file: "shifts.csv", tell });
  return undefined;
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
  const odds = row.text("odds");
  if (odds !== "" && row.text("factor") !== "") {
    const where = "beside a factor, and a shift has one of the two";
    return row.fault("odds", "sheet-cell-spare", { column: "odds", text: odds, where, or: "factor" });
  }
  const kind = odds === "" ? "factor" : "odds";
  const value = neededNumber(row, kind, partOf(`the ${kind}`, 0, 100));
  return value === undefined ? undefined : { kind, value };
};
