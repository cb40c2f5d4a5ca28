// One engine at two cranking speeds on one day: a leaking cylinder gains more by speed than its fellows.

import type { EngineRecord, Test } from "../../record/index.ts";
import { median, varianceOfMedian } from "../../statistics/index.ts";
import type { EngineFigures } from "../figures.ts";
import { interaction, speedsOf } from "./speeds.ts";
import { type KindValues, counts, isComparable, valuesOf } from "../values/values.ts";

/** The faster at least so many times the slower, as for a calibration. */
const leastRatio = 1.25;
/** Standard uncertainties that are beyond chance; judgement. */
const beyond = 2;

/** In the engine's order: whether a cylinder rose from the slower to the faster speed by more than the middle of the others,
 *  beyond chance, in this test and another of the day by the same gauge. All false where there is no such pair. */
export const risesFaster = (record: EngineRecord, test: Test, figures: EngineFigures): readonly boolean[] => {
  const none = record.engine.cylinders.map(() => false);
  if (!record.tests.some((other) => other !== test && other.date === test.date)) return none;
  const own = valuesOf(test, "dry");
  const speed = middleSpeed(test, own);
  if (own?.gauge === undefined || speed === undefined) return none;
  return record.tests
    .filter((other) => other !== test && other.date === test.date && counts(other, "dry"))
    .map((other) => {
      const values = valuesOf(other, "dry");
      const theirs = middleSpeed(other, values);
      if (values === undefined || values.gauge !== own.gauge || theirs === undefined) return none;
      if (Math.max(speed, theirs) < leastRatio * Math.min(speed, theirs)) return none;
      return theirs > speed ? gained(own, values, figures) : gained(values, own, figures);
    })
    .reduce((one, other) => one.map((is, i) => is || other[i] === true), none);
};

const middleSpeed = (test: Test, values: KindValues | undefined): number | undefined => {
  const known = values === undefined ? [] : speedsOf(test, values).filter((speed) => speed !== undefined);
  return known.length === 0 ? undefined : median(known);
};

const gained = (slow: KindValues, fast: KindValues, { repeatability }: EngineFigures): readonly boolean[] => {
  const rises = slow.cells.map((cell, i) => {
    const other = fast.cells[i];
    if (cell === undefined || other === undefined || !isComparable(cell) || !isComparable(other))
      return undefined;
    if (cell.value <= 0 || other.value <= 0) return undefined;
    const scatter = [cell, other].map(({ readings }) =>
      Math.hypot(repeatability.blended / Math.sqrt(readings.length), interaction),
    );
    return { ln: Math.log(other.value / cell.value), scatter: Math.hypot(...scatter) };
  });
  return rises.map((rise, i) => {
    const others = rises.flatMap((one, j) => (one === undefined || i === j ? [] : one.ln));
    if (rise === undefined || others.length === 0) return false;
    return rise.ln - median(others) > beyond * rise.scatter * Math.sqrt(1 + varianceOfMedian(others.length));
  });
};
