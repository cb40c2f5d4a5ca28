// measurements.csv: what was measured on the engine taken apart, a row a measurement. Every row stands alone.

import { type Problem, byText } from "../problem/index.ts";
import type { Length } from "../quantity/index.ts";
import { byAndNote, flagFormulas } from "./common-cells.ts";
import type { Engine } from "./engine-types.ts";
import { labelMend, labelsExpected, readLabel } from "./measured-labels.ts";
import { type MeasuredQuantity, partNames, quantitiesOf } from "./measured-parts.ts";
import { placeExample, placeNear, placesExpected, readPlace } from "./measured-places.ts";
import {
  type MeasuredAs,
  type MeasuredDimension,
  type MeasuredUnit,
  isLengthUnit,
  measuredUnitNamed,
  measuredUnits,
  readMeasured,
} from "./measured-value.ts";
import type { MeasuredPart, MeasuredValue, Measurement, PartState } from "./measurement-types.ts";
import { readRows } from "./read-rows.ts";
import type { RowView } from "./row-view.ts";

/** The columns that measurements.csv must have, in order. */
export const measurementColumns: readonly string[] = [
  "teardown",
  "date",
  "part",
  "label",
  "at",
  "quantity",
  "value",
  "unit",
  "instrument",
  "resolution",
  "by",
  "state",
  "note",
];

/** Columns that a file need not have. */
export const optionalMeasurementColumns: readonly string[] = ["u", "instead"];

export const partStates: readonly PartState[] = ["as found", "cleaned", "new part", "after machining"];

/** Reads measurements.csv of an engine, by teardown and day; rows with a fault are left out and reported. */
export const readMeasurements = (
  text: string,
  file: string,
  engine: Engine,
): { readonly measurements: readonly Measurement[]; readonly problems: readonly Problem[] } => {
  const { rows, problems } = readRows(text, file, {
    columns: measurementColumns,
    needed: ["date", "part", "quantity", "value", "unit"],
    read: (row, delimiter) => measurementIn(row, engine, delimiter),
  });
  const measurements = rows.sort((a, b) => a.teardown - b.teardown || byText(a.date, b.date));
  return { measurements, problems };
};

const measurementIn = (row: RowView, engine: Engine, delimiter: string): Measurement | undefined => {
  const teardown = teardownIn(row);
  const date = row.date("date");
  const part = row.neededWord("part", partNames);
  const state = row.word("state", partStates) ?? "as found";
  const texts = { ...instrumentIn(row), ...byAndNote(row) };
  const quantity = part === undefined ? undefined : quantityIn(row, part);
  if (part === undefined || quantity === undefined) return undefined;
  const label = labelIn(row, part, quantity, engine.cylinders);
  const at = placeIn(row, part, quantity);
  const value = valueIn(row, part, quantity, delimiter);
  if (date === undefined || value === undefined) return undefined;
  return {
    teardown,
    date,
    part,
    ...(label === "" ? {} : { label }),
    ...(at === "" ? {} : { at }),
    quantity: quantity.name,
    ...value,
    ...texts,
    ...(row.word("instead", ["yes", "no"]) === "yes" ? { instead: true } : {}),
    state,
    line: row.line,
  };
};

const teardownIn = (row: RowView): number => {
  const mend = "write 1 for the first time the engine was apart, 2 for the next";
  const bounds = { of: "the number of a teardown", least: 1, most: 99, mend };
  const read = row.number("teardown", bounds) ?? 1;
  if (!Number.isInteger(read))
    row.fault("teardown", "number-range", { text: row.text("teardown"), ...bounds });
  return read;
};

const instrumentIn = (row: RowView): Pick<Measurement, "instrument"> => {
  flagFormulas(row, ["instrument"]);
  const instrument = row.text("instrument");
  return instrument === "" ? {} : { instrument };
};

const quantityIn = (row: RowView, part: MeasuredPart): MeasuredQuantity | undefined => {
  const known = quantitiesOf(part);
  const words = known.map(({ name }) => name);
  const name = row.neededWord("quantity", words);
  return known.find((quantity) => quantity.name === name);
};

const labelIn = (
  row: RowView,
  part: MeasuredPart,
  { name, label }: MeasuredQuantity,
  cylinders: readonly string[],
): string => {
  const text = row.text("label");
  const read = readLabel(label, text, cylinders);
  if (read !== undefined) return read;
  const facts = { what: `${part} ${name}`, text, expected: labelsExpected(label, cylinders) };
  row.fault("label", "label-bad", { ...facts, mend: labelMend(label, cylinders, text) });
  return "";
};

