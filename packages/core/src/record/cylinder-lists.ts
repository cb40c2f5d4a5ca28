// Cells that name cylinders: `all`, `none`, or labels separated by spaces.

import type { RowView } from "./row-view.ts";

/** The labels a cell names; the default where it is empty. */
export const cylindersIn = (
  row: RowView,
  column: string,
  labels: readonly string[],
  otherwise: readonly string[],
): readonly string[] => {
  const text = row.text(column);
  if (text === "") return otherwise;
  if (text.toLowerCase() === "all") return labels;
  if (text.toLowerCase() === "none") return [];
  const named = text.split(/[\s,;+]+/).filter((label) => label !== "");
  if (named.every((label) => labels.includes(label))) return labels.filter((label) => named.includes(label));
  row.fault(column, "cylinders-bad", { text, labels });
  return otherwise;
};
