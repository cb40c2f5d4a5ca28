// Where the tests of a sheet go in the tests.csv of one engine: which are there already, the names of the new ones, and
// whether each reads back. What does not is kept out by itself; its neighbours go in.

import {
  type Engine,
  type EngineFiles,
  type Gauge,
  type ImportedTest,
  type LogbookFacts,
  type Problem,
  type Test,
  dialectOf,
  engineHeaders,
  readEngineRecord,
  testValues,
} from "@sealtrend/core/parts";
import type { Fault } from "../../command.ts";
import { columnsLacking, withColumns } from "../../logbook/add-columns.ts";
import type { RowValues } from "../entry/entry-context.ts";
import { freeName } from "../entry/entry-place.ts";
import { filled, rowIn } from "../new-row.ts";
import { asFirstEntered } from "./as-first-entered.ts";
import { type MovedTest, movedTests } from "./moved-tests.ts";
import { type PlacedRow, type PlacedSlip, placedSlips } from "./placed-slips.ts";
import { readingPlace } from "./reading-place.ts";
import { standings } from "./recorded-standing.ts";
import { toldOtherwise } from "./told-otherwise.ts";
import { type KeptOut, type Wanted, byDay, heldBack, knownOf, wantedOf } from "./wanted-tests.ts";

export interface EngineScene {
  readonly engine: Engine;
  /** tests.csv as messages name it. */
  readonly file: string;
  /** The engine's files; its tests.csv is read afresh each time. */
  readonly files: EngineFiles;
  /** The text of amendments.csv; "" where there is none. */
  readonly amendments: string;
  readonly gauges: readonly Gauge[];
  readonly facts: LogbookFacts;
  /** What becomes of a test whose day is recorded with other figures. */
  readonly differing: "kept out" | "added";
}

export interface Placed {
  /** New tests, or what is new of them, in order of their days. */
  readonly added: readonly ImportedTest[];
  readonly recorded: readonly ImportedTest[];
  readonly keptOut: readonly KeptOut[];
  /** What stands between tests once they are in, such as a meter that runs backwards: to be mended before anything is judged. */
  readonly toMend: readonly Fault[];
  /** New readings that look mistyped. */
  readonly slips: readonly PlacedSlip[];
  /** New tests that may be recorded ones on another day. */
  readonly moved: readonly MovedTest[];
  /** What the sheet says otherwise of tests that are recorded, beside their figures. */
  readonly told: readonly Fault[];
  /** Readings that fill what an earlier import left open. */
  readonly filling: number;
}

export interface PlacedRows {
  readonly placed: Placed;
  /** The new rows by column name. */
  readonly values: readonly RowValues[];
  /** The whole text with them, columns that they need included. */
  readonly text: string;
}

/** What tests.csv says with this text. */
interface Read {
  readonly text: string;
  readonly tests: readonly Test[];
  readonly problems: readonly Problem[];
}

const readAs = (text: string, { files, file, gauges, facts }: EngineScene): Read => {
  const { record, problems } = readEngineRecord({ ...files, tests: { file, text } }, gauges, facts);
  return { text, tests: record?.tests ?? [], problems };
};

/** @param text - tests.csv as it stands; "" for one that is not there  @throws Stop 1 where it lacks a column */
export const placeTests = (text: string, tests: readonly ImportedTest[], scene: EngineScene): PlacedRows => {
  const { engine, amendments } = scene;
  const header = engineHeaders(engine.cylinders)["tests.csv"] ?? "";
  const start = readAs(text.trim() === "" ? `${header}\n` : text, scene);
  const first = asFirstEntered(start.text, amendments);
  const entered = first === start.text ? start : readAs(first, scene);
  const standing = standings(tests, { engine, now: start.tests, first: entered.tests });
  const wanted = tests.flatMap((test, i) => wantedOf(test, standing[i], start.tests, scene));
  const keptOut = tests.flatMap((test, i) => heldBack(test, standing[i], start.tests, scene));
  const recorded = tests.flatMap((test, i) => knownOf(test, standing[i]));
  const done = checked(start, byDay(wanted), scene);
  const { added, barred, toMend } = done;
  const slips = placedSlips(done.rows, done.tests, engine);
  return {
    placed: {
      added,
      recorded,
      keptOut: [...keptOut, ...barred],
      toMend,
      slips,
      moved: movedTests(tests, standing, { engine, now: start.tests }),
      told: toldOtherwise(tests, standing, { now: start.text, first }),
      filling: done.filling,
    },
    values: done.rows.map((row) => row.values),
    text: done.text,
  };
};

