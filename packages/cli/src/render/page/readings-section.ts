// Every reading of every test as it was read, in the unit it was read in, beside what it comes to in reference air. A take a
// row; what was set aside or does not count stands in its place and says so.

import { type KindHistory, type Test, mean, trueReading, writeNumber } from "@sealtrend/core";
import type { PageInput } from "./page-input.ts";
import type { PageColumn, PageRow, PageSection, TableBlock, TextBlock } from "./page-model.ts";
import { conditionsOf, conditionsTable, sharedConditions } from "./day-conditions.ts";
import { kept } from "./page-words.ts";
import { fixed } from "../words.ts";

type Row = Test["rows"][number];

/** So many cylinders stand side by side twice, read and corrected; more get a row for each. */
const mostBeside = 6;
/** So many letters of readings fit a row beside the corrected ones. */
const mostSideBySide = 50;
/** So many columns of readings fit a page. */
const mostColumns = 14;

export const readingsSection = (input: PageInput): PageSection => {
  const { record } = input;
  const { tests, engine } = record;
  const shared = sharedConditions(tests);
  const beside = engine.cylinders.length <= mostBeside;
  const common: readonly TextBlock[] =
    shared.length === 0 ? [] : [{ kind: "text", role: "small", text: `In all tests: ${shared.join(", ")}.` }];
  const blocks = beside
    ? [besideTable(input, shared)]
    : [...stackedTables(input), conditionsTable(input, shared)];
  return {
    code: "readings",
    heading: "Every reading",
    blocks: tests.length === 0 ? [{ kind: "text", text: "No test is on record." }] : [...blocks, ...common],
  };
};

/** One row of readings, as printed. */
interface Printed {
  readonly test: Test;
  readonly what: string;
  readonly unit: string;
  readonly read: readonly string[];
  readonly corrected?: { readonly unit: string; readonly cells: readonly string[] };
}

const printedRows = (input: PageInput, takes: "side by side" | "a row each"): readonly Printed[] =>
  input.record.tests.flatMap((test) => {
    const rows = test.rows.toSorted((a, b) => order(a) - order(b) || a.take - b.take);
    const keys = rows.map((row) =>
      takes === "a row each" ? row : `${row.what} ${row.gauge ?? ""} ${row.unit}`,
    );
    return [...new Set(keys)].map((key) => {
      const own = rows.filter((_, i) => keys[i] === key);
      return printed(input, test, own);
    });
  });

const kinds = "dry wet first-stroke running snap-throttle leak-down leak-down-oiled leak-down-lower".split(
  " ",
);
const order = ({ what }: Row): number => kinds.indexOf(what);

/** @param rows - takes of one kind by one gauge */
const printed = ({ record, history }: PageInput, test: Test, rows: readonly Row[]): Printed => {
  const [row] = rows;
  if (row === undefined) throw new RangeError("printed: no row of readings");
  const several =
    test.rows.filter(({ what, gauge }) => what === row.what && gauge === row.gauge).length > rows.length;
  const by = row.gauge === undefined ? "" : ` ${kept(row.gauge)}`;
  const corrected =
    row.what === "dry"
      ? dryCells(history.cranking, test, rows)
      : row.what === "leak-down"
        ? holeCells(history.leakDown, test, row)
        : undefined;
  return {
    test,
    what: `${row.what.replace("-", " ")}${by}${several ? `, take ${String(row.take)}` : ""}`,
    unit: row.holds === "lost" ? "% lost" : row.unit,
    read: record.engine.cylinders.map((_, i) => rows.map((one) => readText(one, i)).join(" ")),
    ...(corrected === undefined ? {} : { corrected }),
  };
};

const readText = (row: Row, place: number): string => {
  const cell = row.cells[place];
  if (cell?.kind !== "reading") return "-";
  const number =
    row.holds === "lost" || row.unit === "%"
      ? fixed(cell.value * 100, 0)
      : writeNumber(cell.value, row.unit, placesOf(row));
  return `${cell.pegged ? ">" : ""}${number}${cell.doubtful ? "?" : ""}`;
};

/** Decimals of what was typed. */
const placesOf = ({ cells, unit }: Row): number | undefined => {
  const texts = cells.flatMap((cell) => (cell.kind === "reading" ? [cell.text] : []));
  const typed = Math.max(0, ...texts.map((text) => /[.,](\d+)/.exec(text)?.[1]?.length ?? 0));
  return unit === "%" ? undefined : Math.min(3, typed);
};

