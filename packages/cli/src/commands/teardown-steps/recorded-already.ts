// Whether all typed figures stand in measurements.csv to the letter already: the same lines were entered before.

import type { Measurement, TypedMeasurement } from "@sealtrend/core";

/** Each recorded row stands for one figure: two equal readings of a place need two rows. */
export const areRecordedAlready = (
  typed: readonly TypedMeasurement[],
  recorded: readonly Measurement[],
): boolean => {
  const rows = new Map<string, number>();
  for (const one of recorded) rows.set(keyOf(one), (rows.get(keyOf(one)) ?? 0) + 1);
  return typed.every((one) => {
    const left = rows.get(keyOf(one)) ?? 0;
    rows.set(keyOf(one), left - 1);
    return left > 0;
  });
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
