// The rows of tests.csv by their raw cells, so that an entry with a fault can be found and mended too.

import {
  type Dialect,
  type Engine,
  type Table,
  type TableRow,
  dialectOf,
  isIsoDate,
  parseTable,
  nearest,
} from "@sealtrend/core/parts";
import { Stop } from "../../command.ts";
import { exampleDry } from "../example-readings.ts";
import { usage, usageFault } from "../usage.ts";

export interface RawRow {
  readonly row: TableRow;
  /** The cell without surrounding blanks; "" where the column or the cell is absent. */
  readonly cell: (column: string) => string;
}

export interface RawTests {
  readonly file: string;
  readonly text: string;
  readonly table: Table;
  readonly dialect: Dialect;
  readonly rows: readonly RawRow[];
}

/** @param text - the file without a byte order mark */
export const rawTests = (text: string, file: string): RawTests => {
  const { table } = parseTable(text, file);
  const index = new Map(table.header.map(({ name }, i) => [name, i] as const));
  const rows = table.rows.map((row): RawRow => ({
    row,
    cell: (column) => row.texts[index.get(column) ?? -1]?.trim() ?? "",
  }));
  return { file, text, table, dialect: dialectOf(text, file), rows };
};

/** The name of the test that is meant: the one named, the latest by day and name, or the only one.
 *  @throws Stop 2 where it is not there or not named, 1 where there is no test at all */
export const testNamed = (
  { rows }: RawTests,
  named: string | undefined,
  { id: engine, ignition, cylinders }: Engine,
): string => {
  const days = new Map<string, string>();
  for (const { cell } of rows) {
    const id = cell("test");
    const date = cell("date");
    if (id !== "") days.set(id, isIsoDate(date) ? date : id.slice(0, 10));
  }
  const order = ([a, dayA]: readonly [string, string], [b, dayB]: readonly [string, string]): number =>
    dayA === dayB ? (a < b ? -1 : 1) : dayA < dayB ? -1 : 1;
  const ids = [...days].sort(order).map(([id]) => id);
  const latest = ids.at(-1);
  if (latest === undefined)
    throw new Stop(1, [
      usageFault(
        "test-none",
        `${engine} has no test yet`,
        "at least one test",
        `sealtrend enter ${engine} ${exampleDry({ ignition, cylinders })}`,
      ),
    ]);
  if (named === undefined && ids.length > 1)
    throw usage(
      "test-open",
      "which test?",
      "--test with its name, or latest",
      `add --test latest (${latest})`,
    );
  if (named === undefined || named === "latest") return latest;
  if (ids.includes(named)) return named;
  const [near] = nearest(named, ids);
  const mend = near === undefined ? `one of: ${ids.slice(-5).join(", ")}` : `did you mean ${near}?`;
  throw usage("test-unknown", `${engine} has no test "${named}"`, "the name of a test", mend);
};

/** What picks rows of a test; what is left out is not asked for. */
export interface Selector {
  readonly what?: string | undefined;
  readonly take?: string | undefined;
  readonly gauge?: string | undefined;
}

export const isOpen = ({ what, take, gauge }: Selector): boolean => (what ?? take ?? gauge) === undefined;

const takeOf = ({ cell }: RawRow): string => (cell("take") === "" ? "1" : cell("take"));

/** `dry take 2 by red`, as the trace and the messages name a row. */
export const rowName = (row: RawRow): string => {
  const gauge = row.cell("gauge");
  return `${row.cell("what")} take ${takeOf(row)}${gauge === "" ? "" : ` by ${gauge}`}`;
};

/** The rows of a test that a selector picks, in the order of the file. @throws Stop 2 where it picks none */
export const rowsPicked = (tests: RawTests, test: string, pick: Selector): readonly RawRow[] => {
  const all = tests.rows.filter(({ cell }) => cell("test") === test);
  const picked = all.filter(
    (row) =>
      (pick.what === undefined || row.cell("what").toLowerCase() === pick.what.trim().toLowerCase()) &&
      (pick.take === undefined || takeOf(row) === pick.take.trim()) &&
      (pick.gauge === undefined || row.cell("gauge") === pick.gauge.trim()),
  );
  if (picked.length > 0) return picked;
  const asked = [
    pick.what,
    pick.take === undefined ? undefined : `take ${pick.take}`,
    pick.gauge === undefined
      ? undefined
      : pick.gauge === ""
        ? "with its gauge left open"
        : `by ${pick.gauge}`,
  ].filter((part) => part !== undefined);
  throw usage(
    "row-unknown",
    `test ${test} has no row ${asked.join(" ")}`,
    `one of: ${all.map(rowName).join(", ")}`,
    pickedSo(all, pick),
  );
};

/** The options that were typed, as they pick the last row. */
const pickedSo = (rows: readonly RawRow[], { what, take, gauge }: Selector): string => {
  const last = rows.at(-1);
  if (last === undefined) return "sealtrend proofread";
  const named = last.cell("gauge");
  return [
    ...(what === undefined ? [] : [`--what ${last.cell("what")}`]),
    ...(take === undefined ? [] : [`--take ${takeOf(last)}`]),
    ...(gauge === undefined ? [] : [ofGauge(named)]),
  ].join(" ");
};

const ofGauge = (name: string): string => `--of-gauge ${name === "" ? "-" : name}`;

/** The options that pick the last of several rows apart from the others. */
export const pickMend = (rows: readonly RawRow[]): string => {
  const last = rows.at(-1);
  if (last === undefined) return "sealtrend proofread";
  const differs = (column: (row: RawRow) => string): boolean => new Set(rows.map(column)).size > 1;
  const parts = [
    ...(differs((row) => row.cell("what")) ? [`--what ${last.cell("what")}`] : []),
    ...(differs(takeOf) ? [`--take ${takeOf(last)}`] : []),
    ...(differs((row) => row.cell("gauge")) ? [ofGauge(last.cell("gauge"))] : []),
  ];
  if (parts.length > 0) return `add ${parts.join(" ")}`;
  return rows.length === 1
    ? `--what ${last.cell("what")} --take ${takeOf(last)}`
    : "number them 1, 2, 3 in the column take, in a spreadsheet or an editor";
};