/** The mean of the takes, as the history corrects them. */
const dryCells = (kind: KindHistory | undefined, test: Test, rows: readonly Row[]): Printed["corrected"] => {
  const place = kind?.counted.findIndex((one) => one.test.id === test.id) ?? -1;
  const own = kind?.speeds[place];
  const [first] = rows;
  if (own === undefined || first === undefined || first.unit === "%") return undefined;
  const { unit } = first;
  return {
    unit,
    cells: first.cells.map((_, i) => {
      const read = rows.flatMap(({ cells, readsHigh = 0 }) => {
        const cell = cells[i];
        return cell?.kind === "reading" ? [{ ...cell, value: trueReading(cell.value, readsHigh) }] : [];
      });
      if (read.length === 0) return "-";
      const value = mean(read.map((cell) => cell.value)) * own.factor * Math.exp(own.lnFactors[i] ?? 0);
      const sign = read.some(({ pegged }) => pegged) ? ">" : "";
      return `${sign}${writeNumber(value, unit, placesOf(first))}${read.some(({ doubtful }) => doubtful) ? "?" : ""}`;
    }),
  };
};

const holeCells = (kind: KindHistory | undefined, test: Test, row: Row): Printed["corrected"] => {
  const place = kind?.counted.findIndex((one) => one.test.id === test.id) ?? -1;
  const holes = kind?.holes[place];
  const counts = kind?.counted[place]?.values.gauge === row.gauge && row.take === 1;
  if (holes === undefined || !counts || holes.every((hole) => hole === undefined)) return undefined;
  return { unit: "mm", cells: holes.map((hole) => (hole === undefined ? "-" : fixed(hole.hole * 1e3, 2))) };
};

/** Whether the takes of a test fit one row. */
const takesOf = ({ record: { engine, tests } }: PageInput): "side by side" | "a row each" => {
  const long = tests.flatMap(({ rows }) =>
    rows.map((row) => {
      const takes = rows.filter(({ what, gauge }) => what === row.what && gauge === row.gauge).length;
      return takes * (1 + Math.max(...row.cells.map((_, i) => readText(row, i).length)));
    }),
  );
  return Math.max(0, ...long) * engine.cylinders.length <= mostSideBySide ? "side by side" : "a row each";
};

const besideTable = (input: PageInput, shared: readonly string[]): TableBlock => {
  const takes = takesOf(input);
  const { cylinders } = input.record.engine;
  const group = (name: string): readonly PageColumn[] => [
    ...cylinders.map((label) => ({ name: label, align: "right", group: name }) as const),
    { name: "Unit", align: "left", group: name },
  ];
  const rows = printedRows(input, takes);
  return {
    kind: "table",
    caption: caption(takes),
    columns: [
      { name: "Test", align: "left" },
      { name: "Kind, gauge", align: "left" },
      ...group("As read"),
      ...group("Corrected"),
      { name: "Meter, by whom, conditions", align: "left" },
    ],
    rows: rows.map(({ test, what, unit, read, corrected }, i): PageRow => {
      const joins = rows[i - 1]?.test === test;
      const told = joins ? "" : conditionsOf(input, test, shared);
      return {
        cells: [
          test.id,
          what,
          ...read,
          unit,
          ...(corrected?.cells ?? cylinders.map(() => "")),
          corrected?.unit ?? "",
          told,
        ],
        ...(joins ? { joins: "above" } : {}),
      };
    }),
  };
};

const caption = (takes: "side by side" | "a row each"): string =>
  `As the gauge showed it, ${takes === "side by side" ? "repeats side by side" : "a repeat a row"}; corrected: ${takes === "side by side" ? "their mean" : "the same"} in reference air (of a leak-down: the hole that leaks as much).`;

/** So many tables as the labels need columns. */
const stackedTables = (input: PageInput): readonly TableBlock[] => {
  const { cylinders } = input.record.engine;
  const blocks = Math.ceil(cylinders.length / mostColumns);
  const each = Math.ceil(cylinders.length / blocks);
  const rows = printedRows(input, "a row each");
  return Array.from({ length: blocks }, (_, block) => {
    const labels = cylinders.slice(block * each, (block + 1) * each);
    const own = <T>(list: readonly T[]): readonly T[] => list.slice(block * each, (block + 1) * each);
    return {
      kind: "table",
      caption:
        blocks === 1
          ? caption("a row each")
          : `Cylinders ${labels[0] ?? ""} to ${labels.at(-1) ?? ""}: as read, beneath it in reference air; a take a row.`,
      columns: [
        { name: "Test", align: "left" },
        { name: "Kind, gauge", align: "left" },
        { name: "Unit", align: "left" },
        ...labels.map((label): PageColumn => ({ name: label, align: "right" })),
      ],
      rows: rows.flatMap(({ test, what, unit, read, corrected }, i): readonly PageRow[] => {
        const joins = rows[i - 1]?.test === test ? ({ joins: "above" } as const) : {};
        const first = { cells: [test.id, what, unit, ...own(read)], ...joins };
        return corrected === undefined
          ? [first]
          : [
              first,
              { cells: [test.id, "corrected", corrected.unit, ...own(corrected.cells)], joins: "above" },
            ];
      }),
    };
  });
};
