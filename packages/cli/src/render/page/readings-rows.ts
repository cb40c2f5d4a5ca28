// Every row of readings as it is printed: as read, in the unit of its gauge; in reference air; marked where it does not count or
// was changed afterwards.

import {
  type KindHistory,
  type PressureRow,
  type Test,
  mean,
  trueReading,
  writeNumber,
} from "@sealtrend/core/parts";
import type { PageInput } from "./page-input.ts";
import { kept } from "./page-words.ts";
import { fixed } from "../words.ts";

/** `mean`: one row for all takes of a kind by a gauge, their mean and how many they are. */
export type Takes = "side by side" | "a row each" | "mean";

/** One row of readings, as printed. */
export interface Printed {
  readonly test: Test;
  readonly what: string;
  readonly unit: string;
  readonly read: readonly string[];
  readonly corrected?: { readonly unit: string; readonly cells: readonly string[] };
}

/** Behind a reading that was changed afterwards. */
export const changedMark = "†";

/** @param correct - each take by itself, or the mean of all takes with the last of them */
export const printedRows = (input: PageInput, takes: Takes, correct: "each" | "mean"): readonly Printed[] =>
  input.record.tests.flatMap((test) => {
    const rows = test.rows.toSorted((a, b) => order(a) - order(b) || a.take - b.take);
    const keys = [...new Set(rows.map(keyOf))];
    return keys.flatMap((key) => {
      const all = rows.filter((row) => keyOf(row) === key);
      const sets = takes === "a row each" ? all.map((row) => [row]) : [all];
      return sets.map((own, i) => {
        const isLast = i === sets.length - 1;
        const by = correct === "each" ? own : isLast ? all : [];
        return printed(input, test, { own, all, by, takes });
      });
    });
  });

const keyOf = (row: PressureRow): string => `${row.what} ${row.gauge ?? ""} ${row.unit}`;

const kinds = "dry wet first-stroke running snap-throttle leak-down leak-down-oiled leak-down-lower".split(
  " ",
);
const order = ({ what }: PressureRow): number => kinds.indexOf(what);

interface Rows {
  /** In this row. */
  readonly own: readonly PressureRow[];
  /** All takes of this kind by this gauge. */
  readonly all: readonly PressureRow[];
  /** Those that are corrected in it. */
  readonly by: readonly PressureRow[];
  readonly takes: Takes;
}

const printed = (input: PageInput, test: Test, { own, all, by, takes }: Rows): Printed => {
  const { record, history } = input;
  const [row] = own;
  if (row === undefined) throw new RangeError("printed: no row of readings");
  const [first] = by;
  const corrected =
    first === undefined
      ? undefined
      : row.what === "dry"
        ? dryCells(history.cranking, test, by)
        : row.what === "leak-down"
          ? holeCells(history.leakDown, test, first)
          : undefined;
  const told = [
    `${row.what.replace("-", " ")}${row.gauge === undefined ? "" : ` ${kept(row.gauge)}`}`,
    ...(all.length === 1
      ? []
      : takes === "mean"
        ? [`mean of ${String(all.length)}`]
        : takes === "a row each"
          ? [`take ${String(row.take)}`]
          : []),
    ...(test.setAside === undefined ? [] : [input.form === "text" ? "aside" : "set aside"]),
    ...(/^seller$/i.test(test.by?.trim() ?? "") ? [input.form === "text" ? "seller" : "seller's"] : []),
  ];
  return {
    test,
    what: told.join(", "),
    unit: row.holds === "lost" ? "% lost" : row.unit,
    read: record.engine.cylinders.map((label, i) => {
      const changed = (one: PressureRow): string => (isChanged(input, test, one, label) ? changedMark : "");
      if (takes !== "mean" || own.length === 1)
        return own.map((one) => readText(one, i) + changed(one)).join(" ");
      return meanText(own, i) + (own.some((one) => changed(one) !== "") ? changedMark : "");
    }),
    ...(corrected === undefined ? {} : { corrected }),
  };
};

/** Whether amendments.csv tells of a change of this very reading. */
const isChanged = ({ amendments }: PageInput, test: Test, row: PressureRow, label: string): boolean => {
  const by = row.gauge === undefined ? "" : ` by ${row.gauge}`;
  const name = `${test.id} ${row.what} take ${String(row.take)}${by}`;
  return amendments.some((one) => one.row === name && one.column.toLowerCase() === `c${label}`.toLowerCase());
};

export const readText = (row: PressureRow, place: number): string => {
  const cell = row.cells[place];
  if (cell?.kind !== "reading") return "-";
  return `${cell.pegged ? ">" : ""}${numberText(cell.value, row)}${cell.doubtful ? "?" : ""}`;
};

const numberText = (value: number, row: PressureRow): string =>
  row.holds === "lost" || row.unit === "%"
    ? fixed(value * 100, 0)
    : writeNumber(value, row.unit, placesOf(row));

const readingsAt = (rows: readonly PressureRow[], place: number) =>
  rows.flatMap((row) => {
    const cell = row.cells[place];
    return cell?.kind === "reading" ? [{ ...cell, readsHigh: row.readsHigh }] : [];
  });

const meanText = (rows: readonly PressureRow[], place: number): string => {
  const [first] = rows;
  const read = readingsAt(rows, place);
  if (first === undefined || read.length === 0) return "-";
  const number = numberText(mean(read.map(({ value }) => value)), first);
  return `${read.some(({ pegged }) => pegged) ? ">" : ""}${number}${read.some(({ doubtful }) => doubtful) ? "?" : ""}`;
};

/** Decimals of what was typed. */
const placesOf = ({ cells, unit }: PressureRow): number | undefined => {
  const texts = cells.flatMap((cell) => (cell.kind === "reading" ? [cell.text] : []));
  const typed = Math.max(0, ...texts.map((text) => /[.,](\d+)/.exec(text)?.[1]?.length ?? 0));
  return unit === "%" ? undefined : Math.min(3, typed);
};

/** The mean of the takes, as the history corrects them. */
const dryCells = (
  kind: KindHistory | undefined,
  test: Test,
  rows: readonly PressureRow[],
): Printed["corrected"] => {
  const place = kind?.counted.findIndex((one) => one.test.id === test.id) ?? -1;
  const own = kind?.speeds[place];
  const [first] = rows;
  if (own === undefined || first === undefined || first.unit === "%") return undefined;
  const { unit } = first;
  return {
    unit,
    cells: first.cells.map((_, i) => {
      const read = readingsAt(rows, i);
      if (read.length === 0) return "-";
      const values = read.map(({ value, readsHigh = 0 }) => trueReading(value, readsHigh));
      const value = mean(values) * own.factor * Math.exp(own.lnFactors[i] ?? 0);
      const sign = read.some(({ pegged }) => pegged) ? ">" : "";
      return `${sign}${writeNumber(value, unit, placesOf(first))}${read.some(({ doubtful }) => doubtful) ? "?" : ""}`;
    }),
  };
};

const holeCells = (kind: KindHistory | undefined, test: Test, row: PressureRow): Printed["corrected"] => {
  const place = kind?.counted.findIndex((one) => one.test.id === test.id) ?? -1;
  const holes = kind?.holes[place];
  const counts = kind?.counted[place]?.values.gauge === row.gauge && row.take === 1;
  if (holes === undefined || !counts || holes.every((hole) => hole === undefined)) return undefined;
  const cells = holes.map((one) => {
    if (one === undefined) return "-";
    return one.under === undefined ? fixed(one.hole * 1e3, 2) : `<${fixed(one.under * 1e3, 2)}`;
  });
  return { unit: "mm", cells };
};
