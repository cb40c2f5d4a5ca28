// Many engines in one table: the columns of tests.csv with `engine` beside them. The caller cuts the text at the borders of
// rows, some engines at a time; what is said of a row names its line in the whole file.

import { type Problem, byPlace } from "../problem/index.ts";
import { type ParsedTable, type Table, type TableRow, parseTable } from "./csv.ts";
import { readEngine } from "./engine.ts";
import type { Engine } from "./engine-types.ts";
import { meterFaults } from "./logbook.ts";
import { type RowView, requireColumns, viewTable } from "./row-view.ts";
import { cylinderColumn, isCylinderColumn } from "./test-rows.ts";
import { testColumns, testsOfTable } from "./tests.ts";
import type { EngineRecord } from "./types.ts";

/** The header of the file. */
export interface YardHeader {
  readonly file: string;
  /** As it stands, with its line end. */
  readonly text: string;
  readonly delimiter: string;
  /** Place of the column `engine`, from 0. */
  readonly engineColumn: number;
}

/** Rows of one engine that follow each other in the file, and in the text that is handed over. */
export interface YardRun {
  readonly engine: string;
  /** The line of the file on which they begin, from 1. */
  readonly line: number;
  /** How many line ends they hold. */
  readonly lines: number;
}

/** One engine; the record is undefined where a row of it has a fault. */
export interface YardEngine {
  readonly id: string;
  readonly record: EngineRecord | undefined;
  readonly problems: readonly Problem[];
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
  return { header: { file, text, delimiter: table.delimiter, engineColumn }, problems };
};

/** Reads the engines of some rows, in the order in which they come first. An engine has the cylinders whose columns hold
 *  anything for it; of the rest nothing is known but its ignition, where a column says it.
 *  An engine that is not among those that come back was kept from being read by another one: each is to be read alone.
 *  @param text - the rows of the runs, one run after the other; only the last may lack its line end
 *  @returns the problems too that belong to no engine */
export const readYardRows = (
  header: YardHeader,
  text: string,
  runs: readonly YardRun[],
): { readonly engines: readonly YardEngine[]; readonly problems: readonly Problem[] } => {
  const parsed = parseTable(header.text + text, header.file);
  const placed = places(lineEndsIn(header.text), runs);
  const found = new Map<string, { rows: TableRow[]; problems: Problem[] }>();
  for (const { engine } of runs) if (!found.has(engine)) found.set(engine, { rows: [], problems: [] });
  const unowned: Problem[] = [];
  for (const one of parsed.problems) {
    const place = placed(one.line ?? 0);
    if (place !== undefined) found.get(place.engine)?.problems.push({ ...one, line: place.line });
    else if (one.code === "header-blank") unowned.push(one);
    else if (one.code === "file-huge" && found.size === 1)
      found.get(runs[0]?.engine ?? "")?.problems.push({ ...one, line: runs[0]?.line ?? 1 });
  }
  for (const row of parsed.table.rows) {
    const place = placed(row.line);
    if (place !== undefined) found.get(place.engine)?.rows.push(rowAt(row, place.line));
  }
  const { rows: loose = [], problems: broken = [] } = found.get("") ?? {};
  const nameless = viewTable({ ...parsed.table, rows: loose }, unowned).rows;
  for (const row of nameless) row.fault("engine", "id-missing", { column: "engine", example: "pump" });
  const engineOf = enginesAlike();
  const engines = [...found].flatMap(([id, { rows, problems }]): YardEngine[] =>
    id === "" || rows.length + problems.length === 0
      ? []
      : [engineIn(id, { table: { ...parsed.table, rows }, problems }, engineOf)],
  );
  return { engines, problems: [...unowned, ...broken].sort(byPlace) };
};

/** Named part by part: to spread a row takes several times as long. */
const rowAt = ({ cells, raw, offset }: TableRow, line: number): TableRow => ({ line, cells, raw, offset });

/** From a line of the text to the engine that it is of, and to its line in the file; undefined for the header. */
const places = (headerLines: number, runs: readonly YardRun[]) => {
  const starts: number[] = [];
  let next = headerLines + 1;
  for (const { lines } of runs) {
    starts.push(next);
    next += lines;
  }
  return (line: number): Pick<YardRun, "engine" | "line"> | undefined => {
    let [low, high] = [0, starts.length];
    while (low < high) {
      const middle = (low + high) >>> 1;
      if ((starts[middle] ?? 0) <= line) low = middle + 1;
      else high = middle;
    }
    const [run, start] = [runs[low - 1], starts[low - 1]];
    return run === undefined || start === undefined
      ? undefined
      : { engine: run.engine, line: run.line + line - start };
  };
};

const lineEndsIn = (text: string): number => text.match(/\r\n|\r|\n/g)?.length ?? 0;

const engineIn = (
  id: string,
  { table, problems: shape }: ParsedTable,
  engineOf: ReturnType<typeof enginesAlike>,
): YardEngine => {
  if (table.rows.length === 0) return { id, record: undefined, problems: shape };
  const problems: Problem[] = [...shape];
  const ignition = ignitionIn(id, table, problems);
  const kind = engineOf(cylindersIn(table), ignition);
  if (kind.engine === undefined) {
    const place = { file: table.file, line: table.headerLine, column: 1 };
    const all = [...problems, ...kind.problems.map((one) => ({ ...one, ...place }))];
    return { id, record: undefined, problems: all.sort(byPlace) };
  }
  const engine = { ...kind.engine, id, name: id };
  const tests = testsOfTable({ table, problems }, { engine, gauges: [], home: undefined });
  const all = [...tests.problems, ...meterFaults(tests, [])].sort(byPlace);
  const isFaulty = all.some(({ severity }) => severity === "error");
  const record = { engine, gauges: [], tests: tests.tests, services: [], notes: [], measurements: [] };
  return { id, record: isFaulty ? undefined : record, problems: all };
};

/** The labels whose columns hold anything; all of them where none does. */
const cylindersIn = ({ header, rows }: Table): readonly string[] => {
  const columns = header.flatMap(({ name }, i) =>
    isCylinderColumn(name) ? [{ label: name.slice(1), i }] : [],
  );
  const used = columns.filter(({ i }) => rows.some(({ cells }) => (cells[i]?.text.trim() ?? "") !== ""));
  return (used.length > 0 ? used : columns).map(({ label }) => label);
};

/** What the rows of an engine say of its ignition; blank cells say nothing. Mostly all say the same, which takes no look at a row
 *  by its columns. */
const ignitionIn = (id: string, table: Table, problems: Problem[]): Engine["ignition"] => {
  const place = table.header.findIndex(({ name }) => name === "ignition");
  const texts = new Set(table.rows.map(({ cells }) => cells[place]?.text ?? ""));
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
const enginesAlike = () => {
  const known = new Map<string, ReturnType<typeof readEngine>>();
  return (cylinders: readonly string[], ignition: Engine["ignition"]): ReturnType<typeof readEngine> => {
    const text = JSON.stringify({ cylinders, ignition });
    const kind = known.get(text) ?? readEngine(text, "engine.json", "engine");
    known.set(text, kind);
    return kind;
  };
};
