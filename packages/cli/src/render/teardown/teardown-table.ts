// One kind of part as a table: its labels across, a row a figure, the verdicts under those that are not all inside.

import { type Length, type TeardownItem, length } from "@sealtrend/core";
import { prose } from "../prose.ts";
import { type ColumnsOptions, type ColumnsRow, columns, narrow } from "../table.ts";
import { displayWidth } from "../width.ts";
import {
  type Written,
  lengthNumber,
  lengthUnit,
  signedNumber,
  spreadText,
  writtenIn,
} from "./teardown-length.ts";
import { limitValues, limitsText, sourcesOf } from "./teardown-limits.ts";
import type { Block, FigureRow } from "./teardown-rows.ts";
import { type Standing, standingOf, standingWords } from "./teardown-standing.ts";
import { isSigned, partNamed, partsName } from "./teardown-words.ts";

export interface TableOptions {
  readonly width: number;
  /** The value of --units. */
  readonly units: string | undefined;
  /** `figures`: all, without their limits; `rows`: only the rows of which not all is inside; `needed`: of these only the labels
   *  that are not. */
  readonly shown: Shown;
}

export type Shown = "all" | "figures" | "rows" | "needed";

const isFine = (standing: Standing): boolean => standing === "inside" || standing === "no-limit";

/** Lines without line ends. */
export const blockLines = (block: Block, options: TableOptions): readonly string[] => {
  const { shown, width, units } = options;
  const isWhole = shown === "all" || shown === "figures" || block.standing === "no-limit";
  const rows = isWhole ? block.rows : block.rows.filter(({ standing }) => !isFine(standing));
  const labels = isWhole ? block.labels : labelsShown(block.labels, rows, shown);
  const isLone = labels.length === 1 && labels[0] === "";
  const isTable = !isLone && width >= narrow;
  const judged = rows.filter(({ standing }) => standing !== "no-limit");
  const isOnly = isTable && judged.length === 1;
  const lines = isTable
    ? across(
        {
          head: block.part,
          labels,
          rows: rows.flatMap((row) => tableRows(row, labels, { units, isOnly, shown })),
        },
        width,
      )
    : labels.flatMap((label) => labelLines(block, rows, label, options));
  const left = block.labels.filter((label) => !labels.includes(label));
  const bare = left.filter((label) => block.unmeasured.includes(label));
  const fine = left.filter((label) => !bare.includes(label));
  const foot = [
    ...(isTable && judged.length < rows.length ? [bareText(rows, units)] : []),
    ...(isTable ? [...new Set(judged.flatMap(wordsSaid))] : []),
    ...(fine.length === 0 ? [] : [`${leftNamed(block, fine, bare)}: inside, or no limit`]),
    ...(bare.length === 0 ? [] : [`${leftNamed(block, bare, fine)}: not measured`]),
    ...(isOnly || shown === "figures" ? [] : limitsOf(judged)),
  ];
  return [...lines, ...(foot.length === 0 ? [] : prose(foot.join("; "), width, "  "))];
};

/** The labels that have no column; by name where not all of them are alike. */
const leftNamed = ({ part }: Block, own: readonly string[], others: readonly string[]): string =>
  others.length > 0 ? partNamed(part, own) : `the other ${own.length === 1 ? part : partsName(part)}`;

/** What a word under a figure means, where it does not speak for itself. */
const meanings: Readonly<Partial<Record<Standing, string>>> = {
  near: "usable: inside the wear limit, too close to tell as new",
  waits: "waits: no verdict, see check",
};

const wordsSaid = ({ cells }: FigureRow): readonly string[] =>
  [...cells.values()].flatMap((item) => meanings[standingOf(item)] ?? []);

const labelsShown = (
  labels: readonly string[],
  rows: readonly FigureRow[],
  shown: Shown,
): readonly string[] =>
  shown === "rows"
    ? labels
    : labels.filter((label) =>
        rows.some(({ cells }) => {
          const item = cells.get(label);
          return item !== undefined && !isFine(standingOf(item));
        }),
      );

/** `limits: workshop book p. 62`. */
const limitsOf = (rows: readonly FigureRow[]): readonly string[] => {
  const sources = sourcesOf(rows.flatMap(({ cells }) => [...cells.values()]));
  return sources.length === 0 ? [] : [`limits: ${sources.join("; ")}`];
};

/** A column is kept for a mark that no figure here has: seven mains fit beside each other without it. */
const across = (table: Omit<ColumnsOptions, "width">, width: number): readonly string[] => {
  const lines = columns({ ...table, width: width + 1 });
  return lines.every((line) => displayWidth(line) <= width) ? lines : columns({ ...table, width });
};

