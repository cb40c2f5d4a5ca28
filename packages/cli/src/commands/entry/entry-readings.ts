// A line of readings as it was typed, as rows of tests.csv; a leak-down pair `74/80` leaves its supply in a condition,
// or in a row of its own where cylinders differ.

import {
  type LeakPair,
  type UnitName,
  conditionCell,
  cylinderColumn,
  plainNumber,
  splitLeakReadings,
  splitReadings,
} from "@sealtrend/core/parts";
import type { Args, Fault } from "../../command.ts";
import { quoted, typedLine } from "../../options/quote.ts";
import type { EntryContext, RowValues } from "./entry-context.ts";
import { fitsGauge, isLeak, namesFor, unitFor } from "./entry-unit.ts";
import { usageFault } from "../usage.ts";

const unitAfter = /([\dxX?])\s*(psi|kpa|bar|mpa|kgf\/cm2|%)(?=$|[\s;,/])/gi;

/** A line without the unit that stands behind its readings, once or behind each; undefined where they differ. */
export const unitApart = (
  line: string,
): { readonly bare: string; readonly inLine: string | undefined } | undefined => {
  const units = [...line.matchAll(unitAfter)].map(([, , unit = ""]) => unit.toLowerCase());
  if (new Set(units).size > 1) return undefined;
  return { bare: line.replace(unitAfter, "$1"), inLine: units[0] };
};

/** The rows of one line, or the fault in it. @param what - the kind of reading, as in tests.csv */
export const readingRows = (
  what: string,
  line: string,
  args: Args,
  context: EntryContext,
): RowValues[] | Fault => {
  const apart = unitApart(line.trim());
  if (apart === undefined)
    return usageFault(
      "readings-bad",
      `--${what}: two units in "${line}"`,
      "one unit for all readings",
      "give each unit a line of its own, or turn them into one",
    );
  const { bare, inLine } = apart;
  const { engine, gauge } = context;
  const cells = cellsOf(what, bare, engine.cylinders.length);
  if ("code" in cells) return cells;
  const unit = unitFor(what, args, { gauge, inLine });
  if (unit === undefined) return unitOpen(what, bare, context);
  const name = fitsGauge(what, gauge) ? (args.text("gauge") ?? "") : "";
  const held = cells.map((cell) => cell.held);
  return withSupply({ what, unit, gauge: name, ...byLabel(engine.cylinders, held) }, cells, {
    args,
    context,
    unit,
  });
};

/** Cells under the columns of their cylinders, decimals with a point. */
export const byLabel = (labels: readonly string[], cells: readonly string[]): RowValues =>
  Object.fromEntries(
    labels.map((label, i) => [cylinderColumn(label), plainNumber((cells[i] ?? "x").replace(/^[-?X]$/, "x"))]),
  );

const cellsOf = (what: string, line: string, count: number): readonly LeakPair[] | Fault => {
  const split = isLeak(what) ? splitLeakReadings(line, count) : splitReadings(line, count);
  if (split.ok) return split.cells.map((cell) => (typeof cell === "string" ? { held: cell } : cell));
  const expected = count === 1 ? "one reading" : `${String(count)} readings, one a cylinder`;
  return usageFault("readings-bad", `--${what}: ${split.found}`, expected, split.mend);
};

const unitOpen = (what: string, line: string, { gauges, gauge, test }: EntryContext): Fault => {
  const names = gauge === undefined ? namesFor(what, gauges, test) : [];
  const add = ["gauge", "add", freeGauge(gauges), "--kind", isLeak(what) ? "leak-down" : "compression"];
  const way =
    names.length === 0
      ? `name a gauge whose unit is known: ${typedLine([...add, "--unit", "psi"])}`
      : `the gauge that was used: ${names.map((name) => `--gauge ${quoted(name)}`).join(" or ")}`;
  const mend = `add --unit psi (or kPa, bar, MPa, kgf/cm2), or ${way}`;
  return usageFault("unit-open", `--${what} ${line}: in which unit?`, "the unit of the gauge", mend);
};

/** A name for an example that no gauge has yet. */
const freeGauge = (gauges: EntryContext["gauges"]): string =>
  ["red", "blue", "shop", "new"].find((name) => gauges.every(({ id }) => id !== name)) ?? "my-gauge";

const withSupply = (
  row: RowValues,
  cells: readonly LeakPair[],
  {
    args,
    context,
    unit,
  }: { readonly args: Args; readonly context: EntryContext; readonly unit: UnitName | "%" },
): RowValues[] | Fault => {
  const supplies = [...new Set(cells.flatMap(({ supply }) => supply ?? []))];
  const [supply] = supplies;
  if (supply === undefined) return [row];
  const typed = `--${row.what ?? ""}`;
  if (unit === "%")
    return usageFault(
      "unit-open",
      `${typed}: pairs are pressures, not percent`,
      "psi, kPa, bar, MPa or kgf/cm2",
      "add --unit psi",
    );
  if (args.text("regulated") !== undefined)
    return usageFault(
      "supply-twice",
      `${typed} has its supply in the pairs, and --regulated too`,
      "the supply once",
      "leave --regulated out",
    );
  if (supplies.length > 1) {
    const own = cells.map((cell) => cell.supply ?? "x");
    return [row, { what: "regulated", unit, ...byLabel(context.engine.cylinders, own) }];
  }
  const cell = conditionCell("regulated", `${supply}${unit}`, context.dialect.columns);
  return cell.ok
    ? [{ ...row, [cell.column]: cell.text }]
    : usageFault("condition-bad", cell.found, cell.expected, cell.mend);
};
