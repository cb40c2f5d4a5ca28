// tests.csv to tests: rows that share a name are one test; the order of rows and columns never matters.

import { byText, type Place, type Problem, byPlace } from "../problem/index.ts";
import type { Length } from "../quantity/index.ts";
import { flagFormulas, meterIn } from "./common-cells.ts";
import { conditionColumns, isConditionColumn, statedConditions } from "./conditions.ts";
import { type ParsedTable, parseTable } from "./csv.ts";
import { type ReadRow, checkSupply, testOf } from "./one-test.ts";
import { hasErrorSince, requireColumns, viewTable } from "./row-view.ts";
import { cylinderColumn, isCylinderColumn, rowContent } from "./test-rows.ts";
import type { Engine } from "./engine-types.ts";
import type { Gauge } from "./gauge-types.ts";
import type { Test } from "./types.ts";

/** The header of a new tests.csv for these cylinders. */
export const testColumns = (labels: readonly string[]): readonly string[] => [
  "test",
  "date",
  "meter",
  "what",
  "take",
  "gauge",
  "unit",
  ...labels.map(cylinderColumn),
  ...conditionColumns,
  "by",
  "set_aside",
  "note",
];

/** What tests.csv holds. */
export interface TestTable {
  /** By date, then by name. */
  readonly tests: readonly Test[];
  readonly problems: readonly Problem[];
  /** Where a test states its meter, by the test's name. */
  readonly placeOfMeter: (test: string) => Place | undefined;
}

/** Reads tests.csv of an engine. Rows with a fault are left out and reported; the rest are there.
 *  @param home - altitude to hold a barometer reading against where the test has none */
export const readTests = (
  text: string,
  file: string,
  engine: Engine,
  gauges: readonly Gauge[],
  home?: Length,
): TestTable =>
  testsOfTable(parseTable(text, file, testColumns(engine.cylinders).join(",")), { engine, gauges, home });

/** The same of a table that is split already. */
export const testsOfTable = (
  { table, problems: shape }: ParsedTable,
  {
    engine,
    gauges,
    home,
  }: {
    readonly engine: Engine;
    readonly gauges: readonly Gauge[];
    readonly home: Length | undefined;
  },
): TestTable => {
  const problems: Problem[] = [...shape];
  const view = viewTable(table, problems);
  const needed = ["test", "date", "what", ...engine.cylinders.map(cylinderColumn)];
  if (!requireColumns(view, needed, problems)) return { tests: [], problems, placeOfMeter: () => undefined };
  const conditions = view.columns.filter((name) => isConditionColumn(name) && view.holds(name));
  const strays = view.columns.filter((name) => isCylinderColumn(name) && !needed.includes(name));
  const byId = new Map<string, ReadRow[]>();
  const spoilt = new Set<string>();
  for (const row of view.rows) {
    const before = problems.length;
    for (const column of strays)
      if (row.text(column) !== "")
        row.fault(column, "cylinder-unknown", { column, labels: engine.cylinders });
    const id = row.text("test");
    if (id === "") row.fault("test", "id-missing", { column: "test", example: "2026-05-03a" });
    const date = row.date("date");
    const meter = meterIn(row);
    const content = rowContent(row, engine, gauges, table.delimiter);
    const stated = statedConditions(row, conditions);
    flagFormulas(row, ["by", "set_aside", "note"]);
    const isFaulty = hasErrorSince(problems, before);
    if (isFaulty || date === undefined || content === undefined) {
      spoilt.add(id);
      continue;
    }
    const rows = byId.get(id) ?? [];
    byId.set(id, rows);
    rows.push({ view: row, id, date, meter, gauge: row.text("gauge"), content, conditions: stated });
  }
  const tests = [...byId].map(([id, rows]) => {
    const test = testOf(id, rows, home);
    if (!spoilt.has(id)) checkSupply(test, rows, engine);
    return test;
  });
  return {
    tests: tests.sort((a, b) => byText(a.date, b.date) || byText(a.id, b.id)),
    problems: problems.sort(byPlace),
    placeOfMeter: (test) =>
      byId
        .get(test)
        ?.find(({ meter }) => meter !== undefined)
        ?.view.place("meter"),
  };
};