/** The number, and where not all are inside the verdicts under them. */
const tableRows = (
  row: FigureRow,
  labels: readonly string[],
  {
    units,
    isOnly,
    shown,
  }: { readonly units: string | undefined; readonly isOnly: boolean; readonly shown: Shown },
): readonly ColumnsRow[] => {
  const written = writtenOf(row, units);
  const items = labels.map((label) => row.cells.get(label));
  const cells = items.map((item) => (item === undefined ? undefined : numberOf(item, written)));
  const verdicts = items.map((item) => (item === undefined ? "" : standingWords[standingOf(item)]));
  const isAllInside = items.every((item) => item === undefined || standingOf(item) === "inside");
  const tail = shown === "figures" ? "" : tailOf(row, written, { isAllInside, isOnly });
  const number: ColumnsRow = { name: row.name, unit: written.unit, cells, tail };
  if (isAllInside || row.standing === "no-limit") return [number];
  return [
    { ...number, tail: "" },
    { name: "", cells: verdicts, tail },
  ];
};

/** `± 0.012, wear up to 0.10 (workshop book p. 62)`. */
const tailOf = (
  row: FigureRow,
  written: Written,
  { isAllInside, isOnly }: { readonly isAllInside: boolean; readonly isOnly: boolean },
): string => {
  const items = [...row.cells.values()];
  const limits = items.map((item) => limitsText(item, written)).find((text) => text !== "");
  const spread = `±\u00a0${spreadText(twice(row), written.unit)}`;
  if (limits === undefined) return "";
  const sources = sourcesOf(items);
  const source = sources.length === 0 || !isOnly ? "" : ` (${sources.join("; ")})`;
  return `${spread}, ${isAllInside ? "inside " : ""}${limits}${source}`;
};

/** Below the table, for all rows without a limit: `± 0.0003 in, no limit`. */
const bareText = (rows: readonly FigureRow[], units: string | undefined): string => {
  const bare = rows.filter(({ standing }) => standing === "no-limit");
  const [widest] = bare.toSorted((a, b) => twice(b) - twice(a));
  if (widest === undefined) return "";
  const { unit } = writtenOf(widest, units);
  const names = bare.length === rows.length ? "" : `${bare.map(({ name }) => name).join(", ")}: `;
  return `${names}±\u00a0${spreadText(twice(widest), unit)}\u00a0${unit}, no limit`;
};

/** Twice the standard uncertainty, of the least certain figure of the row. */
const twice = ({ cells }: FigureRow): Length =>
  length(2 * Math.max(...[...cells.values()].map(({ uncertainty }) => uncertainty)));

/** One way to write all figures and limits of a row. */
export const writtenOf = ({ cells }: Pick<FigureRow, "cells">, units: string | undefined): Written => {
  const items = [...cells.values()];
  const unit = lengthUnit(
    units,
    items.map((item) => item.unit),
  );
  const values = items.flatMap((item) => [...readOf(item), ...limitValues(item)]);
  return writtenIn(unit, values);
};

/** Repeats that cannot all be right each by itself, as they are typed: `1.5/15.0`. */
export const numberOf = (item: TeardownItem, written: Written): string =>
  readOf(item)
    .map((value) => (isSigned(item) ? signedNumber(value, written) : lengthNumber(value, written)))
    .join("/");

/** What was read of a figure. */
export const readOf = ({ value, apart }: Pick<TeardownItem, "value" | "apart">): readonly Length[] =>
  apart ?? [value];

/** A label in a sentence of its own: on a narrow screen, and for a part that has no labels. */
const labelLines = (
  { part }: Block,
  rows: readonly FigureRow[],
  label: string,
  { units, width }: TableOptions,
): readonly string[] => {
  const said = rows.flatMap((row) => {
    const item = row.cells.get(label);
    if (item === undefined) return [];
    const written = writtenOf(row, units);
    const word = meanings[standingOf(item)] ?? standingWords[standingOf(item)];
    const limits = limitsText(item, written);
    const verdict = word === "" ? "" : ` ${word}${limits === "" ? "" : ` (${limits})`}`;
    const spread = spreadText(length(2 * item.uncertainty), written.unit);
    return [`${row.name} ${numberOf(item, written)}\u00a0±\u00a0${spread}\u00a0${written.unit}${verdict}`];
  });
  const named = partNamed(part, label === "" ? [] : [label]);
  return prose(`${named}: ${said.length === 0 ? "not measured" : said.join("; ")}`, width);
};
