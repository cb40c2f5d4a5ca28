// tests.csv to tests: rows that share a name are one test; the order of rows and columns never matters.

import { type Problem, byPlace } from "../problem/index.ts";
import { altimeterSetting } from "../air/index.ts";
import { type AbsolutePressure, type Length, writeQuantity } from "../quantity/index.ts";
import { flagFormulas, meterIn } from "./common-cells.ts";
import { type Stated, agreedConditions, conditionColumns, isConditionColumn, statedConditions } from "./conditions.ts";
import { parseTable } from "./csv.ts";
import { type RowView, requireColumns, viewTable } from "./row-view.ts";
import { type RowContent, cylinderColumn, rowContent } from "./test-rows.ts";
import type { Conditions, Engine, Gauge, Heard, PerCylinder, PressureRow, Test } from "./types.ts";

/** The header of a new tests.csv for these cylinders. */
export const testColumns = (labels: readonly string[]): readonly string[] => [
  "test", "date", "meter", "what", "take", "gauge", "unit", ...labels.map(cylinderColumn), ...conditionColumns, "by", "set_aside", "note",
];

interface ReadRow {
  readonly view: RowView;
  readonly id: string;
  readonly date: string;
  readonly meter: number | undefined;
  readonly gauge: string;
  readonly content: RowContent;
  readonly conditions: readonly Stated[];
}

/** Reads tests.csv of an engine. Rows with a fault are left out and reported; the rest are there.
 *  @param home - altitude to hold a barometer reading against where the test has none
 *  @returns tests by date, then by name */
export const readTests = (
  text: string,
  file: string,
  engine: Engine,
  gauges: readonly Gauge[],
  home?: Length,
): { readonly tests: readonly Test[]; readonly problems: readonly Problem[] } => {
  const { table, problems: shape } = parseTable(text, file, testColumns(engine.cylinders).join(","));
  const problems: Problem[] = [...shape];
  const view = viewTable(table, problems);
  if (!requireColumns(view, ["test", "date", "what", ...engine.cylinders.map(cylinderColumn)], problems)) return { tests: [], problems };
  const conditions = view.columns.filter(isConditionColumn);
  const strays = view.columns.filter((name) => /^c\d+$/.test(name) && !engine.cylinders.includes(name.slice(1)));
  const rows = view.rows.flatMap((row): ReadRow[] => {
    const before = problems.length;
    for (const column of strays) if (row.text(column) !== "") row.fault(column, "cylinder-unknown", { column, labels: engine.cylinders });
    const id = row.text("test");
    if (id === "") row.fault("test", "id-missing", { column: "test" });
    const date = row.date("date");
    const meter = meterIn(row);
    const content = rowContent(row, engine, gauges, table.delimiter);
    const stated = statedConditions(row, conditions);
    flagFormulas(row, ["by", "set_aside", "note"]);
    const faults = problems.slice(before).some(({ severity }) => severity === "error");
    if (faults || date === undefined || content === undefined) return [];
    return [{ view: row, id, date, meter, gauge: row.text("gauge"), content, conditions: stated }];
  });
  const byId = new Map<string, ReadRow[]>();
  for (const row of rows) byId.set(row.id, [...(byId.get(row.id) ?? []), row]);
  const tests = [...byId].map(([id, ofTest]) => testOf(id, ofTest, engine, home));
  const sorted = tests.sort((a, b) => a.date.localeCompare(b.date) || a.id.localeCompare(b.id, "en"));
  return { tests: sorted, problems: problems.sort(byPlace) };
};

