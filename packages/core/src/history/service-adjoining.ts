// What a repair did to a cylinder that had just come down: the last test before it against the first after it. Three tests a
// side, as service-step.ts takes, would hide such a fall and its cure.

import { median, studentCdf, studentQuantile, varianceOfMedian } from "../statistics/index.ts";
import { at } from "./at.ts";
import type { Work } from "./epochs.ts";
import type { MergedTest } from "./merge-tests.ts";
import { scatterBefore, type Surroundings } from "./service-step.ts";
import { stepScale, type StepScale } from "./two-below-baseline.ts";

/** A cylinder that was low in the last test before a work, and rose by the first after it. */
export interface AdjoiningRise {
  readonly label: string;
  /** Places of the two tests. */
  readonly from: number;
  readonly to: number;
  /** Against the cylinders it is compared with, ln units. */
  readonly rise: number;
  readonly standardError: number;
  readonly t: number;
  readonly df: number;
  /** One-sided. */
  readonly p: number;
  /** Low in that one test alone, which a bad reading would be too, or in the one before it as well. */
  readonly lowIn: "one-test" | "several";
}

/** Each renewed cylinder whose last reading before lies below the middle of those before it, and whose first after lies above
 *  that last one: both one-sided at .05 over the number of cylinders renewed, against those left alone, or the others where
 *  none was. That it was low is why it is looked at, so part of the rise is chance (ours; the handbook's L.6 stands beside it). */
export const adjoiningRises = (
  work: Work,
  around: Surroundings,
  labels: readonly string[],
): readonly AdjoiningRise[] => {
  const { tests, before, after, cylinders } = around;
  const { variance, df } = scaleOf(around);
  const all = Array.from({ length: cylinders }, (_, cylinder) => cylinder);
  const untouched = all.filter((cylinder) => !work.touched.includes(cylinder));
  const least = studentQuantile(1 - 0.05 / work.renewed.length, df);
  return work.renewed.flatMap((cylinder): AdjoiningRise[] => {
    const beside = untouched.length > 0 ? untouched : all.filter((other) => other !== cylinder);
    const read = (rows: readonly number[]): readonly Read[] =>
      rows.flatMap((row) => contrastIn(at(tests, row), row, { cylinder, beside }));
    const [old, [first]] = [read(before), read(after)];
    const last = old.at(-1);
    const earlier = old.slice(0, -1).map(({ r }) => r);
    // not read in one of the two, or without compression, it is no matter of these
    if (last?.row !== before.at(-1) || first?.row !== after[0]) return [];
    if (last === undefined || first === undefined || earlier.length === 0) return [];
    const errorOf = (n: number): number => Math.sqrt(variance * (1 + varianceOfMedian(n)));
    const isBelow = (r: number, others: readonly number[]): boolean =>
      others.length > 0 && median(others) - r > least * errorOf(others.length);
    const standardError = errorOf(1);
    const rise = first.r - last.r;
    const t = rise / standardError;
    if (!isBelow(last.r, earlier.slice(-2)) || t < least) return [];
    const lowIn = isBelow(at(earlier, earlier.length - 1), earlier.slice(0, -1)) ? "several" : "one-test";
    const p = studentCdf(-t, df);
    const told = { label: at(labels, cylinder), from: last.row, to: first.row };
    return [{ ...told, rise, standardError, t, df, p, lowIn }];
  });
};

/** s^2 of one contrast by the differences of successive ones before the work, which a fall hardly touches. */
const scaleOf = (around: Surroundings): StepScale => {
  const { series, pooled } = scatterBefore(around);
  return stepScale(series, pooled);
};

interface Read {
  readonly row: number;
  /** ln of its reading less the middle of the others. */
  readonly r: number;
}

/** Only where all that it is compared with were read: else the middle would be that of others. */
const contrastIn = (
  { cells }: MergedTest,
  row: number,
  { cylinder, beside }: { readonly cylinder: number; readonly beside: readonly number[] },
): readonly Read[] => {
  const own = at(cells, cylinder);
  const others = beside.flatMap((other) => {
    const cell = at(cells, other);
    return cell.kind === "read" ? [cell.ln] : [];
  });
  return own.kind !== "read" || others.length < beside.length || others.length === 0
    ? []
    : [{ row, r: own.ln - median(others) }];
};
