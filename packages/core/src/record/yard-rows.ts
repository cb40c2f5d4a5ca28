// Many engines in one table: the columns of tests.csv with `engine` beside them. The caller cuts the text at the borders of
// rows, and brings the rows of one engine at a time; what is said of a row names its line in the whole file.

import { type Problem, byPlace } from "../problem/index.ts";
import { keeping } from "../statistics/index.ts";
import { tooMuch } from "./csv-records.ts";
import { type ParsedTable, type Table, headerFaults, parseMoreRows, parseTable } from "./csv.ts";
import { readEngine } from "./engine.ts";
import type { Engine } from "./engine-types.ts";
import { meterFaults } from "./logbook.ts";
import { type RowView, requireColumns, viewTable } from "./row-view.ts";
import { cylinderColumn, isCylinderColumn } from "./test-rows.ts";
import { testColumns, testsOfTable } from "./tests.ts";
import type { EngineRecord } from "./types.ts";

/** The header of the file, and nothing else of it. */
export interface YardHeader extends Omit<Table, "rows"> {
  /** Place of the column `engine`, from 0. */
  readonly engineColumn: number;
}

/** Rows of one engine that follow each other in the file. */
export interface YardRun {
  /** The line of the file on which they begin, from 1. */
  readonly line: number;
  /** Only at the end of the file may it lack its last line end. */
  readonly text: string;
}

/** One engine; the record is undefined where a row of it has a fault. */
export interface YardEngine {
  readonly id: string;
  readonly record: EngineRecord | undefined;
  readonly problems: readonly Problem[];
  /** What is wrong with the header, which its rows brought to light; no fault of the engine's. */
  readonly ofHeader: readonly Problem[];
}

const example = ["engine", ...testColumns(["1", "2", "3", "4"])].join(",");
const ignitions = ["spark", "compression", "unknown"] as const;

/** Reads the header alone. @returns undefined where a column is missing that no row can do without */
export const readYardHeader = (
  text: string,
  file: string,
): { readonly header: YardHeader | undefined; readonly problems: readonly Problem[] } => {
  const { table, problems: shape } = parseTable(text, file, example);
  const problems: Problem[] = [...shape];
  const view = viewTable(table, problems);
  const cylinders = view.columns.some(isCylinderColumn) ? [] : [cylinderColumn("1")];
  const isWhole = requireColumns(view, ["engine", "test", "date", "what", ...cylinders], problems);
  const isFaulty = problems.some(({ severity }) => severity === "error");
  if (!isWhole || isFaulty) return { header: undefined, problems };
  const engineColumn = view.columns.indexOf("engine");
  const { rows: _, ...rest } = table;
  return { header: { ...rest, engineColumn }, problems };
};

/** Reads one engine. It has the cylinders up to the last whose column holds anything for it; of the rest nothing is known but its ignition,
 *  where a column says it.
 *  @param id - as its rows name it; "" for rows that name none, of which each is a fault */
export const readYardEngine = (header: YardHeader, id: string, runs: readonly YardRun[]): YardEngine => {
  const parts = runs.map(({ text, line }) => parseMoreRows(text, header, line));
  const rows = parts.flatMap((part) => part.rows);
  const shape = parts.flatMap(({ problems }) => problems);
  const table: Table = { ...header, rows };
  const first = runs[0]?.line ?? header.headerLine;
  const fault = tooMuch({ characters: 0, columns: 0, rows: rows.length }, header.file, { first, row: first });
  const ofHeader = headerFaults(table);
  if (fault !== undefined) return { id, record: undefined, problems: [...shape, fault], ofHeader };
  return { id, ...(id === "" ? nameless(table, shape) : engineIn(id, { table, problems: shape })), ofHeader };
};

const nameless = (table: Table, shape: readonly Problem[]): Pick<YardEngine, "record" | "problems"> => {
  const problems = [...shape];
  for (const row of viewTable(table, problems).rows)
    row.fault("engine", "id-missing", { column: "engine", example: "pump" });
  return { record: undefined, problems: problems.sort(byPlace) };
};

