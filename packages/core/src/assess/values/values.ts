// The readings of one test, brought from rows and takes to one value a cylinder.

import { byKey, byText } from "../../problem/index.ts";
import type { GaugePressure } from "../../quantity/index.ts";
import {
  type Cell,
  type LeakKind,
  type PressureKind,
  type PressureRow,
  type Test,
  dayOf,
} from "../../record/index.ts";
import { mean } from "../../statistics/index.ts";
import { type DigitSlip, mayHoldSlip, slipsOf } from "./slips.ts";

/** Kinds of reading by a compression gauge, in the order they are printed. */
export const crankingKinds: readonly PressureKind[] = [
  "dry",
  "wet",
  "first-stroke",
  "running",
  "snap-throttle",
];

/** One cylinder's readings of one kind, repeats together. */
export interface CylinderValue {
  /** Each take as read, in order: gauge pressures [Pa], or fractions lost. */
  readonly readings: readonly number[];
  /** Mean of the takes as read: geometric for pressures (the mean of ln), plain where one of them is 0. */
  readonly read: number;
  /** The same without what the gauge is known to read too high. */
  readonly value: number;
  readonly doubtful: boolean;
  /** The needle was pegged: the value is a lower bound and stands in no comparison. */
  readonly pegged: boolean;
  /** Dry readings only: a digit seems to have slipped. */
  readonly slip?: DigitSlip;
}

/** Whether a reading can stand beside others: within the scale of its gauge, and no slip far above them. */
export const isComparable = ({ pegged, slip }: Pick<CylinderValue, "pegged" | "slip">): boolean =>
  !pegged && slip?.kind !== "high";

export interface KindValues {
  readonly gauge?: string | undefined;
  readonly unit: PressureRow["unit"];
  readonly holds: PressureRow["holds"];
  /** What the gauge reads too high [Pa], taken out of the values. */
  readonly readsHigh?: GaugePressure | undefined;
  /** In the engine's order; undefined where not taken. */
  readonly cells: readonly (CylinderValue | undefined)[];
}

/** Values that were worked out before: a test is asked for them many times on the way to a verdict. */
const known = new WeakMap<Test, Map<string, KindValues | undefined>>();

/** The same of tests of one row, as most are: those of the last rows, by their lines. Few and in one place, for what a WeakMap
 *  holds outlives small collections, and a yard would carry thousands of engines along. */
const knownOfRow: { readonly row: PressureRow; readonly values: KindValues }[] = [];
const rowsKnown = 128;

/** The values of one kind of reading. With two gauges on one engine the one with more readings on its scale counts
 *  (then the lower take, a named before a nameless one, then the name): the other is a comparison, not repeats. */
export const valuesOf = (test: Test, what: PressureKind | LeakKind): KindValues | undefined => {
  const first = test.rows.find((row) => row.what === what);
  if (first === undefined) return undefined;
  if (test.rows.length === 1) return valuesOfRow(first);
  const ofTest = known.get(test) ?? new Map<string, KindValues | undefined>();
  if (ofTest.size === 0) known.set(test, ofTest);
  if (!ofTest.has(what)) ofTest.set(what, kindValues(test, what));
  return ofTest.get(what);
};

const valuesOfRow = (row: PressureRow): KindValues => {
  const place = row.line % rowsKnown;
  const found = knownOfRow[place];
  if (found?.row === row) return found.values;
  const values = kindOf(
    row,
    row.cells.map((cell) => singleValue(cell, row)),
  );
  knownOfRow[place] = { row, values };
  return values;
};

const kindValues = (test: Test, what: PressureKind | LeakKind): KindValues | undefined => {
  const [main] = rowsByGauge(test, what);
  return main === undefined ? undefined : valuesOfRows(main);
};

/** What the gauges that do not count read, on the same engine and in the same test. */
export const comparisonsOf = (test: Test, what: PressureKind | LeakKind): readonly KindValues[] =>
  rowsByGauge(test, what)
    .slice(1)
    .flatMap((rows) => valuesOfRows(rows) ?? []);

const valuesOfRows = (own: readonly PressureRow[]): KindValues | undefined => {
  const [head] = own;
  if (head === undefined) return undefined;
  if (own.length === 1) return valuesOfRow(head);
  const cells = head.cells.map((_, i) =>
    cylinderValue(
      own.map((row) => row.cells[i]),
      head,
    ),
  );
  return kindOf(head, cells);
};

