// What is said of readings that look mistyped: while they can be typed again, and once they are saved.

import { typedLine } from "../../options/quote.ts";
import { clean } from "../../render/clean.ts";
import type { RowValues } from "./entry-context.ts";
import type { Slipped } from "./entry-slips.ts";

/** `cylinder 3, 1310: about ten times the others; did you mean 131? Type 131, or 1310 again`. */
export const slipDoubt = ({ label = "", text, found, meant }: Slipped): string => {
  const typed = clean(text);
  return meant === undefined
    ? `cylinder ${clean(label)}, ${typed}: ${found}; is a digit missing? Type it whole, or ${typed}\u00a0again`
    : `cylinder ${clean(label)}, ${typed}: ${found}; did you mean ${meant}? Type\u00a0${meant}, or ${typed}\u00a0again`;
};

/** `all are less than any engine starts with: is psi right, or is it bar?` */
export const unitDoubt = ({ text, found, meant, isLone }: Slipped): string =>
  `${isLone === true ? "it is" : "all are"} ${found}: is ${text} right${meant === undefined ? "" : `, or is it ${meant}`}?`;

/** `cylinder 3, dry 1310: about ten times the others; did you mean 131?` */
export const slipSaid = ({ label, text, found, meant, isLone }: Slipped, what: string): string => {
  const all = isLone === true ? `the reading of ${what} is` : `all readings of ${what} are`;
  if (label === undefined) return `${all} ${found}: is ${text} right?`;
  return `cylinder ${label}, ${what} ${text}: ${found}; ${meant === undefined ? "is a digit missing?" : `did you mean ${meant}?`}`;
};

/** The command that mends it. @param row - as it was saved  @param test - its name */
export const slipMend = (
  { label, meant = "…" }: Slipped,
  { what = "", take = "1" }: RowValues,
  { id, test }: { readonly id: string; readonly test: string },
): string => {
  const pick = ["--what", what, ...(take === "1" || take === "" ? [] : ["--take", take])];
  const line = typedLine(["amend", id, "--test", test, ...pick]);
  const to = label === undefined ? `--unit ${meant}` : `--cylinder ${label} --to ${meant}`;
  return `${line} ${to} --because mistyped`;
};

/** A line for each, with the command that mends it. @param rows - as they were saved  @param test - its name */
export const slipAsides = (
  slips: readonly Slipped[],
  rows: readonly RowValues[],
  saved: { readonly id: string; readonly test: string },
): readonly string[] =>
  slips.map((slip) => {
    const row = rows[slip.row] ?? {};
    const lead = slip.label === undefined ? "If not" : "If so";
    return `${slipSaid(slip, row.what ?? "")} ${lead}: ${slipMend(slip, row, saved)}`;
  });
