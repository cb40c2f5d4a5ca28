// From the options of `enter` to rows of tests.csv, by column name. Nothing is guessed: what is open is a fault.

import { conditionCell, conditionKinds, splitHeard, splitReadings } from "@sealtrend/core/parts";
import type { Args, Fault } from "../../command.ts";
import { kindsGiven } from "./entry-options.ts";
import type { EntryContext, RowValues } from "./entry-context.ts";
import { byLabel, readingRows } from "./entry-readings.ts";
import { gaugeFault, unitFor } from "./entry-unit.ts";
import { usageFault } from "../usage.ts";

export interface EntryRows {
  /** Rows without their test, date and take. */
  readonly rows: readonly RowValues[];
  readonly faults: readonly Fault[];
}

/** Rows for all readings given; conditions stand on the first of them. */
export const entryRows = (args: Args, context: EntryContext): EntryRows => {
  const kinds = kindsGiven(args);
  const lines: readonly (RowValues[] | Fault)[] = [
    ...kinds.flatMap((what) => args.list(what).map((line) => readingRows(what, line, args, context))),
    ...args.list("heard").map((line) => heardRow(line, context)),
    ...args.list("oil").map((line) => oilRow(line, context)),
  ];
  const conditions = conditionCells(args, context);
  const faults = [...lines, ...conditions, gaugeFault(context.gauge, kinds)].filter(isFault);
  const cells = Object.fromEntries(conditions.flatMap((cell) => (isFault(cell) ? [] : Object.entries(cell))));
  const rows = lines.flatMap((line) => (isFault(line) ? [] : line));
  const by = args.text("by") ?? "";
  const note = args.text("note") ?? "";
  return { rows: rows.map((row, i) => ({ by, ...row, ...(i === 0 ? { ...cells, note } : {}) })), faults };
};

const isFault = (one: RowValues | readonly RowValues[] | Fault | undefined): one is Fault =>
  one !== undefined && "severity" in one && "mend" in one;

const heardRow = (line: string, { engine }: EntryContext): RowValues[] | Fault => {
  const cells = splitHeard(line.trim(), engine.cylinders);
  if (cells.length === engine.cylinders.length)
    return [{ what: "heard", ...byLabel(engine.cylinders, cells) }];
  const places = `${String(cells.length)} place${cells.length === 1 ? "" : "s"}`;
  const cylinders = `${String(engine.cylinders.length)} cylinder${engine.cylinders.length === 1 ? "" : "s"}`;
  return usageFault(
    "readings-bad",
    `--heard: ${places} for ${cylinders}`,
    "one a cylinder, x where nobody listened; with places of several words, commas between the cylinders",
    '--heard "exhaust, none, none, oil filler faint"',
  );
};

const oilRow = (line: string, { engine }: EntryContext): RowValues[] | Fault => {
  const split = splitReadings(line.replace(/\s*ml\b/gi, ""), engine.cylinders.length);
  if (split.ok) return [{ what: "oil", ...byLabel(engine.cylinders, split.cells) }];
  const expected = "millilitres put into each cylinder, x where none";
  return usageFault("readings-bad", `--oil: ${split.found}`, expected, '--oil "5 x 5 x"');
};

/** The conditions as cells of the columns that the file has for them. */
const conditionCells = (args: Args, context: EntryContext): (RowValues | Fault)[] =>
  Object.keys(conditionKinds).flatMap((option) => {
    const typed = args.text(option);
    if (typed === undefined) return [];
    const ofTester = option === "regulated" || option === "master";
    const assumed = ofTester ? unitFor("leak-down", args, context) : undefined;
    const cell = conditionCell(option, typed, context.dialect.columns, assumed);
    return [
      cell.ok
        ? { [cell.column]: cell.text }
        : usageFault("condition-bad", cell.found, cell.expected, cell.mend),
    ];
  });
