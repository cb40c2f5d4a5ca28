// Careful loops against the plain definitions: lists sorted anew for every question.

import fc from "fast-check";
import { expect, test } from "vitest";
import { theilSen } from "../../../packages/core/src/statistics/index.ts";
import { keeping } from "../../../packages/core/src/statistics/kept.ts";
import { medianInPlace, orderStatistic } from "../../../packages/core/src/statistics/order-statistic.ts";

const ascending = (values: readonly number[]): number[] => [...values].sort((a, b) => a - b);

const plainMedian = (values: readonly number[]): number => {
  const sorted = ascending(values);
  const half = sorted.length >> 1;
  const upper = sorted[half] ?? NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[half - 1] ?? NaN) + upper) / 2;
};

/** Few different values, so that many are equal. */
const coarse = fc.integer({ min: -4, max: 4 }).map((n) => n / 4);
const fine = fc.double({ min: -10, max: 10, noNaN: true }).map((x) => x + 0);
const lists = fc.oneof(
  fc.array(coarse, { minLength: 1, maxLength: 60 }),
  fc.array(fine, { minLength: 1, maxLength: 60 }),
);

test("any value by its place is that of the sorted list, and the list is parted there", () => {
  fc.assert(
    fc.property(lists, fc.nat(), (values, any) => {
      const place = any % values.length;
      const list = Float64Array.from(values);
      const found = orderStatistic(list, place);
      expect(found).toBe(ascending(values)[place]);
      expect(list.slice(0, place).every((value) => value <= found)).toBe(true);
      expect(list.slice(place).every((value) => value >= found)).toBe(true);
      expect(ascending([...list])).toEqual(ascending(values));
    }),
  );
});

test("a place is looked for only within the part that is named", () => {
  expect(orderStatistic(Float64Array.of(9, 8, 3, 2, 1, 0), 3, 2, 5)).toBe(2);
});

test("the median is the middle of the sorted list", () => {
  fc.assert(
    fc.property(lists, (values) => {
      expect(medianInPlace(Float64Array.from(values))).toBe(plainMedian(values));
    }),
  );
});

test("ordered, falling and equal lists of any length cost no more than others and come out right", () => {
  for (const length of [1, 2, 3, 4_000, 4_001])
    for (const value of [(k: number) => k, (k: number) => -k, () => 7, (k: number) => k % 2]) {
      const values = Array.from({ length }, (_, k) => value(k));
      expect(medianInPlace(Float64Array.from(values))).toBe(plainMedian(values));
    }
});

test("the robust line is the middle of all slopes, its interval two of them", () => {
  const points = fc.array(fc.tuple(fc.integer({ min: 0, max: 30 }), coarse), {
    minLength: 5,
    maxLength: 40,
  });
  fc.assert(
    fc.property(points, (drawn) => {
      const [x, y] = [drawn.map(([place]) => place / 2), drawn.map(([, value]) => value)];
      fc.pre(new Set(x).size > 4);
      const slopes = ascending(
        x.flatMap((late, k) =>
          x.slice(0, k).flatMap((early, j) => {
            const rise = (y[k] ?? NaN) - (y[j] ?? NaN);
            return late === early ? [] : [rise / (late - early) + 0];
          }),
        ),
      );
      const { slope, intercept, interval } = theilSen(x, y, 0.9);
      expect(slope).toBe(plainMedian(slopes));
      expect(intercept).toBe(plainMedian(x.map((place, i) => (y[i] ?? NaN) - slope * place)));
      if (interval === undefined) return;
      const from = slopes.indexOf(interval.low);
      expect(from).toBeGreaterThanOrEqual(0);
      // as many slopes lie below the interval as above it; equal ones may stand on either side
      const [low, high] = [
        slopes.filter((one) => one < interval.low),
        slopes.filter((one) => one > interval.high),
      ];
      const ends = slopes.filter((one) => one === interval.low || one === interval.high).length;
      expect(Math.abs(low.length - high.length)).toBeLessThan(ends);
    }),
  );
});

test("what was worked out is kept, and all of it forgotten when there is no room", () => {
  const made: string[] = [];
  const lengthOf = keeping<string, number>(2);
  const ask = (word: string): number =>
    lengthOf(word, () => {
      made.push(word);
      return word.length;
    });
  expect(["one", "three", "one", "three", "seven", "one"].map(ask)).toEqual([3, 5, 3, 5, 5, 3]);
  expect(made).toEqual(["one", "three", "seven", "one"]);
});
