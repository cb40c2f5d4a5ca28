// Kendall's S and the Theil-Sen line against published examples and other programs.

import { describe, expect, test } from "vitest";
import { kendall, leastSquares, normalCdf, theilSen } from "../../packages/core/src/statistics/index.ts";
import { relativeError } from "./statistics-reference.ts";

const upTo = (n: number): readonly number[] => Array.from({ length: n }, (_, i) => i);

/** An ordering of 0 ... n-1 with so many pairs out of order. */
const withInversions = (n: number, inversions: number): readonly number[] => {
  const rest = [...upTo(n)];
  let left = inversions;
  return upTo(n).map(() => {
    const jump = Math.min(left, rest.length - 1);
    left -= jump;
    return rest.splice(jump, 1)[0] ?? NaN;
  });
};

describe("chance of Kendall's S (computed with R 4.2.2, cor.test exact; agrees with Kendall's and Gilbert's tables, from memory)", () => {
  test.each([
    [3, 3, 0.166667],
    [4, 4, 0.166667],
    [4, 6, 0.0416667],
    [5, 6, 0.116667],
    [5, 8, 0.0416667],
    [5, 10, 0.00833333],
    [6, 9, 0.0680556],
    [6, 11, 0.0277778],
    [6, 13, 0.00833333],
    [6, 15, 0.00138889],
    [7, 11, 0.0680556],
    [7, 13, 0.0345238],
    [7, 15, 0.0150794],
    [7, 17, 0.00535714],
    [7, 19, 0.00138889],
    [7, 21, 0.000198413],
    [8, 14, 0.0543403],
    [8, 16, 0.030506],
    [8, 18, 0.0155754],
    [8, 20, 0.00706845],
    [8, 22, 0.00275298],
    [8, 28, 2.48016e-5],
    [9, 16, 0.0597195],
    [9, 18, 0.0375882],
    [9, 20, 0.0223076],
    [9, 22, 0.0123705],
    [9, 24, 0.00633267],
    [9, 36, 2.75573e-6],
    [10, 19, 0.0541567],
    [10, 21, 0.0362751],
    [10, 23, 0.0233113],
    [10, 25, 0.0143047],
    [10, 27, 0.00833306],
    [10, 45, 2.75573e-7],
  ])("%d readings without meaning reach S = %d or more with the exact probability %d", (n, s, p) => {
    const falling = withInversions(n, (n * (n - 1)) / 4 + s / 2);
    const result = kendall(upTo(n), falling);
    expect(result.s).toBe(-s);
    expect(relativeError(result.lowerTail, p)).toBeLessThan(5e-6);
  });
});

describe("places and coverage of the Theil-Sen interval (exact null distribution, computed with R 4.2.2)", () => {
  const scattered = (n: number): readonly number[] => upTo(n).map((i) => Math.sin(1.7 * i * i) + 0.01 * i);
  const places = (n: number, coverage: number): readonly number[] | undefined => {
    const y = scattered(n);
    const slopes = upTo(n).flatMap((k) => upTo(k).map((j) => ((y[k] ?? NaN) - (y[j] ?? NaN)) / (k - j)));
    slopes.sort((a, b) => a - b);
    const interval = theilSen(upTo(n), y, coverage).interval;
    return (
      interval && [slopes.indexOf(interval.low) + 1, slopes.indexOf(interval.high) + 1, interval.coverage]
    );
  };

  test.each([
    [5, 1, 10, 0.9833],
    [6, 2, 14, 0.9833],
    [7, 4, 18, 0.9698],
    [8, 6, 23, 0.9688],
    [9, 9, 28, 0.9554],
    [10, 12, 34, 0.9534],
    [12, 19, 48, 0.9553],
    [15, 33, 73, 0.9537],
    [20, 65, 126, 0.9532],
    [30, 163, 273, 0.9509],
    [40, 306, 475, 0.9515],
  ])("at 95 per cent, %d points: from slope %d to slope %d, true coverage %d", (n, low, high, coverage) => {
    const found = places(n, 0.95);
    expect(found?.slice(0, 2)).toEqual([low, high]);
    expect(Math.abs((found?.[2] ?? 0) - coverage)).toBeLessThanOrEqual(5.1e-5);
  });
  test.each([
    [4, 1, 6, 0.9167],
    [5, 2, 9, 0.9167],
    [6, 3, 13, 0.9444],
    [7, 5, 17, 0.931],
    [8, 7, 22, 0.939],
    [9, 10, 27, 0.9248],
    [10, 13, 33, 0.9275],
    [12, 21, 46, 0.9137],
    [15, 36, 70, 0.9074],
    [20, 70, 121, 0.9017],
    [30, 171, 265, 0.9063],
    [40, 319, 462, 0.9041],
  ])("at 90 per cent, %d points: from slope %d to slope %d, true coverage %d", (n, low, high, coverage) => {
    const found = places(n, 0.9);
    expect(found?.slice(0, 2)).toEqual([low, high]);
    expect(Math.abs((found?.[2] ?? 0) - coverage)).toBeLessThanOrEqual(5.1e-5);
  });
  test("three and four points have no interval at 95 %", () => {
    expect(theilSen(upTo(3), scattered(3), 0.95).interval).toBeUndefined();
    expect(theilSen(upTo(4), scattered(4), 0.95).interval).toBeUndefined();
  });
});

