// The input laid out for computing: merged tests, works, epochs, columns, and which tests count.

import { at } from "./at.ts";
import { epochsOf, worksOf, type Work } from "./epochs.ts";
import type { HistoryInput } from "./input.ts";
import { mergeTests, type MergedTest } from "./merge-tests.ts";
import { noiseOf, type Noise } from "./noise.ts";
import type { Column } from "./reading-table.ts";
import { placesOf } from "./series.ts";

export interface Layout {
  readonly labels: readonly string[];
  readonly noise: Noise;
  readonly tests: readonly MergedTest[];
  readonly works: readonly Work[];
  /** All epochs of all cylinders. */
  readonly columns: readonly Column[];
  /** For each cylinder the place of its current epoch in `columns`. */
  readonly current: readonly number[];
  /** Places of the tests that count: in full use, with at least one reading. */
  readonly rows: readonly number[];
  /** Place on the axis of every test, in the unit that slopes count in. */
  readonly x: readonly number[];
  readonly slopePer: 1 | 1000;
  /** Units that slopes count in, a year; absent where not known. */
  readonly perYear?: number;
}

export const layOut = (input: HistoryInput): Layout => {
  const { labels, axis, kind } = input;
  const { tests, services } = mergeTests(input.tests, input.services);
  const works = worksOf(services);
  const epochs = epochsOf(works, { cylinders: labels.length, tests: tests.length });
  const columns = epochs.flat();
  const slopePer = axis.kind === "meter" ? 1000 : 1;
  const x = tests.map((test) => test.x / slopePer);
  const rows = placesOf(
    tests,
    ({ use, cells }) => use === "full" && cells.some((cell) => cell.kind === "read"),
  );
  const perYear = axis.kind === "dates" ? 1 : usageOf(tests, rows, x);
  return {
    labels,
    noise: noiseOf[kind],
    tests,
    works,
    columns,
    current: epochs.map((own) => columns.indexOf(at(own, own.length - 1))),
    rows,
    x,
    slopePer,
    ...(perYear === undefined ? {} : { perYear }),
  };
};

/** Places of the tests that count since the last work on all cylinders: what the engine-wide channel goes by. */
export const wholeRows = ({ works, labels, rows }: Layout): readonly number[] => {
  const since = sinceWhole({ works, labels });
  return rows.filter((test) => test >= since);
};

/** Place of the first test after the last work on all cylinders. */
export const sinceWhole = ({ works, labels }: Pick<Layout, "works" | "labels">): number =>
  works.filter((work) => work.renewed.length === labels.length).at(-1)?.before ?? 0;

/** (last meter - first) / (years between), only if a year or more apart (L.5). */
const usageOf = (
  tests: readonly MergedTest[],
  rows: readonly number[],
  x: readonly number[],
): number | undefined => {
  const [first, last] = [rows[0], rows.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const years = at(tests, last).years - at(tests, first).years;
  const run = at(x, last) - at(x, first);
  return years >= 1 && run > 0 ? run / years : undefined;
};
