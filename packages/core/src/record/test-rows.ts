// One row of tests.csv: its name, its kind, and its cells in the engine's order.

import {
  type GaugePressure,
  type PressureUnit,
  fromSi,
  gaugePressure,
  gaugeUnitNamed,
  gaugeUnits,
  speed,
  toSi,
  volume,
  writeQuantity,
} from "../quantity/index.ts";
import type { Draft } from "./draft.ts";
import { heardIn } from "./heard.ts";
import { readReadingCell } from "./reading-cell.ts";
import type { Bounds, RowView } from "./row-view.ts";
import type { Engine } from "./engine-types.ts";
import type { Gauge } from "./gauge-types.ts";
import type { Cell, Heard, LeakKind, PerCylinder, PressureKind, PressureRow } from "./types.ts";

export const pressureKinds: readonly PressureKind[] = [
  "dry",
  "wet",
  "first-stroke",
  "running",
  "snap-throttle",
];
export const leakKinds: readonly LeakKind[] = ["leak-down", "leak-down-oiled", "leak-down-lower"];
const factKinds = ["oil", "regulated", "speed", "strokes", "order"] as const;
const readingKinds = [...pressureKinds, ...leakKinds] as const;
/** What a row of tests.csv can be. */
export const rowKinds = [...readingKinds, "heard", ...factKinds] as const;

export type RowContent =
  | {
      readonly kind: "readings";
      readonly row: PressureRow;
      /** What the tester of a leak-down row is set to by gauges.csv; a supply that the test states goes before. */
      readonly supply?: GaugePressure;
    }
  | { readonly kind: "heard"; readonly heard: readonly (readonly Heard[] | undefined)[] }
  | { readonly kind: "fact"; readonly facts: PerCylinder };

/** The column of tests.csv that holds a cylinder's readings. */
export const cylinderColumn = (label: string): string => `c${label}`;

const columnsOf = ({ cylinders }: Engine): readonly string[] => {
  const columns = columnsByLabels.get(cylinders) ?? cylinders.map(cylinderColumn);
  columnsByLabels.set(cylinders, columns);
  return columns;
};

/** Every row asks for the same names. */
const columnsByLabels = new WeakMap<readonly string[], readonly string[]>();

/** Whether a column of this name looks like one of a cylinder. */
export const isCylinderColumn = (name: string): boolean => /^c[A-Z]?\d{1,2}$/.test(name);

/** The largest reading that is believed, 20 MPa: well above any cranking diesel. */
const mostReading_Pa = 20_000_000;

/** Reads what a row holds; undefined after a fault. */
export const rowContent = (
  row: RowView,
  engine: Engine,
  gauges: readonly Gauge[],
  delimiter: string,
): RowContent | undefined => {
  const what = row.neededWord("what", rowKinds);
  if (what === undefined) return checkLoose(row, engine, delimiter);
  if (what === "heard")
    return {
      kind: "heard",
      heard: engine.cylinders.map((label) =>
        heardIn(row, { column: cylinderColumn(label), label }, engine.cylinders),
      ),
    };
  const fact = factKinds.find((name) => name === what);
  if (fact !== undefined) return factRow(row, engine, gauges, fact);
  const reading = readingKinds.find((name) => name === what);
  return reading === undefined ? undefined : readingRow(row, engine, gauges, reading, delimiter);
};

/** Names what else is wrong in a row whose kind is not known: its unit, and cells that begin as numbers do. */
const checkLoose = (row: RowView, engine: Engine, delimiter: string): undefined => {
  const text = row.text("unit");
  if (text !== "" && text !== "%" && gaugeUnitNamed(text) === undefined)
    row.fault("unit", "unit-unknown", { text, units: [...gaugeUnits, "%"] });
  return checkCells(row, engine, delimiter, /^>?\d/);
};

/** Names the cells that are no numbers where their unit is not known. @param shape - of the cells to look at */
const checkCells = (row: RowView, engine: Engine, delimiter: string, shape = /./): undefined => {
  for (const column of columnsOf(engine))
    if (shape.test(row.text(column)))
      readReadingCell(
        row.text(column),
        { of: "a reading", least: 0, most: mostReading_Pa },
        delimiter,
        column,
        (written) => written,
        (code, facts) => row.fault(column, code, facts),
      );
};

const takeIn = (row: RowView): number | undefined => {
  const text = row.text("take");
  if (text === "") return 1;
  return /^[1-9]\d?$/.test(text) ? Number(text) : row.fault("take", "take-bad", { text });
};

const unitIn = (row: RowView, gauge: Gauge | undefined, engine: Engine): PressureUnit | "%" | undefined => {
  const text = row.text("unit");
  if (text === "%" || (text === "" && gauge?.dial !== undefined && gauge.dial !== "pressure")) return "%";
  if (text === "")
    return gauge?.unit ?? row.fault("unit", "unit-missing", { text: firstReading(row, engine) });
  return gaugeUnitNamed(text) ?? row.fault("unit", "unit-unknown", { text, units: [...gaugeUnits, "%"] });
};

