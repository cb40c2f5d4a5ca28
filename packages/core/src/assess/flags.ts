// The forward test on a test of an engine and on those before it, so that a cylinder flagged in two tests running is
// known.

import { type EngineRecord, type Test, dayOf } from "../record/index.ts";
import { type CylinderVerdict, type ForwardReading, type ForwardTest, forwardTest } from "../spread/index.ts";
import type { EngineFigures } from "./figures.ts";
import { unevenOf } from "./speed/even-speed.ts";
import { isVoid } from "./trust/trust.ts";
import { isSellers } from "./trust/trust-rules.ts";
import {
  type CylinderValue,
  type KindValues,
  counts,
  fractionLost,
  isComparable,
  supplyOf,
  trueReading,
  valuesOf,
} from "./values/values.ts";

/** What is compared within one test: cranking readings, or the part held in a leak-down. */
export type Compared = "dry" | "leak-down";

/** A cranking reading as the forward test takes it; a pegged needle says nothing about being low. */
const crankingReading = (cell: CylinderValue): ForwardReading =>
  cell.value > 0
    ? { kind: "read", ln: Math.log(cell.value), repeats: cell.readings.length }
    : { kind: "no-compression" };

const leakReading = (cell: CylinderValue, lost: number | undefined): ForwardReading => {
  if (lost === undefined) return { kind: "not-read" };
  return lost >= 1
    ? { kind: "no-compression" }
    : { kind: "read", ln: Math.log1p(-lost), repeats: cell.readings.length };
};

/** The forward test of one kind of reading in one test; undefined where it holds none. */
export const forwardOf = (
  record: EngineRecord,
  test: Test,
  what: Compared,
  figures: EngineFigures,
): ForwardTest | undefined => {
  const values = valuesOf(test, what);
  return values === undefined ? undefined : forwardOn(record, test, { what, values, figures });
};

interface On {
  readonly what: Compared;
  readonly values: KindValues;
  readonly figures: EngineFigures;
}

/** The same with other values in the place of those of the test. */
const forwardOn = (
  record: EngineRecord,
  test: Test,
  { what, values, figures: { repeatability: own } }: On,
): ForwardTest => {
  const readings = readingsOf(test, what, values);
  const division = divisionOf(record, test, values, what);
  const judged = (lnFactors: readonly number[]): ForwardTest =>
    forwardTest(
      readings.map((one, i) => (one.kind === "read" ? { ...one, ln: one.ln + (lnFactors[i] ?? 0) } : one)),
      {
        prior: what === "dry" ? "cranking" : "leak-down",
        ...(division === undefined ? {} : { division }),
        ...(what === "leak-down" || own.s === undefined ? {} : { own: { s: own.s, df: own.df } }),
      },
    );
  const uneven = what === "dry" ? unevenOf(record, test) : undefined;
  if (uneven?.refused === undefined) return judged(uneven?.lnFactors ?? []);
  return excused(judged([]), judged(uneven.lnForgiven));
};

/** Whether a cylinder would be flagged if this one of its takes were the only one.
 *  @param take - of the cylinder, as read, among the values of the test */
export const isFlaggedAlone = (
  record: EngineRecord,
  test: Test,
  { values, cylinder, reading, ...on }: On & { readonly cylinder: number; readonly reading: number },
): boolean => {
  const value = trueReading(reading, values.readsHigh ?? 0);
  const cells = values.cells.map((cell, i) =>
    cell === undefined || i !== cylinder ? cell : { ...cell, readings: [reading], read: reading, value },
  );
  return isFlagged(forwardOn(record, test, { ...on, values: { ...values, cells } }).cylinders[cylinder]);
};

/** Flagged only where it is so both as read and with what a lower cranking speed may have taken. */
const excused = (asRead: ForwardTest, forgiven: ForwardTest): ForwardTest => ({
  ...asRead,
  cylinders: asRead.cylinders.map((one, i): CylinderVerdict => {
    const other = forgiven.cylinders[i];
    if (one.kind !== "read" || other?.kind !== "read" || !one.flagged) return one;
    return other.flagged ? { ...other, flaggedAt1: one.flaggedAt1 && other.flaggedAt1 } : other;
  }),
});

/** The readings of one kind as the forward test takes them. */
const readingsOf = (test: Test, what: Compared, values: KindValues): readonly ForwardReading[] =>
  values.cells.map((cell, i): ForwardReading => {
    if (cell === undefined || !isComparable(cell)) return { kind: "not-read" };
    if (what === "dry") return crankingReading(cell);
    return leakReading(cell, fractionLost(values.holds, cell.value, supplyOf(test, i, values.gauge)));
  });

/** The division of the dial, for leak-down as a fraction of the supply. */
const divisionOf = (
  record: EngineRecord,
  test: Test,
  values: KindValues,
  what: Compared,
): number | undefined => {
  const division = record.gauges.find(({ id }) => id === values.gauge)?.division;
  if (division === undefined || what === "dry") return division;
  const supply = dayOf(test, values.gauge).regulated;
  return supply === undefined ? undefined : division / supply;
};

export interface Earlier {
  /** Flagged in the test before this one, with no work on it in between. */
  readonly flaggedBefore: boolean;
  /** Readings of it in other tests of the same day that were flagged too: they count as repeats. */
  readonly sameDayRepeats: number;
}

/** What other tests say of each cylinder. The test before is the last of an earlier day that counts: not void, not set
 *  aside, not a seller's. */
export const earlierFlags = (
  record: EngineRecord,
  test: Test,
  what: Compared,
  figures: EngineFigures,
): readonly Earlier[] => {
  const isUsable = (other: Test): boolean =>
    other !== test && counts(other, what) && !isSellers(other) && !isVoid(record, other, { what, figures });
  const before = record.tests.findLast((other) => other.date < test.date && isUsable(other));
  const flagsBefore = before === undefined ? undefined : forwardOf(record, before, what, figures);
  // what looks like a slip of the pen confirms nothing
  const isShown = (flags: ForwardTest | undefined, other: Test | undefined, i: number): boolean =>
    other !== undefined &&
    isFlagged(flags?.cylinders[i]) &&
    valuesOf(other, what)?.cells[i]?.slip === undefined;
  const sameDay = record.tests.filter((other) => other.date === test.date && isUsable(other));
  const flagsOfDay = sameDay.map((other) => forwardOf(record, other, what, figures));
  return record.engine.cylinders.map((label, i) => ({
    flaggedBefore:
      isShown(flagsBefore, before, i) && !workedOn(record, label, { after: before, until: test }),
    sameDayRepeats: sameDay
      .filter((other, k) => isShown(flagsOfDay[k], other, i))
      .reduce((sum, other) => sum + (valuesOf(other, what)?.cells[i]?.readings.length ?? 0), 0),
  }));
};

export const isFlagged = (verdict: CylinderVerdict | undefined): boolean =>
  verdict !== undefined && verdict.kind !== "not-read" && verdict.flagged;

/** Work between two tests that starts this cylinder anew; work on the day of a test comes before it. */
const workedOn = (
  { services }: EngineRecord,
  label: string,
  { after, until }: { readonly after: Test | undefined; readonly until: Test },
): boolean =>
  services.some(
    ({ date, newBaseline }) =>
      newBaseline.includes(label) && date > (after?.date ?? "") && date <= until.date,
  );