const kindOf = (
  { gauge, unit, holds, what, readsHigh }: PressureRow,
  cells: readonly (CylinderValue | undefined)[],
): KindValues => ({ gauge, unit, holds, readsHigh, cells: what === "dry" ? withSlips(cells) : cells });

const withSlips = (cells: readonly (CylinderValue | undefined)[]): readonly (CylinderValue | undefined)[] => {
  if (!mayHoldSlip(cells)) return cells;
  const slips = slipsOf(cells);
  return cells.map((cell, i) => {
    const slip = slips[i];
    return cell === undefined || slip === undefined ? cell : { ...cell, slip };
  });
};

/** The rows of each gauge, that which counts first; pressures and percent are never averaged together. */
const rowsByGauge = (test: Test, what: PressureKind | LeakKind): readonly (readonly PressureRow[])[] => {
  const rows = test.rows.filter((row) => row.what === what);
  if (rows.length <= 1) return rows.length === 0 ? [] : [rows];
  const byGauge = byKey(rows, ({ gauge = "", holds }) => `${gauge}\n${holds}`);
  const onScale = (own: readonly PressureRow[]): number =>
    own.flatMap(({ cells }) => cells.filter((cell) => cell.kind === "reading" && !cell.pegged)).length;
  const firstTake = (own: readonly PressureRow[]): number => Math.min(...own.map(({ take }) => take));
  const isNameless = ([row]: readonly PressureRow[]): boolean => row?.gauge === undefined;
  return [...byGauge]
    .sort(
      ([a, one], [b, other]) =>
        onScale(other) - onScale(one) ||
        firstTake(one) - firstTake(other) ||
        Number(isNameless(one)) - Number(isNameless(other)) ||
        byText(a, b),
    )
    .map(([, own]) => own);
};

/** As `cylinderValue` of one take: the mean of one reading is that reading. */
const singleValue = (
  cell: Cell,
  { readsHigh }: Pick<PressureRow, "readsHigh">,
): CylinderValue | undefined => {
  if (cell.kind !== "reading") return undefined;
  const { doubtful, pegged } = cell;
  // adding 0 turns -0 into 0, as a sum does
  const read = cell.value + 0;
  const value = trueReading(cell.value, readsHigh ?? 0) + 0;
  return { readings: [cell.value], read, value, doubtful, pegged };
};

const cylinderValue = (
  cells: readonly (Cell | undefined)[],
  { holds, readsHigh }: Pick<PressureRow, "holds" | "readsHigh">,
): CylinderValue | undefined => {
  const taken = cells.filter((cell): cell is Extract<Cell, { kind: "reading" }> => cell?.kind === "reading");
  if (taken.length === 0) return undefined;
  const readings = taken.map(({ value }) => value);
  return {
    readings,
    read: meanReading(readings, holds),
    value: meanReading(
      readings.map((reading) => trueReading(reading, readsHigh ?? 0)),
      holds,
    ),
    doubtful: taken.some((cell) => cell.doubtful),
    pegged: taken.some((cell) => cell.pegged),
  };
};

const meanReading = (readings: readonly number[], holds: PressureRow["holds"]): number => {
  const geometric = holds === "pressure" && readings.length > 1 && readings.every((value) => value > 0);
  return geometric ? Math.exp(mean(readings.map(Math.log))) : mean(readings);
};

/** A reading without what its gauge is known to read too high. A needle at rest stays at rest. */
export const trueReading = (reading: number, readsHigh: number): number =>
  reading > 0 ? Math.max(0, reading - readsHigh) : reading;

/** A leak-down value as the fraction lost: 1 - P2/P1, never below 0.
 *  @param supply - regulated pressure, needed where the row holds pressures
 *  @returns undefined where the supply is not known */
export const fractionLost = (
  holds: PressureRow["holds"],
  value: number,
  supply: GaugePressure | undefined,
): number | undefined => {
  if (holds === "lost") return value;
  if (supply === undefined || supply <= 0) return undefined;
  return Math.max(0, 1 - value / supply);
};

/** The regulated pressure of one cylinder: its own, else that of the day and the tester.
 *  @param gauge - the tester that read it, where rows of two differ */
export const supplyOf = (test: Test, cylinder: number, gauge?: string): GaugePressure | undefined =>
  test.perCylinder.regulated?.[cylinder] ?? dayOf(test, gauge).regulated;

/** Whether a test holds readings of this kind that count: something taken, and not set aside. */
export const counts = (test: Test, what: PressureKind | LeakKind): boolean =>
  test.setAside === undefined && valuesOf(test, what)?.cells.some((cell) => cell !== undefined) === true;
