import { expect, test } from "vitest";
import {
  pooledRepeatability,
  repeatabilityInterval,
  repeatabilityLimit,
  repeatsTrend,
} from "../../../packages/core/src/statistics/index.ts";

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

test("the true scatter of a gauge lies within these bounds 19 times in 20", () => {
  // the readings above; computed with R 4.2.2: in psi, then in ln units
  const psi = repeatabilityInterval(1.5545631755148, 8);
  expect(psi.low).toBeCloseTo(1.05004063232254, 12);
  expect(psi.high).toBeCloseTo(2.9781868673463, 12);
  const logs = repeatabilityInterval(0.00997914711486511, 8);
  expect(logs.low).toBeCloseTo(0.0067404851160601, 14);
  expect(logs.high).toBeCloseTo(0.0191177594792608, 14);
});

test("few repeats leave much open: with four degrees of freedom the true scatter may be nearly three times as large", () => {
  // computed with R 4.2.2, three decimals
  const factors = [
    [4, 0.599, 2.874],
    [8, 0.675, 1.916],
    [12, 0.717, 1.651],
    [24, 0.781, 1.391],
  ] as const;
  for (const [df, low, high] of factors) {
    expect(repeatabilityInterval(1, df).low).toBeCloseTo(low, 3);
    expect(repeatabilityInterval(1, df).high).toBeCloseTo(high, 3);
  }
});

test("readings without scatter have an interval of no width, and no degree of freedom has none", () => {
  expect(repeatabilityInterval(0, 3)).toEqual({ low: 0, high: 0 });
  expect(() => repeatabilityInterval(0.01, 0)).toThrow(RangeError);
  expect(() => repeatabilityInterval(NaN, 3)).toThrow(RangeError);
  expect(() => repeatabilityInterval(0.01, Infinity)).toThrow(RangeError);
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

test("repeats that climb in every cell are no independent readings, and six cells are the fewest that say so", () => {
  const up = Array.from({ length: 6 }, () => [150, 149, 152]);
  expect(repeatsTrend(up)).toBe("up");
  expect(repeatsTrend(up.map((cell) => cell.toReversed()))).toBe("down");
  expect(repeatsTrend([...up, [150, 149]])).toBe("none");
  expect(repeatsTrend([...up, [150, 150]])).toBe("up");
  expect(repeatsTrend(up.slice(1))).toBe("none");
});
