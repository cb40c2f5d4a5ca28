import { expect, test } from "vitest";
import { pooledRepeatability, repeatabilityLimit } from "../../../packages/core/src/statistics/index.ts";

const ln = (cells: readonly (readonly number[])[]): readonly (readonly number[])[] =>
  cells.map((cell) => cell.map(Math.log));

test("three repeats of four cylinders: pooled scatter, the limit between two repeats and the blend with the usual figure", () => {
  // invented readings [psi]; computed with R 4.2.2
  const cells = ln([
    [158, 161, 160],
    [152, 150, 151],
    [163, 162, 165],
    [149, 153, 151],
  ]);
  const pooled = pooledRepeatability(cells);
  expect(pooled.df).toBe(8);
  expect(pooled.s).toBeCloseTo(0.00997914711486511, 14);
  expect(repeatabilityLimit(pooled.s ?? NaN)).toBeCloseTo(0.0276607845738868, 13);
  expect(pooled.blended).toBeCloseTo(0.0123827847581141, 14);
});

test("without a repeat the usual figure stands alone", () => {
  expect(pooledRepeatability([[5], [5.1]])).toEqual({ df: 0, sumOfSquares: 0, blended: 0.015 });
  expect(pooledRepeatability([], 0.007).blended).toBeCloseTo(0.007, 15);
});

test("cells of one reading add nothing", () => {
  const cells = [
    [5, 5.02],
    [4.9, 4.93],
  ];
  expect(pooledRepeatability([...cells, [4.2]])).toEqual(pooledRepeatability(cells));
});

test("an empty cell and a reading of no compression (ln 0) are refused", () => {
  expect(() => pooledRepeatability([[]])).toThrow(RangeError);
  expect(() => pooledRepeatability([[5, -Infinity]])).toThrow(RangeError);
});
