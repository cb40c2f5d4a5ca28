// How a sheet was read, as a person checks it: a line a part of the map.

import type { GuessedMap, ImportMap, Imported, SheetSource } from "@sealtrend/core/parts";
import { wrapText } from "../table.ts";
import { displayWidth, padEnd } from "../width.ts";

const attributes = [
  "engine",
  "ignition",
  "date",
  "test",
  "cylinder",
  "what",
  "unit",
  "take",
  "gauge",
  "meter",
  "by",
  "set_aside",
  "note",
] as const;

const orders = { ymd: "year first", dmy: "day first", mdy: "month first" } as const;
const separators: Readonly<Record<string, string>> = { ",": "commas", ";": "semicolons", "\t": "tabs" };

const sourceText = (source: SheetSource): string => {
  if ("above" in source) return "in a row of its own above each block";
  if ("fixed" in source) return `${source.fixed} throughout`;
  const blank = source.fill === true ? ", a blank as the one before" : "";
  return "column" in source ? `column ${source.column}${blank}` : `row ${String(source.headerRow)}${blank}`;
};

type Counts = Imported["counts"] | undefined;

interface Line {
  readonly entry: string;
  readonly text: string;
}

const unitLines = ({ unit }: ImportMap, counts: Counts): readonly Line[] => {
  const own = (counts?.ownUnits ?? []).map((one) => `${String(one.readings)} in ${one.unit}`).join(", ");
  if (unit === undefined)
    return own === "" ? [] : [{ entry: "unit", text: `as each reading names it: ${own}` }];
  return [{ entry: "unit", text: saveFor(unit, own) }];
};

/** A supply that is said of all does not go before the one in a cell such as 74/80. */
const conditionText = (entry: string, source: SheetSource, counts: Counts): string => {
  const own = entry.startsWith("regulated_") ? (counts?.ownSupplies ?? 0) : 0;
  return saveFor(source, own === 0 ? "" : String(own));
};

/** What is said of all readings, and how many name their own. */
const saveFor = (source: SheetSource, own: string): string => {
  const said = sourceText(source);
  return own === ""
    ? said
    : `${said.replace(/ throughout$/, "")}, save for those that name their own: ${own}`;
};

const linesOf = (map: ImportMap, counts: Counts): readonly Line[] => {
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
      if (entry === "unit") return unitLines(map, counts);
      const source = map[entry];
      if (source === undefined) return [];
      return [{ entry, text: sourceText(source) + (entry === "date" ? order : "") }];
    }),
    ...Object.entries(conditions).map(([entry, source]) => ({
      entry,
      text: conditionText(entry, source, counts),
    })),
  ];
};

/** @param detail - `why`: with the reason for each part */
export const mapLines = (
  map: ImportMap,
  why: GuessedMap["why"],
  {
    width,
    detail,
    counts,
  }: {
    readonly width: number;
    readonly detail: "why" | "short";
    /** Of the readings that came in; undefined while a question is open. */
    readonly counts: Counts;
  },
): readonly string[] => {
  const lines = linesOf(map, counts);
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
