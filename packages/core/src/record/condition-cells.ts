// A condition as a person types it (`350m`, `22C`, `warm`), as the cell of the column that a file has for it.

import {
  type Dimension,
  type QuantityFault,
  type UnitName,
  fromSi,
  readNumber,
  readQuantity,
  toSi,
  unitsOf,
} from "../quantity/index.ts";
import { conditionColumns, numberColumns } from "./conditions.ts";
import type { Bounds } from "./row-view.ts";
import type { Conditions } from "./types.ts";

/** A condition of a test as the cell of its column, or why what was typed is none. */
export type ConditionCell =
  | { readonly ok: true; readonly column: string; readonly text: string }
  | { readonly ok: false; readonly found: string; readonly expected: string; readonly mend: string };

interface Kind {
  readonly key: keyof Conditions;
  readonly dimension?: Dimension;
  /** The unit of a bare number, where only one is possible. */
  readonly assumed?: UnitName;
  readonly words?: readonly string[];
  readonly column?: string;
  readonly example: string;
  /** The unit shown with a bare number, where the example has none. */
  readonly unitExample?: UnitName;
}

/** The conditions of a test by the name of their option. */
export const conditionKinds: Readonly<Record<string, Kind>> = {
  altitude: { key: "altitude", dimension: "length", example: "350m" },
  "station-pressure": { key: "stationPressure", dimension: "pressure", example: "965hPa" },
  qnh: { key: "qnh", dimension: "pressure", example: "1016hPa" },
  air: { key: "airTemperature", dimension: "temperature", example: "22C" },
  speed: { key: "crankSpeed", dimension: "speed", assumed: "rpm", example: "230rpm" },
  volts: { key: "crankVolts", dimension: "voltage", assumed: "V", example: "10.4" },
  strokes: { key: "strokes", example: "6" },
  "engine-temp": {
    key: "engineTemp",
    words: ["warm", "part-warm", "cold"],
    column: "engine_temp",
    dimension: "temperature",
    example: "warm",
    unitExample: "C",
  },
  throttle: { key: "throttle", words: ["open", "closed"], column: "throttle", example: "open" },
  plugs: { key: "plugsOut", words: ["all", "one"], column: "plugs_out", example: "all" },
  release: { key: "release", words: ["active", "defeated"], column: "release", example: "defeated" },
  regulated: { key: "regulated", dimension: "pressure", example: "80psi" },
  master: { key: "master", dimension: "pressure", example: "43psi" },
};

/** The cell for a condition typed as an option.
 *  @param columns - the columns of the file  @param assumed - unit of a bare number, where the readings settle it */
export const conditionCell = (
  option: string,
  typed: string,
  columns: readonly string[],
  assumed?: UnitName | "%",
): ConditionCell => {
  const kind = conditionKinds[option];
  if (kind === undefined) throw new RangeError(`conditionCell: no condition ${option}`);
  const text = typed.trim();
  const word = kind.words?.find((known) => known === text.toLowerCase());
  if (word !== undefined && kind.column !== undefined) return placed(kind.column, word, columns, option);
  if (kind.words !== undefined && kind.dimension === undefined)
    return refused(option, typed, `one of: ${kind.words.join(", ")}`, kind.example);
  if (option === "strokes") return bareCell("strokes", text, option, typed, columns);
  if (option === "master" && (text.endsWith("%") || (assumed === "%" && readNumber(text).ok)))
    return bareCell("master_percent", text.replace(/\s*%$/, ""), option, typed, columns);
  const key = option === "engine-temp" ? "engineTemperature" : kind.key;
  return quantityCell({ ...kind, key }, option, typed, columns, assumed === "%" ? undefined : assumed);
};

/** The cell of a column that takes a number without a unit. */
const bareCell = (
  name: string,
  text: string,
  option: string,
  typed: string,
  columns: readonly string[],
): ConditionCell => {
  const reading = readNumber(text);
  const column = numberColumns[name];
  if (column === undefined) throw new RangeError(`bareCell: no column ${name}`);
  const value =
    reading.ok && (name !== "strokes" || Number.isInteger(reading.value)) ? reading.value : undefined;
  if (value === undefined || !isWithin(value, column.bounds))
    return refused(option, typed, rangeOf(column.bounds), name === "strokes" ? "6" : "43%");
  return placed(name, String(value), columns, option);
};

const isWithin = (value: number, { least, most }: Bounds): boolean => value >= least && value <= most;

