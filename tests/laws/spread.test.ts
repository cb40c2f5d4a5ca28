import fc from "fast-check";
import { expect, test } from "vitest";
import {
  forwardTest,
  spreadOf,
  type CylinderVerdict,
  type ForwardReading,
} from "../../packages/core/src/spread/index.ts";

const pressures = fc.array(fc.integer({ min: 60, max: 200 }), { minLength: 2, maxLength: 12 });
const readings = (values: readonly number[], scale = 1): readonly ForwardReading[] =>
  values.map((value) => ({ kind: "read", ln: Math.log(value * scale), repeats: 1 }));
const verdicts = (values: readonly number[], scale = 1): readonly CylinderVerdict[] =>
  forwardTest(readings(values, scale), { prior: "cranking", division: 2 * scale }).cylinders;
const flags = (all: readonly CylinderVerdict[]): readonly unknown[] =>
  all.map((one) => "flagged" in one && one.flagged);

test("the verdict does not depend on the unit of the gauge", () => {
  fc.assert(
    fc.property(pressures, fc.constantFrom(2, 0.5, 1024), (values, scale) => {
      const here = verdicts(values);
      verdicts(values, scale).forEach((verdict, i) => {
        const other = here[i];
        if (verdict.kind !== "read" || other?.kind !== "read") throw new Error("all were read");
        expect(verdict.flagged).toBe(other.flagged);
        expect(verdict.t ?? 0).toBeCloseTo(other.t ?? 0, 9);
      });
    }),
  );
});

test("the verdict does not depend on the order in which the cylinders were read", () => {
  fc.assert(
    fc.property(pressures, (values) => {
      expect(flags(verdicts(values.toReversed())).toReversed()).toEqual(flags(verdicts(values)));
    }),
  );
});

test("what is flagged at 1 % is flagged at 5 %, and whoever reads no more than a flagged one is flagged", () => {
  fc.assert(
    fc.property(pressures, (values) => {
      const all = verdicts(values);
      all.forEach((one, i) => {
        if (one.kind !== "read") throw new Error("all were read");
        if (one.flaggedAt1) expect(one.flagged).toBe(true);
        if (one.flagged)
          all.forEach((other, k) => {
            if ((values[k] ?? NaN) <= (values[i] ?? NaN)) expect(other).toMatchObject({ flagged: true });
          });
      });
    }),
  );
});

test("the highest cylinder is never flagged, nor more than half of different readings", () => {
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.integer({ min: 20, max: 200 }), { minLength: 2, maxLength: 12 }),
      (values) => {
        const low = values.filter((_, i) => flags(verdicts(values))[i] === true);
        expect(low).not.toContain(Math.max(...values));
        expect(low.length).toBeLessThanOrEqual(Math.floor(values.length / 2));
      },
    ),
  );
});

test("a flagged lowest cylinder that falls further stays flagged", () => {
  fc.assert(
    fc.property(pressures, fc.integer({ min: 1, max: 40 }), (values, fall) => {
      const lowest = values.indexOf(Math.min(...values));
      if (flags(verdicts(values))[lowest] !== true) return;
      expect(flags(verdicts(values.with(lowest, (values[lowest] ?? NaN) - fall)))[lowest]).toBe(true);
    }),
  );
});

test("a cylinder that was not read changes nothing for the others", () => {
  fc.assert(
    fc.property(pressures, fc.nat({ max: 12 }), (values, place) => {
      const at = Math.min(place, values.length);
      const gap = forwardTest(readings(values).toSpliced(at, 0, { kind: "not-read" }), {
        prior: "cranking",
        division: 2,
      });
      expect(gap.cylinders.toSpliced(at, 1)).toEqual(verdicts(values));
    }),
  );
});

test("ratio, scatter and distance from the median do not depend on the unit", () => {
  fc.assert(
    fc.property(pressures, fc.double({ min: 0.001, max: 10_000, noNaN: true }), (values, scale) => {
      const here = spreadOf(values);
      const there = spreadOf(values.map((value) => value * scale));
      expect(there?.ratio).toBeCloseTo(here?.ratio ?? NaN, 12);
      expect(there?.cv).toBeCloseTo(here?.cv ?? NaN, 12);
      there?.belowMedian.forEach((value, i) => expect(value).toBeCloseTo(here?.belowMedian[i] ?? NaN, 12));
    }),
  );
});