/** What a row without a unit is called by in a message. */
const firstReading = (row: RowView, engine: Engine): string =>
  columnsOf(engine)
    .map((column) => row.text(column))
    .find((text) => text !== "") ?? "";

const readingRow = (
  row: RowView,
  engine: Engine,
  gauges: readonly Gauge[],
  what: PressureKind | LeakKind,
  delimiter: string,
): RowContent | undefined => {
  const take = takeIn(row);
  const gaugeId = row.text("gauge");
  const gauge = gauges.find(({ id }) => id === gaugeId);
  const columns = columnsOf(engine);
  const unit = unitIn(row, gauge, engine);
  const isLeak = leakKinds.some((kind) => kind === what);
  const misplaced = unit === "%" && !isLeak;
  if (misplaced) row.fault("unit", "percent-out-of-place", { what });
  if (unit === undefined || misplaced) return checkCells(row, engine, delimiter);
  const reading = { unit, gauge, delimiter, toInner: innerOf(unit, gauge) };
  const complete: Cell[] = [];
  for (const column of columns) {
    const cell = cellIn(row, column, reading);
    if (cell !== undefined) complete.push(cell);
  }
  if (take === undefined || complete.length < columns.length) return undefined;
  const holds = unit === "%" ? "lost" : "pressure";
  const offset = holds === "pressure" ? gauge?.readsHigh : undefined;
  const supply = isLeak ? gauge?.regulated : undefined;
  const read: Draft<PressureRow> = { what, take, unit, holds, cells: complete, line: row.line };
  if (gaugeId !== "") read.gauge = gaugeId;
  if (offset !== undefined) read.readsHigh = offset;
  return supply === undefined ? { kind: "readings", row: read } : { kind: "readings", row: read, supply };
};

const boundsIn = (unit: PressureUnit | "%"): Bounds => {
  const bounds = boundsByUnit.get(unit) ?? {
    of: unit === "%" ? "percent" : `a reading in ${unit}`,
    least: 0,
    most: unit === "%" ? 100 : Number(fromSi(mostReading_Pa, unit).toPrecision(3)),
  };
  boundsByUnit.set(unit, bounds);
  return bounds;
};

/** Every cell asks for the same bounds. */
const boundsByUnit = new Map<PressureUnit | "%", Bounds>();

/** From the number written to what the row holds. */
const innerOf = (unit: PressureUnit | "%", gauge: Gauge | undefined): ((written: number) => number) => {
  if (unit !== "%") return (written) => gaugePressure(toSi(written, unit));
  return gauge?.dial === "percent-held" ? (held) => 1 - held / 100 : (lost) => lost / 100;
};

/** What the cells of a row share. */
interface Reading {
  readonly unit: PressureUnit | "%";
  readonly gauge: Gauge | undefined;
  readonly delimiter: string;
  readonly toInner: (written: number) => number;
}

const cellIn = (
  row: RowView,
  column: string,
  { unit, gauge, delimiter, toInner }: Reading,
): Cell | undefined => {
  const cell = readReadingCell(row.text(column), boundsIn(unit), delimiter, column, toInner, (code, facts) =>
    row.fault(column, code, facts),
  );
  const scale = gauge?.fullScale;
  if (
    cell?.kind === "reading" &&
    unit !== "%" &&
    scale !== undefined &&
    !cell.pegged &&
    cell.value > scale * 1.02
  )
    return row.fault(column, "gauge-over", {
      reading: writeQuantity(cell.value, unit),
      scale: writeQuantity(scale, unit),
    });
  return cell;
};

const factRow = (
  row: RowView,
  engine: Engine,
  gauges: readonly Gauge[],
  fact: (typeof factKinds)[number],
): RowContent | undefined => {
  const limits = {
    oil: { of: "oil in ml", least: 0, most: 100 },
    regulated: { of: "supply pressure", least: 0, most: 100_000 },
    speed: { of: "cranking speed in rpm", least: 20, most: 2_000 },
    strokes: { of: "strokes", least: 1, most: 60 },
    order: { of: "place in the order", least: 1, most: 60 },
  } as const;
  const numbers = columnsOf(engine).map((column) => row.number(column, limits[fact]));
  const map = <T>(make: (value: number) => T): (T | undefined)[] =>
    numbers.map((value) => (value === undefined ? undefined : make(value)));
  if (fact === "oil") return { kind: "fact", facts: { oil: map((ml) => volume(ml * 1e-6)) } };
  if (fact === "speed") return { kind: "fact", facts: { speed: map(speed) } };
  if (fact === "strokes") return { kind: "fact", facts: { strokes: numbers } };
  if (fact === "order") return { kind: "fact", facts: { order: numbers } };
  const gauge = gauges.find(({ id }) => id === row.text("gauge"));
  const unit = unitIn(row, gauge, engine);
  if (unit === undefined) return undefined;
  if (unit === "%") return row.fault("unit", "percent-out-of-place", { what: fact });
  return { kind: "fact", facts: { regulated: map((value) => gaugePressure(toSi(value, unit))) } };
};
