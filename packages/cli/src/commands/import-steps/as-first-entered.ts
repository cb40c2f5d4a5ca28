// tests.csv as its readings were first entered: the amendments taken back, newest first. A sheet that is imported again
// still shows what stood there before an amendment, and must not bring it back as a test of its own.

import { amendmentColumns, parseTable } from "@sealtrend/core/parts";
import { type RawRow, rawTests, rowName } from "../amend-steps/amend-rows.ts";
import { editCells } from "../amend-steps/amend-text.ts";

interface Amended {
  /** `2025-05-10a dry take 1 by red`. */
  readonly row: string;
  readonly column: string;
  readonly was: string;
  readonly is: string;
}

/** @param tests - the text of tests.csv  @param amendments - that of amendments.csv
 *  @returns the same text where nothing was amended */
export const asFirstEntered = (tests: string, amendments: string): string => {
  const steps = amendedIn(amendments);
  if (steps.length === 0) return tests;
  const raw = rawTests(tests, "");
  const columns = raw.dialect.columns;
  const before = new Map<RawRow, Map<string, string>>();
  const now = (row: RawRow, column: string): string => before.get(row)?.get(column) ?? row.cell(column);
  for (const step of [...steps].reverse()) {
    const row = columns.includes(step.column) ? rowMeant(raw.rows, step, now) : undefined;
    if (row === undefined) continue;
    const cells = before.get(row) ?? new Map<string, string>();
    before.set(row, cells.set(step.column, step.was));
  }
  const edits = [...before].flatMap(([{ row }, cells]) =>
    [...cells].map(([column, to]) => ({ row, column, to })),
  );
  return editCells(raw, edits).text;
};

const amendedIn = (text: string): readonly Amended[] => {
  if (text.trim() === "") return [];
  const { table } = parseTable(text, "", amendmentColumns.join(","));
  const at = new Map(table.header.map(({ name }, i) => [name, i] as const));
  return table.rows.flatMap(({ cells }) => {
    const cell = (name: string): string => cells[at.get(name) ?? -1]?.text.trim() ?? "";
    if (cell("file") !== "tests.csv") return [];
    return [{ row: cell("row"), column: cell("column"), was: cell("old"), is: cell("new") }];
  });
};

/** The row that an amendment changed, by its name at that time; its gauge may have been amended by the same command. */
const rowMeant = (
  rows: readonly RawRow[],
  { row: name, column, is }: Amended,
  now: (row: RawRow, column: string) => string,
): RawRow | undefined => {
  const named = (row: RawRow): string =>
    `${row.cell("test")} ${rowName({ ...row, cell: (of) => now(row, of) })}`;
  const holding = rows.filter((row) => name.startsWith(`${row.cell("test")} `) && now(row, column) === is);
  const exact = holding.find((row) => named(row) === name);
  return exact ?? holding.find((row) => withoutGauge(named(row)) === withoutGauge(name));
};

const withoutGauge = (name: string): string => name.replace(/ by .*$/, "");
