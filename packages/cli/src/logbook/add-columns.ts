// Columns that a table lacks, added at the end of each of its lines; every other byte stays.

import { parseTable } from "@sealtrend/core/parts";

/** The text with these columns behind the others; the same text where it has them all, undefined where its shape has a
 *  fault, so that cells might come to stand in the wrong column. */
export const withColumns = (text: string, wanted: readonly string[]): string | undefined => {
  const { table, problems } = parseTable(text, "");
  const names = table.header.map(({ name }) => name);
  const missing = wanted.filter((name) => !names.includes(name));
  if (missing.length === 0) return text;
  if (names.length === 0 || problems.some(({ severity }) => severity === "error")) return undefined;
  const lines = text.split(/\r\n|\r|\n/);
  const first = lines[table.headerLine - 1] ?? "";
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

/** The names among `wanted` that the first line of a table lacks. */
export const columnsLacking = (text: string, wanted: readonly string[]): readonly string[] => {
  const names = parseTable(text, "").table.header.map(({ name }) => name);
  return wanted.filter((name) => !names.includes(name));
};

/** What is said aloud when columns were added. @param file - as shown */
export const columnsAdded = (file: string, names: readonly string[]): string =>
  `${file} got ${names.length === 1 ? "a column" : "columns"} it lacked, at the end of its lines: ${names.join(", ")}`;
