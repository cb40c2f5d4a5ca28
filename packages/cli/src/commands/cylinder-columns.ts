// tests.csv when the cylinders of an engine change: it needs a column for each of them.

import { cylinderColumn, engineHeaders, parseTable } from "@sealtrend/core/parts";
import { withColumns } from "../logbook/add-columns.ts";

/** Whether any row is recorded: then no cylinder may lose its name. */
export const holdsRows = (text: string): boolean => parseTable(text, "").table.rows.length > 0;

/** The text with a column for every label: the new ones go at the end of each line; a file without rows that still has
 *  its first header gets a new one. Every other byte stays; undefined where the shape of the file has a fault. */
export const withCylinderColumns = (
  text: string,
  before: readonly string[],
  labels: readonly string[],
): string | undefined => {
  const { table } = parseTable(text, "");
  const names = table.header.map(({ name }) => name);
  const missing = labels.map(cylinderColumn).filter((name) => !names.includes(name));
  const header = names.join(table.delimiter);
  const own = engineHeaders(before)["tests.csv"] ?? "";
  if (table.rows.length === 0 && header === own)
    return text.replace(own, engineHeaders(labels)["tests.csv"] ?? own);
  return withColumns(text, missing);
};
