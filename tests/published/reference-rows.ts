// Reads a table of data/reference whose rows are one value each, with the status of the value beside it.

import { readFileSync } from "node:fs";

/** One row by column name; every cell as it is printed. */
export type ReferenceRow = Readonly<Record<string, string>>;

/** The rows of data/reference/NAME.csv. Lines that begin with # are its sources. */
export const referenceRows = (name: string): readonly ReferenceRow[] => {
  const text = readFileSync(new URL(`../../data/reference/${name}.csv`, import.meta.url), "utf8");
  const [header = "", ...rows] = text.split("\n").filter((line) => line !== "" && !line.startsWith("#"));
  const names = header.split(",");
  return rows.map((row) => Object.fromEntries(row.split(",").map((cell, at) => [names[at] ?? "", cell])));
};

/** Half a unit of the last digit of a number as printed: 0.0005 for 0.943. */
export const halfDigit = (printed: string): number => 0.5 * 10 ** -(printed.split(".")[1] ?? "").length;
