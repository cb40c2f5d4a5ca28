// Certified values of the NIST Statistical Reference Datasets (StRD), printed by NIST to 15 digits, read in public copies
// of the files. Tolerances are what double precision allows for each set.

import { describe, expect, test } from "vitest";
import {
  leastSquares,
  leastSquaresThroughOrigin,
  mean,
  median,
  sampleStandardDeviation,
  scaledMad,
} from "../../packages/core/src/statistics/index.ts";
import { referenceColumns, referencePoints, relativeError } from "./statistics-reference.ts";

/** First value, then 500 times the two others: how NIST defines NumAcc2 to NumAcc4. */
const alternating = (first: number, low: number, high: number): readonly number[] => [
  first,
  ...Array.from({ length: 500 }, () => [low, high]).flat(),
];

const univariate = [
  {
    name: "Mavro",
    data: referenceColumns("nist-mavro").y ?? [],
    mean: 2.001856,
    sd: 0.000429123454003053,
    within: 1e-12,
  },
  {
    name: "Michelso",
    data: referenceColumns("nist-michelso").y ?? [],
    mean: 299.8524,
    sd: 0.0790105478190518,
    within: 1e-12,
  },
  { name: "NumAcc1", data: [10000001, 10000003, 10000002], mean: 10000002, sd: 1, within: 1e-12 },
  { name: "NumAcc2", data: alternating(1.2, 1.1, 1.3), mean: 1.2, sd: 0.1, within: 1e-12 },
  // the decimals of the next two cannot be held exactly in binary, which limits any program
  {
    name: "NumAcc3",
    data: alternating(1000000.2, 1000000.1, 1000000.3),
    mean: 1000000.2,
    sd: 0.1,
    within: 1e-9,
  },
  {
    name: "NumAcc4",
    data: alternating(10000000.2, 10000000.1, 10000000.3),
    mean: 10000000.2,
    sd: 0.1,
    within: 1e-7,
  },
] as const;

describe.each(univariate)("NIST StRD $name", (set) => {
  test("the mean agrees with the certified one to 14 digits", () => {
    expect(relativeError(mean(set.data), set.mean)).toBeLessThan(1e-14);
  });
  test("the standard deviation agrees with the certified one as far as its data can be held", () => {
    expect(relativeError(sampleStandardDeviation(set.data), set.sd)).toBeLessThan(set.within);
  });
});

test("the line through NIST's Norris data has the certified slope, intercept, errors and R2", () => {
  const { x, y } = referencePoints("nist-norris");
  const line = leastSquares(x, y);
  expect(relativeError(line.slope, 1.00211681802045)).toBeLessThan(1e-11);
  expect(relativeError(line.intercept, -0.262323073774029)).toBeLessThan(1e-11);
  expect(relativeError(line.slopeError, 0.429796848199937e-3)).toBeLessThan(1e-11);
  expect(relativeError(line.interceptError, 0.232818234301152)).toBeLessThan(1e-11);
  expect(relativeError(line.sse, 26.6173985294224)).toBeLessThan(1e-11);
  expect(relativeError(line.r2, 0.999993745883712)).toBeLessThan(1e-11);
  expect(relativeError(Math.sqrt(line.sse / 34), 0.884796396144373)).toBeLessThan(1e-11);
  expect(relativeError(line.sse / 34, 0.78286466263007)).toBeLessThan(1e-11);
  expect(relativeError(line.slope ** 2 * line.sxx, 4255954.13232369)).toBeLessThan(1e-11);
  expect(relativeError((line.slope / (line.slopeError ?? NaN)) ** 2, 5436385.54079785)).toBeLessThan(1e-11);
});

test.each([
  {
    name: "nist-noint1",
    slope: 2.07438016528926,
    error: 0.0165289256198347,
    sse: 127.272727272727,
    r2: 0.999365492298663,
    f: 15750.25,
    sd: 3.56753034006338,
  },
  {
    name: "nist-noint2",
    slope: 0.727272727272727,
    error: 0.0420827318078432,
    sse: 0.272727272727273,
    r2: 0.993348115299335,
    f: 298.666666666667,
    sd: 0.369274472937998,
  },
])(
  "the line through the origin of $name has the certified slope, error and R2",
  ({ name, slope, error, sse, r2, f, sd }) => {
    const { x, y } = referencePoints(name);
    const line = leastSquaresThroughOrigin(x, y);
    expect(relativeError(line.slope, slope)).toBeLessThan(1e-11);
    expect(relativeError(line.slopeError, error)).toBeLessThan(1e-11);
    expect(relativeError(line.sse, sse)).toBeLessThan(1e-11);
    expect(relativeError(line.r2, r2)).toBeLessThan(1e-11);
    expect(relativeError((line.slope / line.slopeError) ** 2, f)).toBeLessThan(1e-11);
    expect(relativeError(Math.sqrt(line.sse / (x.length - 1)), sd)).toBeLessThan(1e-11);
  },
);

test("level and scatter of the eight values of NIST's outlier example", () => {
  // Data: NIST/SEMATECH e-Handbook 1.3.5.17.1. Values computed in R 4.2.2, not printed by NIST.
  const data = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
  expect(mean(data)).toBeCloseTo(206.43375, 10);
  expect(relativeError(sampleStandardDeviation(data), 15.8525644049878)).toBeLessThan(1e-13);
  expect(median(data)).toBeCloseTo(201.37, 10);
  expect(scaledMad(data)).toBeCloseTo(1.4826 * 0.995, 10);
  // (largest - mean)/sd: printed there as 2.4687; the further digits computed in R 4.2.2, which rounds to 2.4688
  expect((245.57 - mean(data)) / sampleStandardDeviation(data)).toBeCloseTo(2.46876461121245, 12);
});
