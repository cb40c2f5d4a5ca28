// The condition columns of tests.csv: facts of the day, each with its unit in the column's name.

import { type UnitName, toSi } from "../quantity/index.ts";
import type { Bounds, RowView } from "./row-view.ts";
import type { Conditions } from "./types.ts";

interface NumberColumn {
  readonly key: keyof Conditions;
  readonly unit?: UnitName;
  readonly bounds: Bounds;
}

const bounds = (of: string, least: number, most: number): Bounds => ({ of, least, most });

/** Every numeric condition column by name. */
export const numberColumns: Readonly<Record<string, NumberColumn>> = {
  altitude_m: { key: "altitude", unit: "m", bounds: bounds("altitude in m", -500, 6_000) },
  altitude_ft: { key: "altitude", unit: "ft", bounds: bounds("altitude in ft", -1_600, 20_000) },
  station_pressure_hPa: {
    key: "stationPressure",
    unit: "hPa",
    bounds: bounds("station pressure in hPa", 450, 1_090),
  },
  station_pressure_kPa: {
    key: "stationPressure",
    unit: "kPa",
    bounds: bounds("station pressure in kPa", 45, 109),
  },
  station_pressure_inHg: {
    key: "stationPressure",
    unit: "inHg",
    bounds: bounds("station pressure in inHg", 13.3, 32.2),
  },
  qnh_hPa: { key: "qnh", unit: "hPa", bounds: bounds("sea-level pressure in hPa", 870, 1_090) },
  qnh_inHg: { key: "qnh", unit: "inHg", bounds: bounds("sea-level pressure in inHg", 25.7, 32.2) },
  air_temp_C: { key: "airTemperature", unit: "C", bounds: bounds("air temperature in C", -60, 60) },
  air_temp_F: { key: "airTemperature", unit: "F", bounds: bounds("air temperature in F", -76, 140) },
  crank_rpm: { key: "crankSpeed", bounds: bounds("cranking speed in rpm", 20, 2_000) },
  crank_V: { key: "crankVolts", bounds: bounds("volts while cranking", 1, 60) },
  strokes: { key: "strokes", bounds: bounds("strokes", 1, 60) },
  engine_temp_C: { key: "engineTemperature", unit: "C", bounds: bounds("engine temperature in C", -60, 250) },
  engine_temp_F: { key: "engineTemperature", unit: "F", bounds: bounds("engine temperature in F", -76, 480) },
  regulated_psi: { key: "regulated", unit: "psi", bounds: bounds("supply pressure in psi", 5, 200) },
  regulated_kPa: { key: "regulated", unit: "kPa", bounds: bounds("supply pressure in kPa", 30, 1_400) },
  regulated_bar: { key: "regulated", unit: "bar", bounds: bounds("supply pressure in bar", 0.3, 14) },
  master_psi: { key: "master", unit: "psi", bounds: bounds("master reading in psi", 0, 200) },
  master_kPa: { key: "master", unit: "kPa", bounds: bounds("master reading in kPa", 0, 1_400) },
  master_bar: { key: "master", unit: "bar", bounds: bounds("master reading in bar", 0, 14) },
  master_percent: { key: "masterLost", bounds: bounds("master reading in percent lost", 0, 100) },
};

/** Every condition column that takes a word, with its words. */
export const wordColumns = {
  engine_temp: ["warm", "part-warm", "cold"],
  throttle: ["open", "closed"],
  plugs_out: ["all", "one"],
  release: ["active", "defeated"],
} as const;

const wordKeys = {
  engine_temp: "engineTemp",
  throttle: "throttle",
  plugs_out: "plugsOut",
  release: "release",
} as const;

/** All condition columns, in the order a new file is written with. */
export const conditionColumns: readonly string[] = [
  "altitude_m",
  "station_pressure_hPa",
  "qnh_hPa",
  "air_temp_C",
  "crank_rpm",
  "crank_V",
  "strokes",
  "engine_temp",
  "engine_temp_C",
  "throttle",
  "plugs_out",
  "release",
  "regulated_psi",
  "master_psi",
];

const isWordColumn = (name: string): name is keyof typeof wordColumns => Object.hasOwn(wordColumns, name);

/** Whether a column of this name states a condition of the test. */
export const isConditionColumn = (name: string): boolean =>
  Object.hasOwn(numberColumns, name) || isWordColumn(name);

/** One condition as a row states it. */
export interface Stated {
  readonly column: string;
  readonly key: keyof Conditions;
  readonly value: number | string;
  readonly row: RowView;
}

/** What one row says of the day; faults go to the row. */
export const statedConditions = (row: RowView, columns: readonly string[]): Stated[] => {
  const stated: Stated[] = [];
  for (const column of columns) {
    const numeric = Object.hasOwn(numberColumns, column) ? numberColumns[column] : undefined;
    if (numeric !== undefined) {
      const { key, unit } = numeric;
      const written = row.number(column, numeric.bounds);
      if (written !== undefined)
        stated.push({ column, key, value: unit === undefined ? written : toSi(written, unit), row });
    } else if (isWordColumn(column)) {
      const word = row.word<string>(column, wordColumns[column]);
      if (word !== undefined) stated.push({ column, key: wordKeys[column], value: word, row });
    }
  }
  return stated;
};