test("the example of Hollander and Wolfe, section 9.1: slope, interval, intercept and chance", () => {
  // Data read in the source of the R package NSM3; the least-squares line is computed with R 4.2.2.
  const x = [1, 2, 3, 4, 5];
  const y = [1.26, 1.27, 1.12, 1.16, 1.03];
  const line = theilSen(x, y, 0.95);
  expect(line.slope).toBeCloseTo(-0.05625, 12);
  expect(line.intercept).toBeCloseTo(1.31625, 12);
  expect(line.interval?.low).toBeCloseTo(-0.15, 12);
  expect(line.interval?.high).toBeCloseTo(0.04, 12);
  expect(line.interval?.coverage).toBeCloseTo(1 - 2 / 120, 12);
  const order = kendall(x, y);
  expect(order.s).toBe(-6);
  expect(order.lowerTail).toBeCloseTo(0.116666666666667, 12);
  expect(order.twoSided).toBeCloseTo(0.233333333333333, 12);
  expect(leastSquares(x, y).slope).toBeCloseTo(-0.057, 12);
  expect(leastSquares(x, y).slopeError).toBeCloseTo(0.0161141759536957, 12);
});

test("the Theil example in the documentation of the R package statpsych, with equal values of x", () => {
  const y = [21, 4, 9, 12, 35, 18, 10, 22, 24, 1, 6, 8, 13, 16, 19];
  const x = [67, 28, 30, 28, 52, 40, 25, 37, 44, 10, 14, 20, 28, 40, 51];
  const line = theilSen(x, y, 0.95);
  expect(line.slope).toBeCloseTo(0.5, 12);
  expect(line.interval?.low).toBeCloseTo(0.3243243, 7);
  expect(line.interval?.high).toBeCloseTo(0.75, 12);
});

test("weight on height of R's data set women: S, its variance and the Theil-Sen interval", () => {
  // Data set women of R (15 rows); values computed with R 4.2.2.
  const height = upTo(15).map((i) => 58 + i);
  const weight = [115, 117, 120, 123, 126, 129, 132, 135, 139, 142, 146, 150, 154, 159, 164];
  const order = kendall(height, weight);
  expect(order.s).toBe(105);
  expect(order.variance).toBeCloseTo(408.333333333333, 10);
  expect((order.s - 1) / Math.sqrt(order.variance)).toBeCloseTo(5.14666525677609, 12);
  const line = theilSen(height, weight, 0.95);
  expect(line.slope).toBe(3.375);
  expect(line.interval?.low).toBe(3.125);
  expect(line.interval?.high).toBeCloseTo(3.66666666666667, 12);
});

test("the first ten floods of R's data set Nile: S and its variance with three equal values", () => {
  // Values computed with R 4.2.2.
  const order = kendall(upTo(10), [1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140]);
  expect(order.s).toBe(10);
  expect(order.variance).toBeCloseTo(121.333333333333, 10);
  // the normal score; the tool itself takes the exact chance up to 40 readings
  const z = (order.s - 1) / Math.sqrt(order.variance);
  expect(z).toBeCloseTo(0.817057169102883, 12);
  expect(2 * normalCdf(-z)).toBeCloseTo(0.413895758139569, 12);
  expect(Math.abs(order.twoSided - 0.413895758139569)).toBeLessThan(0.02);
});

test("R's data set Nile, 100 years: S, its variance, the normal two-sided chance and the slope", () => {
  // Values computed with R 4.2.2 (variance with ties, continuity correction).
  const nile = [
    1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180, 799, 958,
    1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833, 701, 916, 692, 1020,
    1050, 969, 831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845, 864, 862, 698, 845, 744, 796,
    1040, 759, 781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649, 846, 812, 742, 801, 1040, 860, 874,
    848, 890, 744, 749, 838, 1050, 918, 986, 797, 923, 975, 815, 1020, 906, 901, 1170, 912, 746, 919, 718,
    714, 740,
  ];
  const order = kendall(upTo(100), nile);
  expect(order.s).toBe(-1387);
  expect(order.variance).toBeCloseTo(112728.333333333, 7);
  expect((order.s + 1) / Math.sqrt(order.variance)).toBeCloseTo(-4.1280665228441, 12);
  expect(relativeError(order.twoSided, 3.65826292166433e-5)).toBeLessThan(1e-12);
  expect(theilSen(upTo(100), nile, 0.95).slope).toBeCloseTo(-2.6, 12);
});
