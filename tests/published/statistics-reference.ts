// Reads a table of data/reference: lines that begin with # are its sources, then a header, then numbers.

import { readFileSync } from "node:fs";

/** The columns of data/reference/NAME.csv by their heading. */
export const referenceColumns = (name: string): Readonly<Record<string, readonly number[]>> => {
  const text = readFileSync(new URL(`../../data/reference/${name}.csv`, import.meta.url), "utf8");
  const [header = "", ...rows] = text.split("\n").filter((line) => line !== "" && !line.startsWith("#"));
  return Object.fromEntries(
    header.split(",").map((heading, column) => [heading, rows.map((row) => Number(row.split(",")[column]))]),
  );
};

/** The columns x and y of a table that has both. */
export const referencePoints = (
  name: string,
): { readonly x: readonly number[]; readonly y: readonly number[] } => {
  const { x = [], y = [] } = referenceColumns(name);
  return { x, y };
};

/** Error as a fraction of the expected value. */
export const relativeError = (value: number | undefined, expected: number): number =>
  value === undefined ? Infinity : Math.abs(value - expected) / Math.abs(expected);