const placeIn = (row: RowView, part: MeasuredPart, quantity: MeasuredQuantity): string => {
  const text = row.text("at");
  const read = readPlace(quantity, text);
  if (read !== undefined) return read;
  const expected = placesExpected(quantity);
  row.fault("at", "place-bad", {
    what: `${part} ${quantity.name}`,
    text,
    expected,
    example: placeNear(quantity, text) ?? placeExample(quantity),
  });
  return "";
};

type ValueOfRow = Pick<Measurement, "value" | "unit" | "decimals" | "resolution" | "uncertainty">;

const valueIn = (
  row: RowView,
  part: MeasuredPart,
  quantity: MeasuredQuantity,
  delimiter: string,
): ValueOfRow | undefined => {
  const { kind, name, words, most } = quantity;
  const what = `${part} ${name}`;
  const text = row.text("value");
  if (kind === "word") {
    if (row.text("unit") !== "")
      row.fault(
        "unit",
        "measure-bad",
        { what, text, fault: "unit-spare", unit: row.text("unit") },
        "caution",
      );
    const word = row.neededWord("value", words);
    return word === undefined ? undefined : { value: { kind: "word", word } };
  }
  const unit = unitIn(row, kind);
  if (unit === undefined) return undefined;
  const facts = { what, text, unit };
  if (isNotTaken(text)) return row.fault("value", "measure-bad", { ...facts, fault: "not-taken" });
  const value = figureIn(row, "value", facts, { kind, unit, most, delimiter });
  if (value === undefined) return undefined;
  const decimals = isLengthUnit(unit) ? decimalsOf(withoutAddedZero(text, delimiter)) : undefined;
  return {
    value,
    unit,
    ...(decimals === undefined ? {} : { decimals }),
    ...doubtIn(row, unit, delimiter),
  };
};

/** Digits behind the mark, of leaves the most of both; undefined where a fraction or a power of ten tells of no digit. */
export const decimalsOf = (text: string): number | undefined => {
  if (/[/e]/i.test(text)) return undefined;
  const numbers = text.split("..").map((part) => /[.,](\d+)\s*$/.exec(part.trim())?.[1] ?? "");
  return Math.max(...numbers.map((digits) => digits.length));
};

/** Three decimals that could be read as thousands are written with a zero behind them (cellText): it tells of no digit. */
const withoutAddedZero = (text: string, delimiter: string): string =>
  delimiter === "," ? text : text.replace(/^([1-9]\d{0,2}[.,]\d{3})0$/, "$1");

/** What was not measured has no row. */
const isNotTaken = (text: string): boolean => /^(?:|-|x)$/i.test(text);

interface Figure {
  readonly what: string;
  readonly text: string;
  readonly unit: MeasuredUnit;
}

const figureIn = (row: RowView, column: string, facts: Figure, as: MeasuredAs): MeasuredValue | undefined => {
  const read = readMeasured(facts.text, as);
  if (read.ok) return read.value;
  if (read.fault !== "two-ways") return row.fault(column, "measure-bad", { ...facts, fault: read.fault });
  return row.fault(column, "number-two-ways", { text: facts.text, small: read.small, large: read.large });
};

const unitIn = (row: RowView, kind: MeasuredDimension): MeasuredUnit | undefined => {
  const text = row.text("unit");
  const units = measuredUnits[kind];
  if (text === "") return row.fault("unit", "unit-missing", { text: row.text("value"), units });
  const named = measuredUnitNamed(text);
  return units.find((unit) => unit === named) ?? row.fault("unit", "unit-unknown", { text, units });
};

/** Resolution and standard uncertainty, in the unit of the row; those of a length only, nothing else is judged by them. */
const doubtIn = (
  row: RowView,
  unit: MeasuredUnit,
  delimiter: string,
): Pick<Measurement, "resolution" | "uncertainty"> => {
  const resolution = smallIn(row, "resolution", unit, delimiter);
  const uncertainty = smallIn(row, "u", unit, delimiter);
  return {
    ...(resolution === undefined ? {} : { resolution }),
    ...(uncertainty === undefined ? {} : { uncertainty }),
  };
};

/** The coarsest that anybody measures an engine with. [m] */
const coarsest = 0.005;

const smallIn = (row: RowView, column: string, unit: MeasuredUnit, delimiter: string): Length | undefined => {
  const text = row.text(column);
  if (isNotTaken(text) || !isLengthUnit(unit)) return undefined;
  const facts = { what: column === "u" ? "the uncertainty" : "the resolution", text, unit };
  const value = figureIn(row, column, facts, { kind: "length", unit, most: coarsest, delimiter });
  if (value === undefined) return undefined;
  if (value.kind === "length" && value.value > 0 && value.value <= coarsest) return value.value;
  return row.fault(column, "measure-bad", { ...facts, fault: "coarse" });
};