const engineIn = (
  id: string,
  { table, problems: shape }: ParsedTable,
): Pick<YardEngine, "record" | "problems"> => {
  if (table.rows.length === 0) return { record: undefined, problems: shape };
  const problems: Problem[] = [...shape];
  const ignition = ignitionIn(id, table, problems);
  const kind = engineAlike(cylindersIn(table), ignition);
  if (kind.engine === undefined) {
    const place = { file: table.file, line: table.headerLine, column: 1 };
    const all = [...problems, ...kind.problems.map((one) => ({ ...one, ...place }))];
    return { record: undefined, problems: all.sort(byPlace) };
  }
  const engine = { ...kind.engine, id, name: id };
  const tests = testsOfTable({ table, problems }, { engine, gauges: [], home: undefined });
  const all = [...tests.problems, ...meterFaults(tests, [])].sort(byPlace);
  const isFaulty = all.some(({ severity }) => severity === "error");
  const record = { engine, gauges: [], tests: tests.tests, services: [], notes: [], measurements: [] };
  return { record: isFaulty ? undefined : record, problems: all };
};

/** The labels whose columns hold anything, and those numbered below them: a gap is a cylinder that was never read. All where none
 *  holds anything. */
const cylindersIn = ({ header, rows }: Table): readonly string[] => {
  const columns = header.flatMap(({ name }, i) => (isCylinderColumn(name) ? [{ ...placeIn(name), i }] : []));
  const last = new Map<string, number>();
  for (const { bank, number, i } of columns)
    if (number > (last.get(bank) ?? -1) && rows.some(({ texts }) => (texts[i]?.trim() ?? "") !== ""))
      last.set(bank, number);
  const used = columns.filter(({ bank, number }) => number <= (last.get(bank) ?? -1));
  return (used.length > 0 ? used : columns).map(({ label }) => label);
};

/** `L2` is the second of bank L. */
const placeIn = (column: string) => {
  const label = column.slice(1);
  const bank = label.replace(/\d+$/, "");
  return { label, bank, number: Number(label.slice(bank.length)) };
};

/** What the rows of an engine say of its ignition; blank cells say nothing. Mostly all say the same, which takes no look at a row
 *  by its columns. */
const ignitionIn = (id: string, table: Table, problems: Problem[]): Engine["ignition"] => {
  const place = table.header.findIndex(({ name }) => name === "ignition");
  const texts = new Set(table.rows.map(({ texts }) => texts[place] ?? ""));
  texts.delete("");
  const [only] = texts;
  if (only === undefined) return "unknown";
  const known = ignitions.find((word) => word === only);
  return texts.size === 1 && known !== undefined ? known : ignitionSaid(id, viewTable(table, problems).rows);
};

const ignitionSaid = (id: string, rows: readonly RowView[]): Engine["ignition"] => {
  let first: { readonly row: RowView; readonly word: Engine["ignition"] } | undefined;
  for (const row of rows) {
    const word = row.word("ignition", ignitions);
    if (word === undefined) continue;
    first ??= { row, word };
    if (word !== first.word)
      row.fault("ignition", "engine-disagrees", {
        engine: id,
        column: "ignition",
        here: row.text("ignition"),
        there: first.row.text("ignition"),
        line: first.row.line,
      });
  }
  return first?.word ?? "unknown";
};

/** Engines of which no more is known are alike but for their name: each kind is read once, as engine.json would be. */
const engineAlike = (
  cylinders: readonly string[],
  ignition: Engine["ignition"],
): ReturnType<typeof readEngine> => {
  const text = JSON.stringify({ cylinders, ignition });
  return kinds(text, () => readEngine(text, "engine.json", "engine"));
};

const kinds = keeping<string, ReturnType<typeof readEngine>>(256);
