// Lines whose figures stand in measurements.csv to the letter already: a file is entered again, with or without new lines.

import type { Measurement, TypedMeasurement } from "@sealtrend/core/parts";
import { type Entry, typedMeasurements } from "./typed-entry.ts";

export interface Fresh {
  readonly entry: Entry;
  /** Figures of the lines that are recorded already. */
  readonly recorded: number;
}

/** The lines that are not recorded yet. Each row stands for one figure: two equal readings of a place need two rows. */
export const freshLines = (entry: Entry, recorded: readonly Measurement[]): Fresh => {
  let rows = countsOf(recorded);
  const taken = entry.taken.filter(({ measurements }) => {
    const left = without(rows, measurements);
    if (left === undefined || measurements.length === 0) return true;
    rows = left;
    return false;
  });
  const fresh = { ...entry, taken };
  return { entry: fresh, recorded: typedMeasurements(entry).length - typedMeasurements(fresh).length };
};

/** Whether all figures of a line are. */
export const areRecordedAlready = (
  typed: readonly TypedMeasurement[],
  recorded: readonly Measurement[],
): boolean => without(countsOf(recorded), typed) !== undefined;

type Counts = ReadonlyMap<string, number>;

const countsOf = (recorded: readonly Measurement[]): Counts => {
  const rows = new Map<string, number>();
  for (const one of recorded) rows.set(keyOf(one), (rows.get(keyOf(one)) ?? 0) + 1);
  return rows;
};

/** The rows that are left when each figure takes one; undefined where one has none. */
const without = (rows: Counts, typed: readonly TypedMeasurement[]): Counts | undefined => {
  const left = new Map(rows);
  for (const one of typed) left.set(keyOf(one), (left.get(keyOf(one)) ?? 0) - 1);
  return [...left.values()].some((number) => number < 0) ? undefined : left;
};

/** All cells of a row, of those that may be blank as blank. */
const keyOf = ({
  teardown,
  date,
  part,
  label = "",
  at = "",
  quantity,
  value,
  unit,
  instrument = "",
  by = "",
  state,
  note = "",
  instead,
}: Omit<Measurement, "line">): string =>
  JSON.stringify([
    teardown,
    date,
    part,
    label,
    at,
    quantity,
    value,
    unit,
    instrument,
    by,
    state,
    note,
    instead,
  ]);