interface Checked extends Pick<Placed, "added" | "toMend" | "filling"> {
  readonly rows: readonly PlacedRow[];
  readonly barred: readonly KeptOut[];
  readonly text: string;
  /** All that the text holds. */
  readonly tests: readonly Test[];
}

const checked = (start: Read, wanted: readonly Wanted[], scene: EngineScene): Checked => {
  const barred: KeptOut[] = [];
  for (let left = wanted; left.length > 0;) {
    const rows = rowsOf(start.text, left);
    const text = withRows(
      start.text,
      rows.map((row) => row.values),
      scene.file,
    );
    const read = readAs(text, scene);
    const { barred: more, toMend } = faultsOf(read, start, rows);
    if (more.size === 0) {
      const filling = left.reduce((sum, { fills }) => sum + fills, 0);
      return { added: left.map(({ test }) => test), filling, rows, barred, toMend, text, tests: read.tests };
    }
    for (const [{ test }, fault] of more) barred.push({ test, fault });
    left = left.filter((one) => !more.has(one));
  }
  return { added: [], filling: 0, rows: [], barred, toMend: [], text: start.text, tests: start.tests };
};

interface RowOf extends PlacedRow {
  readonly of: Wanted;
}

const rowsOf = (start: string, wanted: readonly Wanted[]): readonly RowOf[] => {
  const taken = new Set(start.match(/\d{4}-\d{2}-\d{2}[a-z]{1,2}/g));
  return wanted.flatMap((one) => {
    const id = one.id ?? freeName(one.test.date, (name) => taken.has(name));
    taken.add(id);
    return testValues(one.test, id).map((values, at) => ({ of: one, test: one.test, at, values, id }));
  });
};

/** The text with the rows at its end, and with the columns that they need. */
const withRows = (start: string, values: readonly RowValues[], file: string): string => {
  const needed = [...new Set(values.flatMap(filled))];
  const wide = withColumns(start, columnsLacking(start, needed)) ?? start;
  const dialect = dialectOf(wide, file);
  const open = /[\r\n]$/.test(wide) ? wide : `${wide}\n`;
  return open + values.map((row) => `${rowIn(dialect, file, row)}\n`).join("");
};

interface Faults {
  /** The first fault of each test that does not read back. */
  readonly barred: ReadonlyMap<Wanted, Fault>;
  readonly toMend: readonly Fault[];
}

/** What is wrong with the new rows, at its place in the sheet; and what was not wrong before between old and new. */
const faultsOf = ({ text, problems }: Read, start: Read, rows: readonly RowOf[]): Faults => {
  const first = text.split(/\r\n|\r|\n/).length - rows.length;
  const barred = new Map<Wanted, Fault>();
  const toMend: Fault[] = [];
  const known = new Set(start.problems.map(nameOf));
  for (const problem of problems) {
    const row = rows[(problem.line ?? 0) - first];
    const isFault = problem.severity === "error" || (problem.code === "text-formula" && row !== undefined);
    if (!isFault || known.has(nameOf(problem))) continue;
    const { code, found, expected, mend } = problem;
    const place = row === undefined ? {} : readingPlace(row.test, row.at);
    const fault: Fault = { code, severity: "error", found, expected, mend, ...place };
    if (row === undefined || code === "meter-backwards") toMend.push(row === undefined ? problem : fault);
    else if (!barred.has(row.of)) barred.set(row.of, fault);
  }
  return { barred, toMend };
};

const nameOf = ({ code, file = "", line = 0, column = 0 }: Problem): string =>
  [code, file, line, column].join("\n");
