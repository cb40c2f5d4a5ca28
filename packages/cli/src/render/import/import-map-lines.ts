// How a sheet was read, as a person checks it: a line a part of the map.

import type { GuessedMap, ImportMap, SheetSource } from "@sealtrend/core/parts";
import { wrapText } from "../table.ts";
import { displayWidth, padEnd } from "../width.ts";

const attributes = [
  "engine",
  "date",
  "cylinder",
  "what",
  "unit",
  "take",
  "gauge",
  "meter",
  "by",
  "note",
] as const;

const orders = { ymd: "year first", dmy: "day first", mdy: "month first" } as const;
const separators: Readonly<Record<string, string>> = { ",": "commas", ";": "semicolons", "\t": "tabs" };

const sourceText = (source: SheetSource): string => {
  if ("above" in source) return "in a row of its own above each block";
  if ("fixed" in source) return `${source.fixed} throughout`;
  if ("above" in source) return "in a row above each block";
  const blank = source.fill === true ? ", a blank as the one before" : "";
  return "column" in source ? `column ${source.column}${blank}` : `row ${String(source.headerRow)}${blank}`;
};

interface Line {
  readonly entry: string;
  readonly text: string;
}

const linesOf = (map: ImportMap): readonly Line[] => {
  const { delimiter, decimal, dates, firstRow, lastRow, readings, conditions = {} } = map;
  const { columns } = readings;
  const isOne = columns.length === 1 && !(columns[0] ?? "").includes("-");
  const rows =
    lastRow === undefined ? `from row ${String(firstRow)}` : `rows ${String(firstRow)} to ${String(lastRow)}`;
  const cells = [
    ...(columns.length === 0
      ? ["in no column yet"]
      : [`${isOne ? "column" : "columns"} ${columns.join(", ")}`]),
    rows,
    ...(delimiter === undefined ? [] : [`${separators[delimiter] ?? ""} between the cells`]),
    ...(decimal === undefined ? [] : [`decimal ${decimal === "," ? "comma" : "point"}`]),
  ];
  const order = dates === undefined ? "" : `, ${orders[dates]}`;
  return [
    { entry: "readings", text: cells.join(", ") },
    ...attributes.flatMap((entry) => {
      const source = map[entry];
      if (source === undefined) return [];
      return [{ entry, text: sourceText(source) + (entry === "date" ? order : "") }];
    }),
    ...Object.entries(conditions).map(([entry, source]) => ({ entry, text: sourceText(source) })),
  ];
};

/** @param detail - `why`: with the reason for each part */
export const mapLines = (
  map: ImportMap,
  why: GuessedMap["why"],
  { width, detail }: { readonly width: number; readonly detail: "why" | "short" },
): readonly string[] => {
  const lines = linesOf(map);
  const widest = lines.reduce((most, { entry }) => Math.max(most, displayWidth(entry)), 0);
  const head = (entry: string): string => `  ${padEnd(entry, widest)}  `;
  return [
    "read as",
    ...lines.flatMap(({ entry, text }) => wrapText(text, width, head(entry))),
    ...(detail === "why" && why.length > 0
      ? ["because", ...why.flatMap(({ entry, text }) => wrapText(`${entry}: ${text}`, width, "  "))]
      : []),
  ];
};
