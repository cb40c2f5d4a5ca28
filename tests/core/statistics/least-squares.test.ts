import { expect, test } from "vitest";
import { leastSquares, leastSquaresThroughOrigin } from "../../../packages/core/src/statistics/index.ts";

test("seven invented readings against distance: slope, intercept and their errors", () => {
  // computed with R 4.2.2 (lm)
  const x = [12.4, 31, 47.5, 60.2, 78.9, 95.1, 110.6];
  const y = [171, 169, 170, 164, 161, 155, 150].map(Math.log);
  const line = leastSquares(x, y);
  expect(line.slope).toBeCloseTo(-0.00135932551575791, 14);
  expect(line.slopeError).toBeCloseTo(0.000190808687806457, 14);
  expect(line.intercept).toBeCloseTo(5.17642143421655376, 12);
  expect(line.interceptError).toBeCloseTo(0.0133948378356527, 13);
  expect(Math.sqrt(line.sse / 5)).toBeCloseTo(0.0163889192407419, 13);
});

test("three points whose sums can be formed in the head", () => {
  // by hand: points (1,1) (2,3) (3,2): means 2 and 2, Sxx 2, Sxy 1, Syy 2, slope .5, SSE 2 - .5 = 1.5
  const line = leastSquares([1, 2, 3], [1, 3, 2]);
  expect(line).toMatchObject({ slope: 0.5, intercept: 1, meanX: 2, meanY: 2, sxx: 2, sse: 1.5, r2: 0.25 });
  expect(line.slopeError).toBeCloseTo(Math.sqrt(1.5 / 2), 14);
});

test("two points make a line but no error; equal readings make one without R2", () => {
  expect(leastSquares([0, 1], [3, 5])).toEqual({
    slope: 2,
    intercept: 3,
    meanX: 0.5,
    meanY: 4,
    sxx: 0.5,
    sse: 0,
    r2: 1,
  });
  expect(leastSquares([0, 1, 2], [3, 3, 3])).not.toHaveProperty("r2");
});

test("large values of x that differ by little keep their slope", () => {
  expect(leastSquares([1e9, 1e9 + 1, 1e9 + 2], [1, 2, 3]).slope).toBe(1);
});

test("a single date and an origin without lever are refused, not answered with NaN", () => {
  expect(() => leastSquares([2, 2, 2], [1, 2, 3])).toThrow("all values of x are equal");
  expect(() => leastSquares([0.1, 0.1, 0.1], [1, 2, 3])).toThrow("all values of x are equal");
  expect(() => leastSquaresThroughOrigin([0, 0], [1, 2])).toThrow("all values of x are 0");
});
