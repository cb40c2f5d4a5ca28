// A typed measurement as a row of measurements.csv, value and unit as they were typed.

import { measurementColumns } from "../../record/index.ts";
import type { TypedMeasurement } from "./typing.ts";

/** The cells by column, in the order of the table; `instead` only where it is said, for it is no column of every file. */
export const rowOf = (measurement: TypedMeasurement): Readonly<Record<string, string>> => {
  const { teardown, written, label = "", at = "", instrument = "", by = "", note = "" } = measurement;
  const { date, part, quantity, state, instead } = measurement;
  const cells: Readonly<Record<string, string>> = {
    ...{
      teardown: String(teardown),
      date,
      part,
      label,
      at,
      quantity,
      value: written.value,
      unit: written.unit,
    },
    ...{ instrument, resolution: written.resolution, by, state, note },
  };
  return {
    ...Object.fromEntries(measurementColumns.map((column) => [column, cells[column] ?? ""])),
    ...(instead === true ? { instead: "yes" } : {}),
  };
};
