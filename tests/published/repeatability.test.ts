// Pooled scatter against a published analysis of variance.

import { expect, test } from "vitest";
import { pooledRepeatability } from "../../packages/core/src/statistics/index.ts";

test("the scatter within the three groups of the NIST/SEMATECH e-Handbook, 7.4.3.3, has its published sum of squares", () => {
  const { df, sumOfSquares, s } = pooledRepeatability([
    [6.9, 5.4, 5.8, 4.6, 4.0],
    [8.3, 6.8, 7.8, 9.2, 6.5],
    [8.0, 10.5, 8.1, 6.9, 9.3],
  ]);
  // published: error sum of squares 17.452 with 12 degrees of freedom
  expect(df).toBe(12);
  expect(sumOfSquares).toBeCloseTo(17.452, 10);
  // computed with R 4.2.2
  expect(s).toBeCloseTo(1.20595743429581, 13);
});
