// The rows of one test brought together: what they share, what they hold, and where they contradict each other.

import { byText } from "../problem/index.ts";
import { beyondWeather } from "../air/index.ts";
import { type AbsolutePressure, type Length, writeQuantity } from "../quantity/index.ts";
import { agreedConditions, conditionsByGauge, disagree } from "./agreed-conditions.ts";
import type { Stated } from "./conditions.ts";
import type { Draft } from "./draft.ts";
import type { RowView } from "./row-view.ts";
import { type RowContent, cylinderColumn } from "./test-rows.ts";
import type { Engine } from "./engine-types.ts";
import type { Conditions, PerCylinder, PressureRow, Test } from "./types.ts";

/** A row of tests.csv without a fault of its own. */
export interface ReadRow {
  readonly view: RowView;
  readonly id: string;
  readonly date: string;
  readonly meter: number | undefined;
  readonly gauge: string;
  readonly content: RowContent;
  readonly conditions: readonly Stated[];
}

/** Brings the rows of one test together; contradictions are noted at the later row.
 *  @param rows - at least one  @param home - altitude to hold a barometer reading against where the rows state none */
export const testOf = (id: string, rows: readonly ReadRow[], home: Length | undefined): Test => {
  const [first] = rows;
  if (first === undefined) throw new TypeError("testOf: a test has at least one row");
  for (const row of rows) if (row.date !== first.date) disagree(row.view, "date", id, first.view);
  const meter = oneMeter(id, rows);
  const stated = withSetSupply(rows);
  const conditions = agreedConditions(id, stated);
  const byGauge = conditionsByGauge(conditions, stated);
  checkBarometer(rows, conditions.stationPressure, conditions.altitude ?? home);
  const by = oneBy(id, rows);
  const setAside = textsOf(rows, "set_aside").join("; ");
  checkOnce(id, rows);
  const test: Draft<Test> = {
    id,
    date: first.date,
    rows: pressureRows(id, rows),
    perCylinder: factsIn(rows),
    conditions,
    notes: textsOf(rows, "note"),
  };
  if (meter !== undefined) test.meter = meter;
  if (byGauge !== undefined) test.byGauge = byGauge;
  if (by !== undefined) test.by = by;
  if (setAside !== "") test.setAside = setAside;
  const heard = rows.find(({ content }) => content.kind === "heard")?.content;
  return heard?.kind === "heard" ? { ...test, heard: heard.heard } : test;
};

const factsIn = (rows: readonly ReadRow[]): PerCylinder => {
  let facts: PerCylinder = {};
  for (const { content } of rows) if (content.kind === "fact") facts = { ...facts, ...content.facts };
  return facts;
};

/** What the rows state, and where none states the supply what their testers are set to. */
const withSetSupply = (rows: readonly ReadRow[]): readonly Stated[] => {
  const stated =
    rows.length === 1 ? (rows[0]?.conditions ?? []) : rows.flatMap(({ conditions }) => conditions);
  if (stated.some(({ key }) => key === "regulated")) return stated;
  const set: Stated[] = [];
  for (const { content, view } of rows)
    if (content.kind === "readings" && content.supply !== undefined)
      set.push({ column: "gauge", key: "regulated", value: content.supply, row: view });
  return set.length === 0 ? stated : [...stated, ...set];
};

const oneMeter = (id: string, rows: readonly ReadRow[]): number | undefined => {
  const first = rows.find(({ meter }) => meter !== undefined);
  for (const row of rows)
    if (first !== undefined && row.meter !== undefined && row.meter !== first.meter)
      disagree(row.view, "meter", id, first.view);
  return first?.meter;
};

/** Who measured: one for the test, as a seller's sheet is no baseline. */
const oneBy = (id: string, rows: readonly ReadRow[]): string | undefined => {
  let first: RowView | undefined;
  for (const { view } of rows) {
    if (view.text("by") === "") continue;
    first ??= view;
    if (view.text("by") !== first.text("by")) disagree(view, "by", id, first);
  }
  return first?.text("by");
};

/** The texts of a column, each once, in an order that the order of the rows does not change. */
const textsOf = (rows: readonly ReadRow[], column: string): readonly string[] => {
  const texts: string[] = [];
  for (const { view } of rows) {
    const text = view.text(column);
    if (text !== "") texts.push(text);
  }
  return texts.length < 2 ? texts : [...new Set(texts)].sort();
};

