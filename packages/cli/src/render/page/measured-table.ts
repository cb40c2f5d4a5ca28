// What was measured of one kind of part as a table: a row a part as it was found, new parts and finished sizes beneath it, and
// room to measure again and to write the finished size.

import type { MeasuredPart, Measurement, Spoilt, TeardownItem } from "@sealtrend/core";
import {
  type MeasuredColumn,
  bracketText,
  fittingColumns,
  measuredColumns,
  valueText,
} from "./measured-columns.ts";
import { measuredHead, measuredNotes } from "./measured-head.ts";
import { verdictCell, verdictText } from "./measured-verdict.ts";
import type { PageCell, PageColumn, PageRow, TableBlock } from "./page-model.ts";
import { left, right } from "./page-tables.ts";
import { kept } from "./page-words.ts";
import { deciding } from "../teardown/teardown-rows.ts";
import { partsName } from "../teardown/teardown-words.ts";
import { sentence } from "../words.ts";

/** The figures of one part, by when they were taken. */
export interface MeasuredSets {
  readonly part: MeasuredPart;
  readonly found: readonly TeardownItem[];
  readonly renewed: readonly TeardownItem[];
  readonly finished: readonly TeardownItem[];
  /** In order. */
  readonly labels: readonly string[];
  readonly spoilt: readonly Spoilt[];
  readonly rows: readonly Measurement[];
}

export interface MeasuredHow {
  /** The value of --units: the shop's own unit stands first. */
  readonly units: string | undefined;
  /** Whether there is room to write by hand. */
  readonly toFillIn: "yes" | "no";
}

/** Cut to a size: each of their places is measured again and finished, beneath its reading. */
const machined: readonly MeasuredPart[] = ["bore", "main", "pin", "housing"];

/** One table, or several where the places are too many for the paper; the last one holds the verdict. */
export const measuredTables = (
  sets: MeasuredSets,
  { units, toFillIn }: MeasuredHow,
): readonly TableBlock[] => {
  const { part, found, renewed, finished, labels } = sets;
  const all = [...found, ...renewed, ...finished];
  const columns = measuredColumns(all, units);
  const judged = all.some(({ standing }) => standing !== undefined) || sets.spoilt.length > 0;
  const fill = toFillIn === "no" ? "nothing" : machined.includes(part) ? "rows" : "columns";
  const kinds = fill === "rows" || renewed.length + finished.length > 0;
  const parts = fittingColumns(columns);
  const notes = measuredNotes(sets.rows);
  return parts.map((own, i) => {
    const isLast = i === parts.length - 1;
    const ends = {
      judged: judged && isLast,
      kinds,
      fill: isLast || fill === "rows" ? fill : "nothing",
    } as const;
    return {
      kind: "table",
      caption:
        i === 0
          ? `${measuredHead(part, all, columns)}${notes === "" ? "" : ` Noted: ${notes}.`}`
          : `${sentence(partsName(part))}, continued.`,
      columns: [
        left(sentence(part)),
        ...(kinds ? [left("Size")] : []),
        ...own.map(({ name }) => right(name)),
        ...(ends.fill === "columns" ? toWrite : []),
        ...(ends.judged ? [left("Verdict")] : []),
      ],
      rows: labels.flatMap((label) => labelRows(label, own, sets, ends)),
    };
  });
};

const toWrite: readonly PageColumn[] = [left("Again"), left("Finished")];

interface Ends {
  readonly judged: boolean;
  readonly kinds: boolean;
  readonly fill: "rows" | "columns" | "nothing";
}

const empty: PageCell = { text: "", role: "blank" };

const labelRows = (
  label: string,
  columns: readonly MeasuredColumn[],
  sets: MeasuredSets,
  { judged, kinds, fill }: Ends,
): readonly PageRow[] => {
  const named = label === "" ? "whole" : kept(label);
  const of = (items: readonly TeardownItem[]): readonly TeardownItem[] =>
    items.filter((one) => (one.label ?? "") === label);
  const [found, renewed, finished] = [of(sets.found), of(sets.renewed), of(sets.finished)];
  const spoilt = sets.spoilt.filter((one) => (one.label ?? "") === label);
  const row = (kind: string, items: readonly TeardownItem[], more: readonly Spoilt[]): PageRow => ({
    cells: [
      named,
      ...(kinds ? [kind] : []),
      ...columns.map((column) => itemCell(items, column)),
      ...(fill === "columns" ? [empty, empty] : []),
      ...(judged ? [verdictCell(verdictText(items, more))] : []),
    ],
  });
  const written = (kind: string): PageRow => ({
    cells: [
      named,
      kind,
      ...columns.map(({ holds }) => (holds === "places" ? empty : "")),
      ...(judged ? [""] : []),
    ],
    use: "to-fill-in",
  });
  const rows = [
    row("found", found, spoilt),
    ...(renewed.length === 0 ? [] : [row("new part", renewed, [])]),
    ...(fill === "rows" ? [written("again")] : []),
    ...(finished.length > 0 ? [row("finished", finished, [])] : fill === "rows" ? [written("finished")] : []),
  ];
  return rows.map((one, i) => (i === 0 ? one : { ...one, joins: "above" }));
};

const itemCell = (items: readonly TeardownItem[], column: MeasuredColumn): string | PageCell => {
  const item = deciding(items.filter((one) => column.items.includes(one)));
  return item === undefined
    ? "-"
    : { text: valueText(item, column.written), second: bracketText(item, column.other) };
};
