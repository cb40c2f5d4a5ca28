// The cells of a sheet, with the checks that every sheet shares. Each gives a value or notes a fault at its cell.

import type { Bounds, RowView } from "../../record/index.ts";
import { type FaultStatus, faultStatuses } from "./faults.ts";

/** Characters of the texts that screens show, so that a line stays a line. */
const longest: Readonly<Record<string, number>> = { code: 40, name: 60, word: 30, tool: 40, action: 100 };
const longestElse = 300;

/** What steers a terminal or cannot be seen: controls, format characters, line and paragraph separators. */
const isHidden = (text: string): boolean => /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}\p{Cs}]/u.test(text);

/** The text of a cell, which may be empty. */
export const shownText = (row: RowView, column: string): string | undefined => {
  const text = row.text(column);
  const most = longest[column] ?? longestElse;
  if (isHidden(text)) return row.fault(column, "sheet-text", { column, most, why: "hidden" });
  return text.length > most
    ? row.fault(column, "sheet-text", { column, most, why: "long", length: text.length })
    : text;
};

/** The text of a cell; an empty one is a fault. @param example - what could stand there */
export const neededText = (row: RowView, column: string, example: string): string | undefined => {
  const text = shownText(row, column);
  return text === ""
    ? row.fault(column, "sheet-cell-empty", { column, wanted: `text such as ${example}` })
    : text;
};

/** The name of a row: small letters, digits and hyphens, for it is put together with other words. */
export const neededCode = (row: RowView, column: string, example: string): string | undefined => {
  const text = neededText(row, column, example)?.toLowerCase();
  if (text === undefined || /^[a-z0-9]+(-[a-z0-9]+)*$/.test(text)) return text;
  return row.fault(column, "sheet-code", { column, text, example });
};

/** The number of a cell; an empty one is a fault, and so is x, which elsewhere says that nothing was taken. */
export const neededNumber = (row: RowView, column: string, bounds: Bounds): number | undefined => {
  const text = row.text(column);
  if (text === "") return row.fault(column, "sheet-cell-empty", { column, wanted: fromTo(bounds) });
  if (text.toLowerCase() !== "x") return row.number(column, bounds);
  return row.fault(column, "number-bad", { column, text, fault: "not-a-number", within: bounds });
};

export interface Origin {
  readonly status: FaultStatus;
  readonly source: string;
}

/** How a row is known and where from; both are needed. */
export const readOrigin = (row: RowView): Origin | undefined => {
  const status = row.neededWord("status", faultStatuses);
  const source = neededText(row, "source", "own count of 12 engines");
  return status === undefined || source === undefined ? undefined : { status, source };
};

/** Whether the cell is empty; one that is not is a fault. @param where - `in a row for some` */
export const isEmpty = (row: RowView, column: string, where: string): boolean => {
  const text = row.text(column);
  if (text !== "") row.fault(column, "sheet-cell-spare", { column, text, where });
  return text === "";
};

/** Bounds of a chance or another part of one. */
export const partOf = (of: string, least = 0, most = 1): Bounds => ({
  least,
  most,
  of,
  mend: `write ${fromTo({ least, most })}`,
});

const fromTo = ({ least, most }: Pick<Bounds, "least" | "most">): string =>
  `a number from ${String(least)} to ${String(most)}`;
