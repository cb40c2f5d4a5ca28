// One cell of a row of readings: a number, `x` or nothing (not taken), `>300` (needle pegged), `131?` (doubtful).

import type { Facts } from "../problem/index.ts";
import { digitsValue } from "../quantity/index.ts";
import { type Bounds, checkNumber } from "./row-view.ts";
import type { Cell } from "./types.ts";

type Report = <C extends "number-bad" | "number-two-ways" | "number-range">(
  code: C,
  facts: Facts<C>,
) => undefined;

const notTaken: Cell = { kind: "not-taken" };

/** Reads a cell; undefined after a fault was reported.
 *  @param toInner - from the number written to what the row holds (gauge pressure in Pa, or fraction lost) */
export const readReadingCell = (
  text: string,
  bounds: Bounds,
  delimiter: string,
  column: string,
  toInner: (written: number) => number,
  report: Report,
): Cell | undefined => {
  const digits = digitsValue(text);
  if (digits >= bounds.least && digits <= bounds.most)
    return { kind: "reading", value: toInner(digits), doubtful: false, pegged: false, text };
  if (text === "" || text === "-" || text === "?" || text.toLowerCase() === "x") return notTaken;
  const pegged = text.startsWith(">");
  const doubtful = text.endsWith("?");
  const core = text.slice(pegged ? 1 : 0, doubtful ? -1 : undefined).trim();
  if (core === "") return report("number-bad", { column, text, fault: "empty" });
  const value = checkNumber(core, bounds, delimiter, report, column);
  return value === undefined ? undefined : { kind: "reading", value: toInner(value), doubtful, pegged, text };
};

/** The cell as it is written into a file: the digits that were typed. */
export const writeReadingCell = (cell: Cell): string => (cell.kind === "not-taken" ? "x" : cell.text);
