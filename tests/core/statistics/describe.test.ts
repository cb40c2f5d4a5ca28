import { expect, test } from "vitest";
import {
  mean,
  median,
  normalCdf,
  normalDensity,
  sampleStandardDeviation,
  scaledMad,
  varianceOfMedian,
} from "../../../packages/core/src/statistics/index.ts";

test("the median of an even count is half the sum of the two middle values", () => {
  expect(median([150, 148, 152, 120])).toBe(149);
  expect(median([3, 1, 2])).toBe(2);
});

test("the standard deviation divides by n - 1", () => {
  // 1, 2, 3, 4, 5: squares about the mean 4 + 1 + 0 + 1 + 4 = 10, 10 / 4 = 2.5
  expect(sampleStandardDeviation([1, 2, 3, 4, 5])).toBeCloseTo(Math.sqrt(2.5), 14);
});

test("the scaled MAD is 1.4826 times the median distance from the median, 0 when most values are equal", () => {
  // median 149, distances 1 1 3 29, their median 2
  expect(scaledMad([150, 148, 152, 120])).toBeCloseTo(2.9652, 12);
  expect(scaledMad([150, 150, 150, 120])).toBe(0);
});

test("the lists given are left in their order", () => {
  const list = [3, 1, 2];
  median(list);
  scaledMad(list);
  expect(list).toEqual([3, 1, 2]);
});

test.each([mean, median, sampleStandardDeviation, scaledMad])(
  "%o refuses an empty list and a value that is no number, which its library would order like any other",
  (summary) => {
    expect(() => summary([])).toThrow(RangeError);
    expect(() => summary([1, NaN, 3, 4])).toThrow("value 2 is NaN");
    expect(() => summary([1, Infinity])).toThrow(RangeError);
  },
);

test("one value has no standard deviation", () => {
  expect(() => sampleStandardDeviation([1])).toThrow("needs at least 2 values, got 1");
});

test("the variance of a median: exact for one and two values, pi/(2k) beyond eleven", () => {
  expect(varianceOfMedian(1)).toBe(1);
  // the median of two is their mean
  expect(varianceOfMedian(2)).toBe(0.5);
  expect(varianceOfMedian(12)).toBeCloseTo(Math.PI / 24, 15);
  expect(() => varianceOfMedian(0)).toThrow(RangeError);
  expect(() => varianceOfMedian(2.5)).toThrow(RangeError);
});

// published: efficiency of the median against the mean, three digits (Dixon & Massey's table, from memory)
test.each([
  [3, 0.743],
  [4, 0.838],
  [5, 0.697],
  [6, 0.776],
  [7, 0.679],
  [8, 0.743],
  [9, 0.669],
  [10, 0.723],
  [11, 0.663],
])("the median of %d normal values carries %d of what their mean does", (k, efficiency) => {
  expect(Math.abs(1 / (k * varianceOfMedian(k)) - efficiency)).toBeLessThan(6e-4);
});

test("the variance of the median of an odd count is that of its order statistic, integrated over its density", () => {
  // density of the middle of k = 2 m + 1 normal values: k!/(m!)^2 Phi^m (1 - Phi)^m phi, Simpson's rule from -9 to 9
  const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));
  const steps = 3600;
  for (const k of [3, 5, 7, 9, 11]) {
    const m = (k - 1) / 2;
    let sum = 0;
    for (let i = 0; i <= steps; i += 1) {
      const z = -9 + (18 * i) / steps;
      const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
      sum += weight * z * z * (normalCdf(z) * normalCdf(-z)) ** m * normalDensity(z);
    }
    const variance = (factorial(k) / factorial(m) ** 2) * sum * (18 / steps / 3);
    expect(varianceOfMedian(k)).toBeCloseTo(variance, 6);
  }
});

test("the variance of the median of three is 1 - sqrt(3)/pi, the known closed form of normal order statistics", () => {
  expect(Math.abs(varianceOfMedian(3) - (1 - Math.sqrt(3) / Math.PI))).toBeLessThan(5e-7);
});
