// The line of a cylinder's own level as the decision takes it: four points that carry level, slope and their doubts. All
// expected values by hand from handbook/statistics.md E (s^2/T, V) and the gauge's .03 (B).

import { leastSquares } from "@sealtrend/core/parts";
import { expect, test } from "vitest";
import { levelPoints } from "../../../packages/core/src/assess/deciding/level-line.ts";

// mean x 3, Sxx 20, mean y -.06
const line = { x: [0, 2, 4, 6], y: [0, -0.04, -0.08, -0.12] };
const trend = { slope: -0.02, standardError: 0.005 };

test("level, slope and the doubt of each are those of the tests, with the gauge's in the level", () => {
  const carried = levelPoints(line, { trend, perYear: 1, gauges: 1 });
  const { meanX, meanY, slope, sxx } = leastSquares(carried.x, carried.y);
  expect(meanX).toBeCloseTo(3, 12);
  expect(meanY).toBeCloseTo(-0.06, 12);
  expect(slope).toBeCloseTo(-0.02, 12);
  // s^2 = .005^2 * 20 = .0005, s^2/T = .000125; with .03^2 = .0009: .001025
  expect(carried.variance / 4).toBeCloseTo(0.001025, 12);
  expect(carried.variance / sxx).toBeCloseTo(0.000025, 12);
});

test("two gauges leave half the variance of one, and a slope by the meter counts by the year", () => {
  const carried = levelPoints(line, {
    trend: { slope: -0.01, standardError: 0.0025 },
    perYear: 2,
    gauges: 2,
  });
  expect(carried.variance / 4).toBeCloseTo(0.000125 + 0.00045, 12);
  expect(leastSquares(carried.x, carried.y).slope).toBeCloseTo(-0.02, 12);
});
