// The forward test on every test of an engine, so that a cylinder flagged in two tests running is known.

import type { EngineRecord, LeakKind, PressureKind, Test } from "../record/index.ts";
import { type ForwardReading, type ForwardTest, forwardTest } from "../spread/index.ts";
import { type EngineFigures, judgeTrust } from "./trust.ts";
import { type KindValues, counts, fractionLost, supplyOf, valuesOf } from "./values.ts";

/** One cylinder as the forward test takes it; a pegged needle says nothing about being low. */
const forwardReading = (test: Test, values: KindValues, i: number): ForwardReading => {
  const cell = values.cells[i];
  if (cell === undefined || cell.pegged) return { kind: "not-read" };
  const repeats = cell.readings.length;
  return cell.value > 0 ? { kind: "read", ln: Math.log(cell.value), repeats } : { kind: "no-compression" };
};

const leakReading = (test: Test, values: KindValues, i: number): ForwardReading => {
  const cell = values.cells[i];
  const lost = cell === undefined || cell.pegged ? undefined : fractionLost(values.holds, cell.value, supplyOf(test, i));
  if (cell === undefined || lost === undefined) return { kind: "not-read" };
  return lost >= 1 ? { kind: "no-compression" } : { kind: "read", ln: Math.log1p(-lost), repeats: cell.readings.length };
};

/** The forward test of one kind of reading in one test; undefined where it holds none. */
export const forwardOf = (record: EngineRecord, test: Test, what: "dry" | "leak-down", { repeatability: own }: EngineFigures): ForwardTest | undefined => {
  const values = valuesOf(test, what);
  if (values === undefined) return undefined;
  const division = divisionOf(record, test, values, what);
  const reading = what === "dry" ? forwardReading : leakReading;
  return forwardTest(values.cells.map((_, i) => reading(test, values, i)), {
    prior: what === "dry" ? "cranking" : "leak-down",
    ...(division === undefined ? {} : { division }),
    ...(own.s === undefined || what !== "dry" ? {} : { own: { s: own.s, df: own.df } }),
  });
};

const divisionOf = (record: EngineRecord, test: Test, values: KindValues, what: PressureKind | LeakKind): number | undefined => {
  const division = record.gauges.find(({ id }) => id === values.gauge)?.division;
  if (division === undefined || what === "dry") return division;
  const supply = test.conditions.regulated;
  return supply === undefined ? undefined : division / supply;
};

export interface Earlier {
  /** Flagged in the test before this one. */
  readonly flaggedBefore: boolean;
  /** Readings of it in other tests of the same day that were flagged too: they count as repeats. */
  readonly sameDayRepeats: number;
}

/** What other tests say of each cylinder. The test before is the last of an earlier day that counts and is not void. */
export const earlierFlags = (record: EngineRecord, test: Test, what: "dry" | "leak-down", figures: EngineFigures): readonly Earlier[] => {
  const usable = (other: Test): boolean => other !== test && counts(other, what) && judgeTrust(record, other, figures).code !== "void";
  const before = record.tests.findLast((other) => other.date < test.date && usable(other));
  const verdictsBefore = before === undefined ? undefined : forwardOf(record, before, what, figures)?.cylinders;
  const sameDay = record.tests.filter((other) => other.date === test.date && usable(other)).map((other) => ({ verdicts: forwardOf(record, other, what, figures)?.cylinders, values: valuesOf(other, what) }));
  return record.engine.cylinders.map((_, i) => ({
    flaggedBefore: isFlagged(verdictsBefore?.[i]),
    sameDayRepeats: sameDay.reduce((sum, { verdicts, values }) => sum + (isFlagged(verdicts?.[i]) ? (values?.cells[i]?.readings.length ?? 0) : 0), 0),
  }));
};

const isFlagged = (verdict: ForwardTest["cylinders"][number] | undefined): boolean => verdict !== undefined && verdict.kind !== "not-read" && verdict.flagged;
