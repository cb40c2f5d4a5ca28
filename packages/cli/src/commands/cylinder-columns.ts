// tests.csv when the cylinders of an engine change: it needs a column for each of them.

import { cylinderColumn, engineHeaders, parseTable } from "@sealtrend/core";

/** Whether any row is recorded: then no cylinder may lose its name. */
export const holdsRows = (text: string): boolean => parseTable(text, "").table.rows.length > 0;

/** The text with a column for every label: the new ones go at the end of each line; a file without rows that still has
 *  its first header gets a new one. Every other byte stays. */
export const withCylinderColumns = (
  text: string,
  before: readonly string[],
  labels: readonly string[],
): string => {
  const { table } = parseTable(text, "");
  const names = table.header.map(({ name }) => name);
  const missing = labels.map(cylinderColumn).filter((name) => !names.includes(name));
  const header = names.join(table.delimiter);
  const own = engineHeaders(before)["tests.csv"] ?? "";
  if (table.rows.length === 0 && header === own)
    return text.replace(own, engineHeaders(labels)["tests.csv"] ?? own);
  if (missing.length === 0) return text;
  const first = text.split(/\r\n|\r|\n/)[table.headerLine - 1] ?? "";
  const start = text.indexOf(first);
  const shift = /^sep=.(?=\r?\n|\r)/i.test(text) ? 5 : 0;
  const ends = table.rows.map((row) => ({
    at: shift + row.offset + row.raw.length,
    added: table.delimiter.repeat(Math.max(0, names.length - row.cells.length) + missing.length),
  }));
  const added = [
    { at: start + first.length, added: missing.map((name) => table.delimiter + name).join("") },
    ...ends,
  ];
  return added.reduceRight((rest, one) => rest.slice(0, one.at) + one.added + rest.slice(one.at), text);
};
