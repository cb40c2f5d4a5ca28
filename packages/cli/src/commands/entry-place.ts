// Where new rows go in tests.csv: which test they belong to, which take they are. Worked out under the file's lock.

import {
  type Dialect,
  type Engine,
  type Gauge,
  type Problem,
  type Test,
  dialectOf,
  nearest,
  readTests,
  rowText,
} from "@sealtrend/core";
import { Stop } from "../command.ts";
import type { RowValues } from "./entry-rows.ts";
import type { Target } from "./entry-target.ts";
import { usage } from "./usage.ts";

export interface Placed {
  readonly test: string;
  readonly rows: readonly string[];
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
 *  @throws Stop 2 when the rows have a fault or the test is not there */
export const placeRows = (text: string, { file, rows, target, engine, gauges }: Entry): Placed => {
  const dialect = dialectOf(text, file);
  const { tests } = readTests(text, file, engine, gauges);
  const { test, date } = testFor(tests, target, engine.id, text);
  const found = tests.find(({ id }) => id === test);
  const taken = new Map<string, number>();
  for (const { what, gauge = "", take } of found?.rows ?? [])
    taken.set(key(what, gauge), Math.max(take, taken.get(key(what, gauge)) ?? 0));
  const placed = rows.map((row, i) => {
    const at = key(row.what ?? "", row.gauge ?? "");
    const take = (taken.get(at) ?? 0) + 1;
    taken.set(at, take);
    return rowIn(dialect, file, {
      ...row,
      test,
      date,
      take: String(take),
      meter: i === 0 ? target.meter : "",
    });
  });
  checkRows(text, placed, { file, engine, gauges });
  return { test, rows: placed };
};

const key = (what: string, gauge: string): string => `${what}\n${gauge}`;

const testFor = (
  tests: readonly Test[],
  target: Target,
  engine: string,
  text: string,
): { test: string; date: string } => {
  if (target.kind === "new") return { test: freeName(target.date, text), date: target.date };
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

/** The first free letter of the day; taken even where only a faulty row holds it. */
const freeName = (date: string, text: string): string => {
  for (const second of ["", ..."abcdefghijklmnopqrstuvwxyz"])
    for (const first of "abcdefghijklmnopqrstuvwxyz") {
      const name = `${date}${second}${first}`;
      if (!text.includes(name)) return name;
    }
  throw usage("day-full", `${date} holds 702 tests`, "fewer", "use another day");
};

const rowIn = (dialect: Dialect, file: string, values: RowValues): string => {
  const lost = Object.keys(values).find((name) => values[name] !== "" && !dialect.columns.includes(name));
  if (lost !== undefined)
    throw usage(
      "column-missing",
      `${file} has no column ${lost}`,
      `"${lost}" in its first line`,
      `add ${dialect.delimiter}${lost} to the end of the first line`,
      1,
    );
  return rowText(values, dialect);
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

/** As a fault of what was typed, not of a line that is not there yet. */
const asTyped = ({ code, severity, found, expected, mend }: Problem) => ({
  code,
  severity,
  found,
  expected,
  mend,
});
