// Every reading of every test as it was read, in the unit it was read in, beside what it comes to in reference air. A take a
// row; what was set aside or does not count stands in its place and says so.

import type { PageInput } from "./page-input.ts";
import type { PageColumn, PageRow, PageSection, TableBlock, TextBlock } from "./page-model.ts";
import { conditionsOf, conditionsTable, sharedConditions } from "./day-conditions.ts";
import { left, right } from "./page-tables.ts";
import { type Printed, type Takes, changedMark, printedRows, readText } from "./readings-rows.ts";

/** So many cylinders stand side by side twice, read and corrected; more get a row for each. */
const mostBeside = 6;
/** So many letters of readings fit a row beside the corrected ones. */
const mostSideBySide = 50;
/** So many columns of readings fit a page. */
const mostColumns = 14;
/** From so many readings on a page for others holds the mean of the takes, so that it can still be sent. */
const mostReadings = 4000;

export const readingsSection = (input: PageInput): PageSection => {
  const { tests, engine } = input.record;
  const shared = sharedConditions(input);
  const takes = takesOf(input);
  const isBeside = engine.cylinders.length <= mostBeside;
  const rows = printedRows(input, takes, isBeside ? "each" : "mean");
  const isChanged = rows.some(({ read }) => read.some((text) => text.includes(changedMark)));
  const below = [
    ...(shared.length === 0 ? [] : [`In all tests: ${shared.join(", ")}.`]),
    ...(isChanged
      ? [
          `${changedMark} changed afterwards: what it was and why stands under "Changed or set aside afterwards".`,
        ]
      : []),
  ].map((text): TextBlock => ({ kind: "text", role: "small", text }));
  const blocks = isBeside
    ? [besideTable(input, { rows, takes, shared })]
    : [...stackedTables(input, { rows, takes }), conditionsTable(input, shared)];
  return {
    code: "readings",
    heading: takes === "mean" ? "Every test" : "Every reading",
    blocks: tests.length === 0 ? [{ kind: "text", text: "No test is on record." }] : [...blocks, ...below],
  };
};

/** Whether the takes of a test fit one row; in a message they stand beneath each other, where an eye can follow them. */
const takesOf = ({ record: { engine, tests }, form, reader }: PageInput): Takes => {
  const all = tests.flatMap(({ rows }) => rows);
  const readings = all.reduce(
    (so, { cells }) => so + cells.filter(({ kind }) => kind === "reading").length,
    0,
  );
  if (reader === "others" && readings > mostReadings) return "mean";
  if (form === "text" || engine.cylinders.length > mostBeside) return "a row each";
  const long = tests.flatMap(({ rows }) =>
    rows.map((row) => {
      const takes = rows.filter(({ what, gauge }) => what === row.what && gauge === row.gauge).length;
      return takes * (1 + Math.max(...row.cells.map((_, i) => readText(row, i).length)));
    }),
  );
  return Math.max(0, ...long) * engine.cylinders.length <= mostSideBySide ? "side by side" : "a row each";
};

const rowsAre: Readonly<Record<Takes, string>> = {
  "side by side": "repeats side by side",
  "a row each": "a repeat a row",
  mean: "of repeats their mean, so that the page stays small enough to send: each of them is in the owner's logbook",
};
const correctedIs: Readonly<Record<Takes, string>> = {
  "side by side": "their mean",
  "a row each": "the same",
  mean: "their mean",
};

const caption = (takes: Takes): string =>
  `As the gauge showed it, ${rowsAre[takes]}; corrected: ${correctedIs[takes]} in reference air (of a leak-down: the hole that leaks as much).`;

interface Told {
  readonly rows: readonly Printed[];
  readonly takes: Takes;
}

const besideTable = (
  input: PageInput,
  { rows, takes, shared }: Told & { readonly shared: readonly string[] },
): TableBlock => {
  const { cylinders } = input.record.engine;
  const group = (name: string): readonly PageColumn[] => [
    ...cylinders.map((label) => ({ ...right(label), group: name })),
    { ...left("Unit"), group: name },
  ];
  return {
    kind: "table",
    caption: caption(takes),
    columns: [
      left("Test"),
      left("Kind, gauge"),
      ...group("As read"),
      ...group("Corrected"),
      left("Meter, by whom, conditions"),
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
          ...(corrected?.cells ?? cylinders.map(() => "-")),
          corrected?.unit ?? "-",
          told,
        ],
        ...(joins ? { joins: "above" } : {}),
      };
    }),
  };
};

/** So many tables as the labels need columns. */
const stackedTables = (input: PageInput, { rows, takes }: Told): readonly TableBlock[] => {
  const { cylinders } = input.record.engine;
  const blocks = Math.ceil(cylinders.length / mostColumns);
  const each = Math.ceil(cylinders.length / blocks);
  return Array.from({ length: blocks }, (_, block) => {
    const labels = cylinders.slice(block * each, (block + 1) * each);
    const own = <T>(list: readonly T[]): readonly T[] => list.slice(block * each, (block + 1) * each);
    return {
      kind: "table",
      caption:
        blocks === 1
          ? caption(takes)
          : `Cylinders ${labels[0] ?? ""} to ${labels.at(-1) ?? ""}: as read, ${rowsAre[takes]}; beneath it their mean in reference air.`,
      columns: [left("Test"), left("Kind, gauge"), left("Unit"), ...labels.map(right)],
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
