// Lines, their doubt and where they meet a limit, against R. Computed values, not printed ones, unless said.

import { describe, expect, test } from "vitest";
import { chanceAbove, crossingOn, knownLine } from "../../../packages/core/src/history/forecast.ts";
import { lineThrough, type Line } from "../../../packages/core/src/history/series.ts";

const lineOf = (x: readonly number[], y: readonly number[]): Line => {
  const line = lineThrough({ tests: x.map((_, k) => k), x, contrasts: y, others: x.map(() => 3) });
  if (line === undefined) throw new Error("no line");
  return line;
};
/** The scatter of a lone series about its line, as in R; the history pools it over the cylinders. */
const ofItself = ({ sse, count }: Line) => ({
  variance: sse / (count - 2),
  df: count - 2,
  reference: 0,
  assumed: 0,
});
/** The line for a next reading instead of the level: 1 + 1/T for 1/T. */
const forNextReading = (line: Line) => {
  const { variance } = ofItself(line);
  const known = knownLine(line, ofItself(line));
  return { ...known, levelVariance: known.levelVariance + variance };
};

// handbook/statistics.md C.9: invented readings, thousands of km against psi; R 4.2.2 (lm, predict.lm, Fieller by hand)
describe("seven readings over 98 thousand kilometres", () => {
  const x = [12.4, 31.0, 47.5, 60.2, 78.9, 95.1, 110.6];
  const line = lineOf(x, [171, 169, 170, 164, 161, 155, 150].map(Math.log));
  const level = knownLine(line, ofItself(line));
  const next = forNextReading(line);

  test("the level at 150 lies where R puts it, and is as doubtful", () => {
    const fit = level.meanY + level.slope * (150 - level.meanX);
    expect(fit).toBeCloseTo(4.97252260685287, 12);
    expect(chanceAbove(level, fit, 150)).toBeCloseTo(0.5, 12);
    expect(chanceAbove(level, 4.92662781232063, 150)).toBeCloseTo(0.975, 11);
    expect(chanceAbove(level, 5.0184174013851, 150)).toBeCloseTo(0.025, 11);
  });

  test("a next reading there is as doubtful as R says", () => {
    expect(chanceAbove(next, 4.91022341181752, 150)).toBeCloseTo(0.975, 11);
    expect(chanceAbove(next, 5.03482180188821, 150)).toBeCloseTo(0.025, 11);
  });

  const limit = Math.log(128);
  const crossing = (line: typeof level, wide: number) =>
    crossingOn(line, {
      limit,
      // three spans end at `wide`, far enough for the upper end
      x: { first: 110.6 - (wide - 110.6) / 2, last: 110.6 },
      decline: "shown",
      leastLossShown: 0,
    });

  test("128 psi is reached where Fieller's 80 % interval says", () => {
    const found = crossing(level, 400);
    expect(found.crossing).toBeCloseTo(238.641272113596, 8);
    expect(found.low).toBeCloseTo(207.754485969467, 8);
    expect(found.high).toBeCloseTo(285.348915033523, 8);
    const reading = crossing(next, 400);
    expect(reading.low).toBeCloseTo(203.702459002508, 8);
    expect(reading.high).toBeCloseTo(289.400942000482, 8);
  });

  test("the ends of Fieller's 95 % interval are passed with 39 chances in 40 and one", () => {
    expect(chanceAbove(level, limit, 190.798090654826)).toBeCloseTo(0.975, 11);
    expect(chanceAbove(level, limit, 339.294637038608)).toBeCloseTo(0.025, 11);
    expect(chanceAbove(next, limit, 183.700606811558)).toBeCloseTo(0.975, 11);
    expect(chanceAbove(next, limit, 346.392120881876)).toBeCloseTo(0.025, 11);
  });

  test("the slope lies within R's 95 % interval 19 times in 20", () => {
    // the same t: a level one unit from the mean whose own doubt is taken out
    const slope = { ...level, meanY: 0, levelVariance: 0 };
    expect(chanceAbove(slope, -0.00184981486271479, slope.meanX + 1)).toBeCloseTo(0.975, 10);
    expect(chanceAbove(slope, -0.000868836168801, slope.meanX + 1)).toBeCloseTo(0.025, 10);
  });
});

// R's data set cars (stopping distance in feet against speed in mph); fit and intervals as R's help prints them, here with
// more digits (R 4.2.2)
test("stopping distances: line, confidence and prediction at 10 mph", () => {
  const speed =
    "4 4 7 7 8 9 10 10 10 11 11 12 12 12 12 13 13 13 13 14 14 14 14 15 15 15 16 16 17 17 17 18 18 18 18 19 19 19 20 20 20 20 20 22 23 24 24 24 24 25";
  const distance =
    "2 10 4 22 16 10 18 26 34 17 28 14 20 24 28 26 34 34 46 26 36 60 80 20 26 54 32 40 32 40 50 42 56 76 84 36 46 68 32 48 52 56 64 66 54 70 92 93 120 85";
  const line = lineOf(speed.split(" ").map(Number), distance.split(" ").map(Number));
  expect(line.slope).toBeCloseTo(3.93240875912409, 12);
  expect(line.meanY - line.slope * line.meanX).toBeCloseTo(-17.57909489051095, 11);
  expect(Math.sqrt(ofItself(line).variance)).toBeCloseTo(15.3795867488199, 11);
  expect(Math.sqrt(ofItself(line).variance / line.sxx)).toBeCloseTo(0.415512776657122, 13);
  const level = knownLine(line, ofItself(line));
  expect(Math.sqrt(level.levelVariance + line.meanX ** 2 * level.slopeVariance)).toBeCloseTo(
    6.75844016937923,
    11,
  );
  expect(chanceAbove(level, 21.7449927007299, 10)).toBeCloseTo(0.5, 11);
  expect(chanceAbove(level, 15.461917339959, 10)).toBeCloseTo(0.975, 11);
  expect(chanceAbove(level, 28.0280680615008, 10)).toBeCloseTo(0.025, 11);
  expect(chanceAbove(forNextReading(line), -9.80960078798062, 10)).toBeCloseTo(0.975, 11);
  expect(chanceAbove(forNextReading(line), 53.2995861894405, 10)).toBeCloseTo(0.025, 11);
});