/** What was heard and what differs by cylinder stands in one row each. */
const checkOnce = (test: string, rows: readonly ReadRow[]): void => {
  if (rows.length < 2) return;
  const seen = new Set<string>();
  for (const { content, view } of rows) {
    if (content.kind === "readings") continue;
    const what = view.text("what").toLowerCase();
    if (seen.has(what)) view.fault("what", "row-twice", { what, take: undefined, test });
    seen.add(what);
  }
};

const pressureRows = (test: string, rows: readonly ReadRow[]): PressureRow[] => {
  const [only] = rows;
  if (rows.length === 1) return only?.content.kind === "readings" ? [only.content.row] : [];
  const seen = new Map<string, PressureRow>();
  for (const { content, view, gauge } of rows) {
    if (content.kind !== "readings") continue;
    const { what, take } = content.row;
    const key = `${what}\n${String(take)}\n${gauge}`;
    if (seen.has(key)) view.fault("take", "row-twice", { what, take, test });
    else seen.set(key, content.row);
  }
  return [...seen.values()].sort(
    (a, b) => byText(a.what, b.what) || a.take - b.take || byText(a.gauge ?? "", b.gauge ?? ""),
  );
};

/** The facts of the day as the rows of one gauge have them. */
export const dayOf = ({ conditions, byGauge = {} }: Test, gauge = ""): Conditions =>
  (Object.hasOwn(byGauge, gauge) ? byGauge[gauge] : undefined) ?? conditions;

/** A leak-down pressure needs its supply, and cannot be above it by more than the dials may differ (3 %). */
export const checkSupply = (test: Test, rows: readonly ReadRow[], engine: Engine): void => {
  const own = test.perCylinder.regulated;
  const masters = new Set<string>();
  for (const { content, view } of rows) {
    if (content.kind !== "readings" || !content.row.what.startsWith("leak")) continue;
    const { unit, cells, gauge } = content.row;
    if (!masters.has(gauge ?? "")) checkMaster(test, view, { gauge, own, unit });
    masters.add(gauge ?? "");
    if (unit === "%") continue;
    const supplied = cells.map((cell, i) => ({
      cell,
      column: cylinderColumn(engine.cylinders[i] ?? ""),
      supply: own?.[i] ?? dayOf(test, gauge).regulated,
    }));
    if (supplied.some(({ cell, supply }) => cell.kind === "reading" && supply === undefined))
      view.fault("what", "supply-missing", { test: test.id });
    for (const { cell, column, supply } of supplied) {
      if (supply === undefined || cell.kind !== "reading" || cell.value <= supply * 1.03) continue;
      const facts = { read: writeQuantity(cell.value, unit), supply: writeQuantity(supply, unit) };
      view.fault(column, "leak-over-supply", facts);
    }
  }
};

/** A master orifice lets some air by and holds some: it reads above 0 and below the supply, which a pressure needs. */
const checkMaster = (
  test: Test,
  view: RowView,
  {
    gauge,
    own,
    unit,
  }: {
    readonly gauge: string | undefined;
    readonly own: PerCylinder["regulated"];
    readonly unit: PressureRow["unit"];
  },
): void => {
  const { master, masterLost, regulated } = dayOf(test, gauge);
  const supply = regulated ?? own?.find((one) => one !== undefined);
  if (master !== undefined && supply === undefined) {
    if (unit === "%") view.fault("what", "supply-missing", { test: test.id });
    return;
  }
  const lost = master === undefined || supply === undefined ? masterLost : 1 - master / supply;
  if (lost === undefined || (lost > rounding && lost < 1 - rounding)) return;
  const reads = lost > rounding ? "nothing" : lost < -rounding ? "more than its supply" : "its whole supply";
  view.fault("what", "master-impossible", { test: test.id, reads });
};

const rounding = 1e-9;

/** A barometer shows the air of its place; a report reduced to sea level is no reading of it. */
const checkBarometer = (
  rows: readonly ReadRow[],
  station: AbsolutePressure | undefined,
  altitude: Length | undefined,
): void => {
  if (station === undefined || altitude === undefined) return;
  const sea = beyondWeather(station, altitude);
  if (sea === undefined) return;
  const stated = rows.flatMap(({ conditions }) => conditions).find(({ key }) => key === "stationPressure");
  const facts = {
    station: writeQuantity(station, "hPa", 0),
    altitude: writeQuantity(altitude, "m"),
    sea: writeQuantity(sea, "hPa", 0),
  };
  stated?.row.fault(stated.column, "sea-level-barometer", facts);
};