const testOf = (id: string, rows: readonly ReadRow[], engine: Engine, home: Length | undefined): Test => {
  const [first] = rows;
  if (first === undefined) throw new TypeError("testOf: a test has at least one row");
  for (const row of rows)
    if (row.date !== first.date)
      row.view.fault("date", "test-disagrees", { test: id, column: "date", here: row.date, there: first.date, line: first.view.line });
  const meter = oneMeter(id, rows);
  const forgive = (a: RowView, b: RowView): boolean => a.text("gauge") !== b.text("gauge");
  const conditions = agreedConditions(id, rows.flatMap((row) => row.conditions), forgive);
  checkBarometer(rows, conditions.stationPressure, conditions.altitude ?? home);
  const readings = pressureRows(id, rows);
  checkSupply(id, rows, conditions, engine);
  const heard = heardOf(rows);
  return {
    id,
    date: first.date,
    ...(meter === undefined ? {} : { meter }),
    rows: readings,
    ...(heard === undefined ? {} : { heard }),
    perCylinder: Object.assign({}, ...rows.map(({ content }) => (content.kind === "fact" ? content.facts : {}))) as PerCylinder,
    conditions,
    ...oneText(rows, "by", "by"),
    ...oneText(rows, "set_aside", "setAside"),
    notes: [...new Set(rows.map(({ view }) => view.text("note")).filter((note) => note !== ""))],
  };
};

const oneMeter = (test: string, rows: readonly ReadRow[]): number | undefined => {
  const first = rows.find(({ meter }) => meter !== undefined);
  for (const row of rows)
    if (first !== undefined && row.meter !== undefined && row.meter !== first.meter)
      row.view.fault("meter", "test-disagrees", { test, column: "meter", here: row.view.text("meter"), there: first.view.text("meter"), line: first.view.line });
  return first?.meter;
};

const oneText = (rows: readonly ReadRow[], column: string, key: "by" | "setAside"): { by?: string; setAside?: string } => {
  const text = rows.map(({ view }) => view.text(column)).find((cell) => cell !== "");
  return text === undefined ? {} : { [key]: text };
};

const pressureRows = (test: string, rows: readonly ReadRow[]): PressureRow[] => {
  const seen = new Map<string, PressureRow>();
  for (const { content, view, gauge } of rows) {
    if (content.kind !== "readings") continue;
    const { what, take } = content.row;
    const key = `${what}\n${String(take)}\n${gauge}`;
    if (seen.has(key)) view.fault("take", "row-twice", { what, take, test });
    else seen.set(key, content.row);
  }
  return [...seen.values()].sort((a, b) => a.what.localeCompare(b.what) || a.take - b.take || (a.gauge ?? "").localeCompare(b.gauge ?? "", "en"));
};

const heardOf = (rows: readonly ReadRow[]): readonly (readonly Heard[] | undefined)[] | undefined =>
  rows.map(({ content }) => (content.kind === "heard" ? content.heard : undefined)).find((heard) => heard !== undefined);

/** A leak-down pressure needs its supply, and cannot be above it by more than the dials may differ (3 %). */
const checkSupply = (test: string, rows: readonly ReadRow[], conditions: Conditions, engine: Engine): void => {
  const own = rows.map(({ content }) => (content.kind === "fact" ? content.facts.regulated : undefined)).find((found) => found !== undefined);
  for (const { content, view } of rows) {
    if (content.kind !== "readings" || content.row.holds === "lost" || !content.row.what.startsWith("leak")) continue;
    const { unit, cells } = content.row;
    if (unit === "%") continue;
    if (conditions.regulated === undefined && own === undefined) view.fault("what", "supply-missing", { test });
    cells.forEach((cell, i) => {
      const supply = own?.[i] ?? conditions.regulated;
      if (supply === undefined || cell.kind !== "reading" || cell.value <= supply * 1.03) return;
      view.fault(cylinderColumn(engine.cylinders[i] ?? ""), "leak-over-supply", { read: writeQuantity(cell.value, unit), supply: writeQuantity(supply, unit) });
    });
  }
};

/** Sea-level pressure of any weather stays within 925 … 1052 hPa but for the rarest extremes; common practice, no source. */
const checkBarometer = (rows: readonly ReadRow[], station: AbsolutePressure | undefined, altitude: Length | undefined): void => {
  if (station === undefined || altitude === undefined) return;
  const sea = altimeterSetting(station, altitude);
  if (sea >= 92_500 && sea <= 105_200) return;
  const stated = rows.flatMap(({ conditions }) => conditions).find(({ key }) => key === "stationPressure");
  const facts = { station: writeQuantity(station, "hPa", 0), altitude: writeQuantity(altitude, "m"), sea: writeQuantity(sea, "hPa", 0) };
  stated?.row.fault(stated.column, "sea-level-barometer", facts);
};
