// Pooled scatter against a published analysis of variance.

import { expect, test } from "vitest";
import { fisherUpperTail, mean, pooledRepeatability } from "../../packages/core/src/statistics/index.ts";

test("the scatter within the three groups of the NIST/SEMATECH e-Handbook, 7.4.3.3, has its published sum of squares", () => {
  const groups = [
    [6.9, 5.4, 5.8, 4.6, 4.0],
    [8.3, 6.8, 7.8, 9.2, 6.5],
    [8.0, 10.5, 8.1, 6.9, 9.3],
  ];
  const { df, sumOfSquares, s } = pooledRepeatability(groups);
  // published: error sum of squares 17.452 with 12 degrees of freedom
  expect(df).toBe(12);
  expect(sumOfSquares).toBeCloseTo(17.452, 10);
  // computed with R 4.2.2
  expect(s).toBeCloseTo(1.20595743429581, 13);
  // published: between the groups 27.897 with 2 degrees of freedom, F 9.59; the further digits and the chance from R 4.2.2
  const centre = mean(groups.flat());
  const between = groups.reduce((sum, group) => sum + group.length * (mean(group) - centre) ** 2, 0);
  expect(between).toBeCloseTo(27.8973333333333, 12);
  const f = between / 2 / (sumOfSquares / df);
  expect(f).toBeCloseTo(9.59110703644284, 11);
  expect(fisherUpperTail(f, 2, 12)).toBeCloseTo(0.00324822260085926, 14);
});