const rangeOf = ({ of, least, most }: Bounds): string => `${of} from ${String(least)} to ${String(most)}`;

/** A number with the first unit in which it is within the bounds of its kind, that of the example before others: 9000 is no
 *  height in metres, so it is one in feet. */
const inUnitThatFits = (number: string, kind: Kind): string | undefined => {
  const { dimension = "length", example, unitExample } = kind;
  const read = (unit: UnitName): number | undefined => {
    const reading = readQuantity(`${number}${unit}`, dimension);
    return reading.ok ? reading.si : undefined;
  };
  const fits = (unit: UnitName): boolean => {
    const si = read(unit);
    return (
      si !== undefined &&
      columnsOf(kind).some(([, { unit: own, bounds }]) =>
        isWithin(own === undefined ? si : fromSi(si, own), bounds),
      )
    );
  };
  const usual = unitsOf(dimension).filter((unit) => example.endsWith(unit) || unit === unitExample);
  const unit = [...usual, ...unitsFor(kind)].find(fits);
  return unit === undefined ? undefined : `${number}${unit}`;
};

/** What to type instead of a quantity that was not understood. */
const quantityMend = (fault: QuantityFault, typed: string, kind: Kind): string => {
  const text = typed.trim();
  if (fault === "unit-missing") return inUnitThatFits(text, kind) ?? kind.example;
  return fault === "two-ways" ? `${text.replace(",", "")} or ${text.replace(",", ".")}` : kind.example;
};

/** The columns that hold this condition. */
const columnsOf = ({ key }: Kind) => Object.entries(numberColumns).filter(([, column]) => column.key === key);

/** The units that columns for this condition can stand in. */
const unitsFor = (kind: Kind): readonly UnitName[] => {
  const { assumed, dimension = "length" } = kind;
  const units = columnsOf(kind).flatMap(([, { unit }]) => unit ?? []);
  return units.length > 0 ? units : assumed === undefined ? unitsOf(dimension) : [assumed];
};

/** The columns of a table, and behind them those of conditions it has none for: what can be written there once they
 *  are added. */
export const withConditionColumns = (columns: readonly string[]): readonly string[] => {
  const keys = columns.flatMap((name) => numberColumns[name]?.key ?? []);
  const lacking = [...conditionColumns, "master_percent"].filter((name) => {
    const key = numberColumns[name]?.key;
    return !columns.includes(name) && (key === undefined || !keys.includes(key));
  });
  return [...columns, ...lacking];
};

const quantityCell = (
  kind: Kind,
  option: string,
  typed: string,
  columns: readonly string[],
  assumed: UnitName | undefined,
): ConditionCell => {
  const dimension = kind.dimension ?? "length";
  const reading = readQuantity(typed, dimension, kind.assumed ?? assumed);
  if (!reading.ok) {
    const words = kind.words === undefined ? "" : `${kind.words.join(", ")}, or `;
    const expected = `${words}a number with its unit (${unitsFor(kind).join(", ")})`;
    return refused(option, typed, expected, quantityMend(reading.fault, typed, kind));
  }
  const fitting = columnsOf(kind);
  const here = fitting.filter(([name]) => columns.includes(name));
  const [best] = [...here].sort(
    ([, a], [, b]) => Number(b.unit === reading.unit) - Number(a.unit === reading.unit),
  );
  if (best === undefined) return placed(fitting[0]?.[0] ?? option, "", columns, option);
  const [name, column] = best;
  const same = column.unit === undefined || column.unit === reading.unit;
  const value = same
    ? String(reading.value)
    : String(Number(fromSi(toSi(reading.value, reading.unit), column.unit).toPrecision(6)));
  if (!isWithin(Number(value), column.bounds))
    return refused(
      option,
      typed,
      rangeOf(column.bounds),
      inUnitThatFits(String(reading.value), kind) ?? kind.example,
    );
  return { ok: true, column: name, text: value };
};

const placed = (column: string, text: string, columns: readonly string[], option: string): ConditionCell =>
  columns.includes(column)
    ? { ok: true, column, text }
    : {
        ok: false,
        found: `tests.csv has no column for --${option}`,
        expected: `a column ${column}`,
        mend: `add ,${column} to the end of the first line of tests.csv`,
      };

const refused = (option: string, typed: string, expected: string, example: string): ConditionCell => ({
  ok: false,
  found: `--${option} "${typed}"`,
  expected,
  mend: `--${option} ${example}`,
});
