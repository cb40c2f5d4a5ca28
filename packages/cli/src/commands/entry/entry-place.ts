// Where new rows go in tests.csv: which test they belong to, which take they are. Worked out under the file's lock.

import { type Engine, type Gauge, type Test, dialectOf, nearest, readTests } from "@sealtrend/core/parts";
import { Stop } from "../../command.ts";
import type { RowValues } from "./entry-context.ts";
import type { Target } from "./entry-target.ts";
import { asTyped, filled, rowIn, stopOnMissing } from "../new-row.ts";
import { usage } from "../usage.ts";

export interface Placed {
  readonly test: string;
  readonly rows: readonly string[];
  /** The same by column name. */
  readonly values: readonly RowValues[];
}

export interface Entry {
  /** Name of the file, for messages. */
  readonly file: string;
  readonly rows: readonly RowValues[];
  readonly target: Target & { readonly meter: string };
  readonly engine: Engine;
  readonly gauges: readonly Gauge[];
}

/** The rows as text, ready to be appended. @param text - the file as it stands now
 *  @throws Stop 2 when the rows have a fault or the test is not there, 1 where the file lacks a column */
export const placeRows = (text: string, entry: Entry): Placed => {
  const { file } = entry;
  const dialect = dialectOf(text, file);
  const { test, values } = placedValues(text, entry);
  const rows = values.map((row) => rowIn(dialect, file, row));
  checkRows(text, rows, entry);
  return { test, rows, values };
};

/** The columns that the rows fill.
 *  @throws Stop 1 where the file lacks a column that no row can do without */
export const columnsFilled = (text: string, entry: Entry): readonly string[] => {
  stopOnMissing(readTests(text, entry.file, entry.engine, entry.gauges).problems);
  const needed = placedValues(text, entry).values.flatMap((row) => filled(row));
  return [...new Set(needed)];
};

/** The test they belong to and the rows by column name. */
const placedValues = (
  text: string,
  { file, rows, target, engine, gauges }: Entry,
): Pick<Placed, "test" | "values"> => {
  const { tests } = readTests(text, file, engine, gauges);
  const columns = dialectOf(text, file).columns;
  const { test, date } = testFor(tests, target, engine.id, text);
  const found = tests.find(({ id }) => id === test);
  const taken = new Map<string, number>();
  for (const { what, gauge = "", take } of found?.rows ?? [])
    taken.set(key(what, gauge), Math.max(take, taken.get(key(what, gauge)) ?? 0));
  const values = rows.map((row, i) => {
    const at = key(row.what ?? "", row.gauge ?? "");
    const take = (taken.get(at) ?? 0) + 1;
    taken.set(at, take);
    return {
      ...row,
      test,
      date,
      take: take === 1 && !columns.includes("take") ? "" : String(take),
      meter: i === 0 ? target.meter : "",
    };
  });
  return { test, values };
};

const key = (what: string, gauge: string): string => `${what}\n${gauge}`;

const testFor = (
  tests: readonly Test[],
  target: Target,
  engine: string,
  text: string,
): { test: string; date: string } => {
  if (target.kind === "new")
    return { test: freeName(target.date, (name) => text.includes(name)), date: target.date };
  const found = target.kind === "latest" ? tests.at(-1) : tests.find(({ id }) => id === target.test);
  if (found !== undefined) return { test: found.id, date: found.date };
  if (target.kind === "latest")
    throw usage("test-none", `${engine} has no test to add to`, "an earlier test", "leave --same-test out");
  const [near] = nearest(
    target.test,
    tests.map(({ id }) => id),
  );
  throw usage(
    "test-unknown",
    `${engine} has no test "${target.test}"`,
    "the name of a test",
    near === undefined ? "leave --test out for a new one" : `did you mean ${near}?`,
  );
};

/** The first free letter of the day; a name counts as taken even where only a faulty row holds it. */
export const freeName = (date: string, isTaken: (name: string) => boolean): string => {
  for (const second of ["", ..."abcdefghijklmnopqrstuvwxyz"])
    for (const first of "abcdefghijklmnopqrstuvwxyz") {
      const name = `${date}${second}${first}`;
      if (!isTaken(name)) return name;
    }
  throw usage("day-full", `${date} holds 702 tests`, "fewer", "--date YYYY-MM-DD, another day");
};

/** New rows must read back without a fault; faults of older rows are no reason to lose a reading. */
const checkRows = (
  text: string,
  rows: readonly string[],
  { file, engine, gauges }: Pick<Entry, "file" | "engine" | "gauges">,
): void => {
  const before = /[\r\n]$/.test(text) ? text : `${text}\n`;
  const first = before.split(/\r\n|\r|\n/).length;
  const after = `${before}${rows.join("\n")}\n`;
  const faults = readTests(after, file, engine, gauges).problems.filter(
    ({ severity, line }) => severity === "error" && (line ?? 0) >= first,
  );
  if (faults.length > 0) throw new Stop(2, faults.map(asTyped));
};
