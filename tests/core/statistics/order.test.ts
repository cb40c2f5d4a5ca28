import { expect, test } from "vitest";
import { kendall, normalCdf, theilSen } from "../../../packages/core/src/statistics/index.ts";

/** Every ordering of a list, equal values told apart. */
const orderings = (list: readonly number[]): readonly (readonly number[])[] =>
  list.length < 2
    ? [list]
    : list.flatMap((first, i) => orderings(list.toSpliced(i, 1)).map((rest) => [first, ...rest]));

test("with equal readings the chance of S is that of all orderings, counted one by one", () => {
  const x = [0, 1, 2, 3, 4, 5, 6];
  const y = [5, 3, 5, 3, 2, 3, 1];
  const observed = kendall(x, y);
  const all = orderings(y).map((ordering) => kendall(x, ordering).s);
  const share = (hit: (s: number) => boolean): number => all.filter(hit).length / all.length;
  expect(observed.lowerTail).toBeCloseTo(
    share((s) => s <= observed.s),
    12,
  );
  expect(observed.twoSided).toBeCloseTo(
    share((s) => Math.abs(s) >= Math.abs(observed.s)),
    12,
  );
  const variance = all.reduce((sum, s) => sum + s * s, 0) / all.length;
  expect(observed.variance).toBeCloseTo(variance, 10);
});

test("equal values in x and y both: the variance of S is that of all orderings", () => {
  const x = [0, 0, 1, 2, 2, 2, 3];
  const y = [5, 3, 5, 3, 2, 3, 1];
  const all = orderings(y).map((ordering) => kendall(x, ordering).s);
  const variance = all.reduce((sum, s) => sum + s * s, 0) / all.length;
  expect(kendall(x, y).variance).toBeCloseTo(variance, 10);
});

test("eight invented readings with equal values: exact chance, variance and slope", () => {
  // computed with R 4.2.2 and by full enumeration
  const x = [0, 1, 2, 3, 4, 5, 6, 7];
  const y = [150, 150, 148, 150, 147, 147, 145, 146];
  const order = kendall(x, y);
  expect(order.s).toBe(-20);
  expect(order.variance).toBeCloseTo(60.6666667, 7);
  const z = (order.s + 1) / Math.sqrt(order.variance);
  expect(z).toBeCloseTo(-2.4393748073122, 12);
  expect(2 * normalCdf(z)).toBeCloseTo(0.0147126995850388, 13);
  expect(order.lowerTail).toBeCloseTo(0.00476190476190476, 14);
  expect(order.twoSided).toBeCloseTo(0.00952380952380952, 14);
  expect(theilSen(x, y, 0.95).slope).toBeCloseTo(-0.708333333333333, 12);
});

test("seven invented readings against distance: slope, intercepts, 90 and 95 per cent intervals", () => {
  // computed with R 4.2.2 (cor.test) and SciPy 1.10.1
  const x = [12.4, 31, 47.5, 60.2, 78.9, 95.1, 110.6];
  const y = [171, 169, 170, 164, 161, 155, 150].map(Math.log);
  const line = theilSen(x, y, 0.95);
  expect(line.slope).toBeCloseTo(-0.00134904209054332, 14);
  expect(line.intercept).toBeCloseTo(5.17171901972991677, 12);
  expect(line.interval?.low).toBeCloseTo(-0.00211547244019298, 14);
  expect(line.interval?.high).toBeCloseTo(-0.000874416917959446, 14);
  expect(theilSen(x, y, 0.9).interval?.low).toBeCloseTo(-0.0019835680341364, 14);
  expect(theilSen(x, y, 0.9).interval?.high).toBeCloseTo(-0.000906153255912739, 14);
  expect(kendall(x, y).s).toBe(-19);
  expect(kendall(x, y).lowerTail).toBeCloseTo(0.00138888888888889, 14);
  expect(kendall(x, y).twoSided).toBeCloseTo(0.00277777777777778, 14);
});

test("forty readings in perfect order: one ordering in 40!, with all its digits", () => {
  const x = Array.from({ length: 40 }, (_, i) => i);
  const factorial = x.reduce((product, i) => product * (i + 1), 1);
  expect(kendall(x, x.toReversed()).lowerTail * factorial).toBeCloseTo(1, 12);
  // two equal readings at the end: twice as many orderings look perfect
  expect(kendall(x, [...x.slice(0, 39), 38].toReversed()).lowerTail * factorial).toBeCloseTo(2, 12);
});

test("readings that are all equal show no order and no slope", () => {
  const flat = kendall([0, 1, 2, 3], [7, 7, 7, 7]);
  expect(flat).toEqual({ s: 0, variance: 0, lowerTail: 1, twoSided: 1 });
  expect(theilSen([0, 1, 2, 3], [7, 7, 7, 7], 0.95)).toEqual({ slope: 0, intercept: 7 });
});

test("tests on the same day have no slope between them and are passed over", () => {
  // slopes of the pairs with different x: -1 twice from (0,5) and (1,4), (1,4); the interval needs more
  expect(theilSen([0, 1, 1], [5, 4, 4], 0.9)).toEqual({ slope: -1, intercept: 5 });
});

test("a forty-first reading passes from the exact to the normal distribution without a jump", () => {
  const rising = (n: number): readonly number[] => Array.from({ length: n }, (_, i) => i);
  const wavy = (n: number): readonly number[] => rising(n).map((i) => Math.sin(i * 2.1) + i / 60);
  const exact = kendall(rising(40), wavy(40));
  // normal with continuity correction, by hand from s and the variance of 40 values
  const z = (exact.s - 1) / Math.sqrt((40 * 39 * 85) / 18);
  expect(exact.variance).toBeCloseTo((40 * 39 * 85) / 18, 9);
  expect(z).toBeGreaterThan(1);
  const next = kendall(rising(41), wavy(41));
  expect(Math.abs(next.twoSided - exact.twoSided)).toBeLessThan(0.03);
});

test("unequal lengths, one point and a single date are refused", () => {
  expect(() => kendall([1, 2], [1])).toThrow("2 values of x but 1 of y");
  expect(() => theilSen([1], [1], 0.95)).toThrow(RangeError);
  expect(() => theilSen([1, 1, 1], [1, 2, 3], 0.95)).toThrow("all values of x are equal");
  expect(() => theilSen([1, 2], [1, 2], 1)).toThrow(RangeError);
});
